package gang

import "pressworth/quote/nest"

// laid is a run with its layout: as few copies on a sheet as the sheets bought ask for, in straight rows where that
// can be.
func (s *Sheets) laid(g group, r run) Run {
	out := Run{
		Size: r.size, Inks: r.inks, Row: r.row, Sheets: r.buying.sheets, Each: r.buying.each, Setup: r.setup,
		Items: append([]int(nil), g.items...),
	}
	sheet := sheetOf(s.card.Sizes[r.size])
	ps := make([]nest.Piece, len(g.items))
	for k, i := range g.items {
		it := s.items[i]
		ps[k] = nest.Piece{W: it.W, H: it.H, Turn: it.Turn, Count: parts(g.need[k], r.buying.sheets)}
		out.Copies = append(out.Copies, ps[k].Count)
	}
	if placed, ok := nest.Straight(sheet, ps); ok {
		for _, p := range placed {
			out.Placed = append(out.Placed, Placed{Item: g.items[p.Piece], X: p.X, Y: p.Y, Turned: p.Turned})
		}
		return out
	}
	s.count(g, r.buying.sheets)
	placed, _ := nest.Fit(sheet, s.shapely(), nest.Effort{Steps: effort})
	out.Placed = s.named(g, out.Copies, placed)
	return out
}

// named gives the placed shapes to the items that have them, the earlier items first.
func (s *Sheets) named(g group, copies []int, placed []nest.Placed) []Placed {
	owners := make([][]int, len(s.forms)) // by shape: its items, each once a copy
	for k, i := range g.items {
		for range copies[k] {
			owners[s.shapes[i]] = append(owners[s.shapes[i]], i)
		}
	}
	out := make([]Placed, len(placed))
	for j, p := range placed {
		sh := s.used[p.Piece]
		i := owners[sh][0]
		owners[sh] = owners[sh][1:]
		it := s.items[i]
		upright := it.Turn && it.W < it.H // the shape lies on its other side
		out[j] = Placed{Item: i, X: p.X, Y: p.Y, Turned: p.Turned != upright}
	}
	return out
}
