package catalog

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// SameAgain is a new draft of a quote for another day (2006-01-02): nothing of it has been saved, sent or promised yet.
// Other than 0, pieces says how many this time: every quantity is scaled in proportion, as the ladder does. Typed prices
// and names hold for their own quantity only.
func SameAgain(d Draft, pieces int, day string) Draft {
	d = d.Copy()
	d.ID, d.Number, d.State, d.Option = 0, "", Drafted, 0
	d.QuotedOn, d.NeededBy = day, ""
	if pieces > 0 && pieces != d.Pieces() {
		d = scaled(d, pieces)
	}
	return d
}

// scaled spreads a number of pieces over a draft's sizes, by the quantities it has. The draft is changed.
func scaled(d Draft, pieces int) Draft {
	var weights []int64
	for _, g := range d.Garments {
		for _, s := range g.Sizes {
			var e entries
			weights = append(weights, int64(e.count("", s.Qty)))
		}
	}
	if d.Pieces() == 0 || pieces > maxCount {
		return d
	}
	parts := money.Share(int64(pieces), weights)
	for i := range d.Garments {
		d.Garments[i].Price = ""
		for k := range d.Garments[i].Sizes {
			d.Garments[i].Sizes[k].Qty = ""
			if parts[0] > 0 {
				d.Garments[i].Sizes[k].Qty = strconv.FormatInt(parts[0], 10)
			}
			parts = parts[1:]
		}
	}
	d.Roster = nil
	for i := range d.Placements {
		d.Placements[i].Texts = nil
	}
	return d
}

// Repeat marks the placements of a draft whose artwork is on file: their set-up is not paid again. Where all artwork is
// on file, none is drawn and none is charged for, as art or as an extra like "Redraw artwork". A design that the shop charges for again is left as new artwork.
func Repeat(d Draft, known []Design) Draft {
	d = d.Copy()
	all := len(d.Placements) > 0
	for i := range d.Placements {
		p := &d.Placements[i]
		p.DesignID, p.OnFile, p.FileCard = 0, false, ""
		if k := slices.IndexFunc(known, func(x Design) bool { return x.fits(*p) }); k >= 0 && !known[k].ChargeAgain {
			p.DesignID, p.OnFile, p.FileCard = known[k].ID, true, known[k].Card
			if p.Artwork == "" {
				p.Artwork = known[k].File
			}
		}
		all = all && p.OnFile
	}
	if all {
		d.ArtMinutes, d.ArtCharge = "", ""
		d.Extras = slices.DeleteFunc(d.Extras, DraftExtra.draws)
	}
	return d
}

// drawing is in the names of extras that pay for artwork being drawn.
var drawing = regexp.MustCompile(`(?i)\b(re-?draw|retouch|digiti[sz]|vectori[sz]|trac(e|ing)\b)`)

// draws tells whether an extra pays for artwork being drawn, by its name: artwork on file is drawn already.
func (x DraftExtra) draws() bool { return x.PerOrder && drawing.MatchString(x.Name) }

// fits tells whether a placement prints the design: the same name, inks and kind of artwork.
func (x Design) fits(p DraftPlacement) bool {
	return strings.EqualFold(strings.TrimSpace(x.Name), strings.TrimSpace(p.Name)) && x.FullColor == p.FullColor && !p.Personal &&
		(p.FullColor || slices.Equal(inkNames(x.Inks), inkNames(p.Inks)))
}

// inkNames are ink names in one spelling and order.
func inkNames(text string) []string {
	names := list(strings.ToLower(text))
	slices.Sort(names)
	return slices.Compact(names)
}

// DesignsOf is the artwork of a job as it is kept on file: what is known already with this run added, and what
// is new. Names and numbers are nobody's artwork.
func DesignsOf(job quote.Job, result quote.Result, known []Design, customerID int64, number, on string) []Design {
	var out []Design
	for _, p := range job.Placements {
		method := slices.IndexFunc(result.Methods, func(m quote.Method) bool { return m.Placement == p.ID })
		if p.Personal || method < 0 {
			continue
		}
		asDraft := DraftPlacement{Name: p.Name, FullColor: p.FullColor, Inks: strings.Join(p.Inks, ", ")}
		if p.InkCount > 0 {
			asDraft.Inks = strconv.Itoa(p.InkCount)
		}
		x := Design{CustomerID: customerID, Name: p.Name, Inks: asDraft.Inks, FullColor: p.FullColor}
		if k := slices.IndexFunc(known, func(x Design) bool { return x.fits(asDraft) }); k >= 0 {
			x = known[k]
		}
		card := cardOf(job, result.Methods[method].Card)
		x.run(p, card)
		if x.LastQuote != number || x.Runs == 0 { // it may have been kept before its job was finished
			x.Runs++
		}
		x.LastRun, x.LastQuote = on, number
		out = append(out, x)
	}
	return out
}

// run notes the sizes, card and settings of a run.
func (x *Design) run(p quote.Placement, card quote.RateCard) {
	x.Card = PaidCard(card.ID)
	if p.Info.Artwork != "" {
		x.File = p.Info.Artwork
	}
	if p.Stitches.Sign() > 0 {
		x.Stitches = p.Stitches.String()
	}
	x.Sizes = slices.Clone(x.Sizes)
	add := func(w, h money.Number) {
		if s := (DesignSize{w.String(), h.String()}); !slices.Contains(x.Sizes, s) {
			x.Sizes = append(x.Sizes, s)
		}
	}
	add(p.Width, p.Height)
	for _, v := range p.Variants {
		add(v.Width, v.Height)
	}
	if x.Settings == "" {
		x.Settings = strings.Join(slices.DeleteFunc([]string{card.Info.Temperature, card.Info.Pressure, card.Info.Peel}, func(s string) bool { return s == "" }), ", ")
	}
}

func cardOf(job quote.Job, id string) quote.RateCard {
	for _, c := range job.RateCards {
		if c.ID == id {
			return c
		}
	}
	return quote.RateCard{ID: id}
}

// LeftOver are the transfers that a job leaves over, as things for the shelf.
func LeftOver(job quote.Job, result quote.Result, customerID int64, number string) []ShelfItem {
	var out []ShelfItem
	for _, l := range result.Leftovers {
		for _, p := range job.Placements {
			if p.ID != l.Placement || l.Copies <= 0 || p.Personal {
				continue
			}
			w, h := p.Width, p.Height
			if l.Variant > 0 && l.Variant <= len(p.Variants) {
				w, h = p.Variants[l.Variant-1].Width, p.Variants[l.Variant-1].Height
			}
			item := ShelfItem{
				Kind: ShelfTransfer, Qty: l.Copies, From: number, CustomerID: customerID, Name: p.Name, Width: w.String(), Height: h.String(),
				Inks: strings.Join(p.Inks, ", "),
			}
			for _, m := range result.Methods {
				if m.Placement == p.ID {
					item.Card = PaidCard(m.Card)
				}
			}
			out = append(out, item)
		}
	}
	return out
}
