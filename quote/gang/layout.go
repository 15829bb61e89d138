package gang

import "pressworth/quote/nest"

// laid is a run with its layout: as few copies on a sheet as the sheets bought ask for, in straight rows where that
// can be.
func (s *Sheets) laid(g group, r run) Run {
	out := Run{
		Size: r.size, Inks: r.inks, Row: r.row, Sheets: r.buying.sheets, Each: r.buying.each, Setup: r.setup,
		Items: append([]int(nil), g.items...),
	}
	sheet, ps := sheetOf(s.card.Sizes[r.size]), s.pieces(g, r.buying.sheets)
	for _, p := range ps {
		out.Copies = append(out.Copies, p.Count)
	}
	placed, ok := nest.Straight(sheet, ps)
	if !ok {
		placed, _ = nest.Fit(sheet, ps, nest.Effort{Steps: effort})
	}
	for _, p := range placed {
		out.Placed = append(out.Placed, Placed{Item: g.items[p.Piece], X: p.X, Y: p.Y, Turned: p.Turned})
	}
	return out
}
