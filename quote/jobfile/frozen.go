package jobfile

import (
	"pressworth/quote"
	"pressworth/quote/jobfile/strict"
	"pressworth/quote/money"
)

// Plans stand in a job file as they stand in a result.

func frozenFields(f strict.Fields, z *quote.Frozen) {
	f.Needs("pieces")
	f.Count("pieces", &z.Pieces)
	strict.Map(f, "methods", &z.Methods, func(f strict.Fields, key string, v *string) { f.Text(key, v) })
	strict.List(f, "plans", &z.Plans, planFields)
}

func planFields(f strict.Fields, p *quote.Plan) {
	f.Needs("card", "runs")
	f.Text("card", &p.Card)
	f.Amount("cost", &p.Cost)
	f.Amount("bound", &p.Bound)
	f.Amount("setup", &p.Setup)
	f.Flag("heuristic", &p.Heuristic)
	decimal(f, "used_percent", &p.UsedPercent)
	strict.List(f, "runs", &p.Runs, runFields)
}

func runFields(f strict.Fields, r *quote.Run) {
	f.Text("size", &r.Size)
	decimal(f, "length", &r.Length)
	f.Count("inks", &r.Inks)
	f.Count("sheets", &r.Sheets)
	f.Amount("each", &r.Each)
	f.Amount("setup", &r.Setup)
	decimal(f, "width", &r.Width)
	decimal(f, "height", &r.Height)
	decimal(f, "used_percent", &r.UsedPercent)
	strict.List(f, "pieces", &r.Pieces, pieceFields)
	strict.List(f, "weights", &r.Weights, weightFields)
	f.Text("entry", &r.Entry)
	strict.ObjectOrNone(f, "room", &r.Room, roomFields)
}

func roomFields(f strict.Fields, r *quote.Room) {
	f.Text("placement", &r.Placement)
	f.Count("variant", &r.Variant)
	f.Count("more", &r.More)
	decimal(f, "w", &r.W)
	decimal(f, "h", &r.H)
}

func pieceFields(f strict.Fields, p *quote.PlacedPiece) {
	f.Needs("placement", "x", "y", "w", "h")
	f.Text("placement", &p.Placement)
	f.Count("variant", &p.Variant)
	f.Text("text", &p.Text)
	decimal(f, "x", &p.X)
	decimal(f, "y", &p.Y)
	decimal(f, "w", &p.W)
	decimal(f, "h", &p.H)
	f.Flag("turned", &p.Turned)
}

func weightFields(f strict.Fields, w *quote.SharingWeight) {
	f.Needs("placement")
	f.Text("placement", &w.Placement)
	f.Count("variant", &w.Variant)
	f.Text("text", &w.Text)
	f.Text("weight", &w.Weight)
	f.Amount("cost", &w.Cost)
}

// decimal is a number that the result keeps as text.
func decimal(f strict.Fields, key string, v *string) {
	f.Text(key, v)
	if *v == "" {
		return
	}
	if _, err := money.ParseNumber(*v); err != nil {
		strict.Refuse(f, key, err.Error())
	}
}
