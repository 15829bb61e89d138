// Package jobfile reads and writes the portable form of a job, pressworth.job/1, and of its result. What it reads is
// strict in form: every wrong key and value is a problem with its path, all of them found together.
//
// Not in this package: whether the values of a job make sense together (quote.Price says so), and files or folders.
package jobfile

import (
	"pressworth/quote"
	"pressworth/quote/jobfile/strict"
)

// Decode reads a job file. What has the right form is in the job even where the error, which is quote.Problems, names
// other values that have not.
func Decode(data []byte) (quote.Job, error) {
	var job quote.Job
	err := strict.Read(data, func(f strict.Fields) { jobFields(f, &job) })
	return job, err
}

// Encode writes a job file that Decode reads as the same job. The order of keys is fixed, and what has the value that a
// left-out key stands for is left out.
func Encode(job quote.Job) []byte {
	return strict.Write(func(f strict.Fields) { jobFields(f, &job) })
}

func jobFields(f strict.Fields, j *quote.Job) {
	strict.Format(f, quote.JobFormat)
	f.Text("currency", &j.Currency)
	f.Choice("unit", &j.Unit, "in", "mm")
	f.Text("title", &j.Title)
	strict.List(f, "garments", &j.Garments, garmentFields)
	strict.List(f, "placements", &j.Placements, placementFields)
	strict.List(f, "extras", &j.Extras, extraFields)
	strict.List(f, "suppliers", &j.Suppliers, supplierFields)
	strict.List(f, "rate_cards", &j.RateCards, cardFields)
	strict.Object(f, "shop", &j.Shop, shopFields)
	strict.Object(f, "art", &j.Art, artFields)
	strict.Object(f, "pricing", &j.Pricing, pricingFields)
	f.Counts("ladder", &j.Ladder)
	strict.ObjectOrNone(f, "paper", &j.Paper, paperFields)
	strict.List(f, "frozen", &j.Frozen, frozenFields)
}

func garmentFields(f strict.Fields, g *quote.Garment) {
	f.Text("id", &g.ID)
	f.Text("supplier", &g.Supplier)
	f.Text("style", &g.Style)
	f.Text("name", &g.Name)
	f.Text("color", &g.Color)
	f.Text("shade", &g.Shade)
	f.Texts("tags", &g.Tags)
	either(f, "supplied_by", &g.FromCustomer, "shop", "customer")
	f.NumberOrNone("handling_s", &g.Handling)
	f.Unless("clothing", &g.NotClothing)
	f.AmountOrNone("price", &g.Price)
	f.Text("group", &g.Group)
	f.Amount("value_each", &g.ValueEach)
	strict.List(f, "sizes", &g.Sizes, sizeFields)
	strict.Object(f, "info", &g.Info, infoFields)
}

// either is a key with two words, the first of which is meant where it is left out.
func either(f strict.Fields, key string, second *bool, no, yes string) {
	var word string
	if *second {
		word = yes
	}
	f.Choice(key, &word, no, yes)
	*second = word == yes
}

func sizeFields(f strict.Fields, s *quote.Size) {
	f.Needs("size", "qty")
	f.Text("size", &s.Size)
	f.Count("qty", &s.Qty)
	strict.List(f, "each", &s.Each, breakFields)
}

func breakFields(f strict.Fields, b *quote.Break) { breakWith(f, b, "each") }

func rateFields(f strict.Fields, b *quote.Break) { breakWith(f, b, "rate") }

func breakWith(f strict.Fields, b *quote.Break, each string) {
	f.Needs("from", each)
	f.Count("from", &b.From)
	f.Amount(each, &b.Each)
	strict.Object(f, "info", &b.Info, infoFields)
}

func placementFields(f strict.Fields, p *quote.Placement) {
	f.Text("id", &p.ID)
	f.Text("name", &p.Name)
	f.Number("width", &p.Width)
	f.Number("height", &p.Height)
	f.Texts("inks", &p.Inks)
	f.Count("ink_count", &p.InkCount)
	f.Flag("full_color", &p.FullColor)
	f.Unless("turn", &p.NoTurn)
	f.TextsOrNone("on", &p.On)
	f.Text("method", &p.Method)
	f.Number("stitches", &p.Stitches)
	strict.List(f, "variants", &p.Variants, variantFields)
	f.Flag("personal", &p.Personal)
	strict.List(f, "texts", &p.Texts, textFields)
	f.Number("char_width", &p.CharWidth)
	f.Amount("charge_each", &p.ChargeEach)
	f.Choice("charge_by", &p.ChargeBy, "text", "character")
	f.Unless("taxable", &p.Untaxed)
	strict.Object(f, "info", &p.Info, infoFields)
}

func variantFields(f strict.Fields, v *quote.Variant) {
	f.Texts("sizes", &v.Sizes)
	f.Number("width", &v.Width)
	f.Number("height", &v.Height)
}

func textFields(f strict.Fields, t *quote.Text) {
	f.Needs("garment", "size", "text")
	f.Text("garment", &t.Garment)
	f.Text("size", &t.Size)
	f.Text("text", &t.Text)
	f.Count("row", &t.Row)
}

func extraFields(f strict.Fields, e *quote.Extra) {
	f.Text("id", &e.ID)
	f.Text("name", &e.Name)
	either(f, "per", &e.PerOrder, "piece", "order")
	f.TextsOrNone("on", &e.On)
	f.Amount("cost", &e.Cost)
	f.Number("seconds", &e.Seconds)
	f.Amount("charge", &e.Charge)
	f.Flag("taxable", &e.Taxable)
}

func supplierFields(f strict.Fields, s *quote.Supplier) {
	f.Text("id", &s.ID)
	f.Text("name", &s.Name)
	f.Amount("freight", &s.Freight)
	f.Amount("free_from", &s.FreeFrom)
	f.NumberOrNone("share_percent", &s.SharePercent)
}

func infoFields(f strict.Fields, i *quote.Info) {
	f.Text("category", &i.Category)
	f.Text("hex", &i.Hex)
	f.Text("position", &i.Position)
	f.Text("temperature", &i.Temperature)
	f.Text("pressure", &i.Pressure)
	f.Text("peel", &i.Peel)
	f.Text("entry_id", &i.EntryID)
	entry := ""
	if f.Text("entry", &entry); entry != "" {
		i.EntryID = entry
	}
	f.Text("priced_on", &i.PricedOn)
	f.Text("artwork", &i.Artwork)
}

func artFields(f strict.Fields, a *quote.Art) {
	f.Number("minutes", &a.Minutes)
	f.Amount("per_hour", &a.PerHour)
	f.Amount("charge", &a.Charge)
}
