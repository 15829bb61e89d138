package jobfile

import (
	"pressworth/quote"
	"pressworth/quote/jobfile/strict"
)

func cardFields(f strict.Fields, c *quote.RateCard) {
	f.Needs("kind")
	f.Text("id", &c.ID)
	f.Text("name", &c.Name)
	f.Text("supplier", &c.Supplier)
	f.Choice("kind", &c.Kind, quote.AreaCard, quote.SheetCard, quote.RollCard, quote.PieceCard)
	f.Flag("full_color", &c.FullColor)
	f.Count("max_inks", &c.MaxInks)
	f.Texts("shades", &c.Shades)
	f.Texts("not_on", &c.NotOn)
	f.Texts("only", &c.Only)
	strict.ObjectOrNone(f, "press", &c.Press, pressFields)
	f.Amount("setup_per_design", &c.SetupPerDesign)
	f.Amount("setup_per_ink", &c.SetupPerInk)
	f.Amount("minimum_each", &c.MinimumEach)
	f.Count("minimum", &c.Minimum)
	f.Number("max_width", &c.MaxWidth)
	f.Number("max_height", &c.MaxHeight)
	strict.List(f, "rates", &c.Rates, rateFields)
	f.Number("width", &c.Width)
	f.Number("edge", &c.Edge)
	f.Number("gap", &c.Gap)
	strict.List(f, "lengths", &c.Lengths, lengthFields)
	strict.List(f, "sizes", &c.Sizes, sheetFields)
	f.Choice("by", &c.By, "inks", "stitches", "area", "character")
	strict.List(f, "prices", &c.Prices, pieceRowFields)
	strict.List(f, "full_color_each", &c.FullColorEach, breakFields)
	strict.Object(f, "info", &c.Info, infoFields)
}

func pressFields(f strict.Fields, p *quote.Press) {
	f.Number("prep_s", &p.Prep)
	f.Number("place_s", &p.Place)
	f.Number("dwell_s", &p.Dwell)
	f.Number("peel_s", &p.Peel)
	f.Number("second_s", &p.Second)
	f.Number("prep_min", &p.PrepMin)
}

func lengthFields(f strict.Fields, l *quote.RollLength) {
	f.Needs("length", "each")
	f.Number("length", &l.Length)
	f.Amount("each", &l.Each)
	strict.Object(f, "info", &l.Info, infoFields)
}

func sheetFields(f strict.Fields, s *quote.SheetSize) {
	f.Text("name", &s.Name)
	f.Number("width", &s.Width)
	f.Number("height", &s.Height)
	f.Number("edge", &s.Edge)
	f.Number("gap", &s.Gap)
	f.Count("minimum", &s.Minimum)
	strict.List(f, "prices", &s.Prices, inkRowFields)
}

func inkRowFields(f strict.Fields, r *quote.InkRow) {
	f.Needs("inks")
	f.Count("inks", &r.Inks)
	strict.List(f, "each", &r.Each, breakFields)
}

func pieceRowFields(f strict.Fields, r *quote.PieceRow) {
	f.Needs("upto")
	f.Number("upto", &r.Upto)
	strict.List(f, "each", &r.Each, breakFields)
}
