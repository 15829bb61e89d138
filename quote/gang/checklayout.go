package gang

import (
	"fmt"

	"pressworth/quote/nest"
)

// layout holds a run's layout against its sheet and its counts, and takes what it prints off the demand.
func (d *demand) layout(sheet nest.Sheet, run Run) error {
	if err := flat(sheet); err != nil {
		return err
	}
	if len(run.Items) == 0 || len(run.Items) != len(run.Copies) {
		return fmt.Errorf("%d items and %d numbers of copies", len(run.Items), len(run.Copies))
	}
	if run.Sheets < 1 {
		return fmt.Errorf("%d sheets", run.Sheets)
	}
	ps := make([]nest.Piece, len(run.Items))
	at := map[int]int{}
	for k, i := range run.Items {
		if k > 0 && i <= run.Items[k-1] {
			return fmt.Errorf("item %d is not in order", i)
		}
		var err error
		if ps[k], err = d.piece(i, run.Copies[k], len(run.Placed)); err != nil {
			return fmt.Errorf("item %d: %w", i, err)
		}
		at[i] = k
		d.runs[i]++
		d.need[i] -= printed(run.Copies[k], run.Sheets, d.need[i])
	}
	placed := make([]nest.Placed, len(run.Placed))
	for j, p := range run.Placed {
		k, here := at[p.Item]
		if !here {
			return fmt.Errorf("placed %d: item %d is not in the run", j, p.Item)
		}
		placed[j] = nest.Placed{Piece: k, X: p.X, Y: p.Y, Turned: p.Turned}
	}
	return nest.Check(sheet, ps, placed)
}

// piece is an item of which a run has so many copies, of all that are placed.
func (d *demand) piece(item, copies, placed int) (nest.Piece, error) {
	if _, wanted := d.need[item]; !wanted {
		return nest.Piece{}, fmt.Errorf("not asked for")
	}
	it := d.items[item]
	if copies < 1 || copies > placed {
		return nest.Piece{}, fmt.Errorf("%d copies, %d pieces are placed", copies, placed)
	}
	if min(it.W, it.H) < 1 || max(it.W, it.H) > nest.MaxLength {
		return nest.Piece{}, fmt.Errorf("size %d x %d", it.W, it.H)
	}
	return nest.Piece{W: it.W, H: it.H, Turn: it.Turn, Count: copies}, nil
}

// flat says whether a sheet is one at all; nest.Check takes its sheet as given.
func flat(s nest.Sheet) error {
	if s.W < 1 || s.H < 1 || max(s.W, s.H, s.Edge, s.Gap) > nest.MaxLength || min(s.Edge, s.Gap) < 0 {
		return fmt.Errorf("sheet %d x %d, edge %d, gap %d", s.W, s.H, s.Edge, s.Gap)
	}
	return nil
}

// printed is copies × sheets, at most enough.
func printed(copies, sheets, enough int) int {
	if enough <= 0 || copies > enough/sheets {
		return max(enough, 0)
	}
	return copies * sheets
}
