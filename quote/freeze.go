package quote

import "slices"

// Freeze works a job out and returns it with its methods and plans frozen, one entry for its own quantity and one for
// every step of the ladder, and its result. The error, if any, is Problems.
func Freeze(job Job) (frozen Job, r Result, err error) {
	frozen = job
	r, err = NewMemory().price(job, false, func(ladder *stair, own *worked) {
		frozen.Frozen = nil
		for _, w := range append([]*worked{own}, ladder.steps...) {
			if w != nil && !slices.ContainsFunc(frozen.Frozen, func(f Frozen) bool { return f.Pieces == w.pieces }) {
				frozen.Frozen = append(frozen.Frozen, w.freeze())
			}
		}
	})
	return frozen, r, err
}

func (w *worked) freeze() Frozen {
	w.layOut()
	f := Frozen{Pieces: w.pieces, Methods: map[string]string{}, Plans: w.plansOut()}
	for p, c := range w.choice {
		if c >= 0 {
			f.Methods[w.m.placements[p].ID] = w.m.cards[c].ID
		}
	}
	return f
}
