package present

import (
	"fmt"

	"pressworth/quote"
)

func (c *Counter) bandsView() Bands {
	key := c.lookedAt()
	b := Bands{Key: key, Placement: c.placementName(key), Upto: c.later.upto, Pieces: c.result.Pieces}
	b.Seeking = c.later.running || c.later.done != c.later.seq
	for _, m := range c.result.Methods {
		b.Placements = append(b.Placements, Option{Key: m.Placement, Name: c.placementName(m.Placement)})
	}
	if !c.later.have || c.later.bands.Placement != key {
		return b
	}
	own := c.ownInks(key)
	for _, s := range c.later.bands.ByInks {
		if c.worthShowing(s, own) {
			b.Rows = append(b.Rows, c.bandRow(s, own))
		}
	}
	return b
}

// worthShowing leaves out ink counts far from the placement's own, so that three or four bands remain.
func (c *Counter) worthShowing(s quote.InkSpans, own string) bool {
	if s.Inks == own {
		return true
	}
	if d := placementAt(&c.draft, c.lookedAt()); d != nil && d.Personal {
		return false
	}
	if s.Inks == "full" {
		return true
	}
	if own == "full" {
		return s.Inks <= "3"
	}
	return s.Inks == "1" || s.Inks == "2" || s.Inks == "3" && own < "4"
}

func (c *Counter) bandRow(s quote.InkSpans, own string) BandRow {
	r := BandRow{Name: s.Inks + " inks", Own: s.Inks == own}
	switch s.Inks {
	case "1":
		r.Name = "1 ink"
	case "full":
		r.Name = "full colour"
	}
	for _, sp := range s.Spans {
		kind, place := c.cardKind(sp.Card)
		r.Spans = append(r.Spans, BandSpan{From: sp.From, To: sp.To, Card: c.cardName(sp.Card), Kind: kind, Place: place})
	}
	r.Spans = calm(r.Spans)
	for i, b := range r.Spans {
		r.Spans[i].Label = spanLabel(b, i, len(r.Spans))
	}
	return r
}

func spanLabel(b BandSpan, i, n int) string {
	name := lower(b.Card)
	if b.Card == "" {
		name = "no card"
	}
	switch {
	case n == 1:
		return name + " at every quantity"
	case i == 0:
		return name
	}
	return fmt.Sprintf("%s from %d", name, b.From)
}

// ownInks is the ink count of a placement as the bands name it.
func (c *Counter) ownInks(key string) string {
	for _, p := range c.job.Placements {
		if p.ID != key {
			continue
		}
		if p.FullColor {
			return "full"
		}
		return fmt.Sprint(max(p.InkCount, len(p.Inks)))
	}
	return ""
}
