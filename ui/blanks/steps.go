package blanks

import (
	"context"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

// act does something to the shop file, and gives the act that takes it back; nil where that cannot be.
type act func(ctx context.Context) (back act, err error)

// step is a way back, or a way on again, with what is said afterwards.
type step struct {
	done string
	do   act
}

// did notes the way back from what was just done. What was taken back before cannot be done again any more.
func (p *Place) did(back step) { p.undo, p.redo = append(p.undo, back), nil }

// swap is the step to one of two states of something, the other being the way back from there.
func swap(to, from func(ctx context.Context) error) act {
	return func(ctx context.Context) (act, error) { return swap(from, to), to(ctx) }
}

// styleStep is the way back from a style as it is kept to what it was.
func (p *Place) styleStep(before, kept catalog.Style) step {
	put := func(s catalog.Style) func(context.Context) error {
		return func(ctx context.Context) error {
			_, err := p.Keeper.SaveStyle(ctx, s, "")
			return err
		}
	}
	return step{before.Number + " changed back.", swap(put(before), put(kept))}
}

// listedStep is styleStep with the shop's own prices.
func (p *Place) listedStep(before catalog.Style, ownBefore []catalog.Price, kept catalog.Style, own []catalog.Price) step {
	put := func(s catalog.Style, own []catalog.Price) func(context.Context) error {
		return func(ctx context.Context) error {
			_, err := p.Keeper.SaveListed(ctx, s, fromToday(own, p.today()), "")
			return err
		}
	}
	return step{before.Number + " changed back.", swap(put(before, ownBefore), put(kept, own))}
}

// fromToday makes prices that have begun already hold from today: no price is written into the past.
func fromToday(own []catalog.Price, today string) []catalog.Price {
	out := make([]catalog.Price, len(own))
	for i, p := range own {
		p.From = max(p.From, today)
		out[i] = p
	}
	return out
}

// Undo takes back the last change of styles or prices. Where that does not work the way back stays.
func (p *Place) Undo() { p.step(&p.undo, &p.redo) }

// Redo does again what Undo took back last.
func (p *Place) Redo() { p.step(&p.redo, &p.undo) }

// step goes the last step of one list and notes the way back in the other.
func (p *Place) step(from, to *[]step) {
	n := len(*from)
	if n == 0 {
		return
	}
	last := (*from)[n-1]
	parts.Background(func() func() {
		back, err := last.do(context.Background())
		return func() {
			if err != nil {
				p.fault.SetText("That could not be done: " + err.Error())
				return
			}
			*from = (*from)[:n-1]
			if back != nil {
				*to = append(*to, step{last.done, back})
			}
			p.say(last.done)
			p.Shown()
		}
	})
}
