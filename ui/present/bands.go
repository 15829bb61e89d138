package present

import (
	"fmt"

	"pressworth/quote"
)

// minUpto is how far the bands reach at least.
const minUpto = 150

// bandsJob is the search for the cheapest cards by quantity, done in the background. One search runs at a time; a
// result counts only while its number is the last one asked for.
type bandsJob struct {
	placement string // looked at; empty: the first
	seq       int
	running   bool
	got       quote.CheapestFromTo
	upto      int
	have      bool
	of        int // the number of the search that gave what is shown
}

// LookAt chooses the placement whose bands are shown.
func (c *Counter) LookAt(placement string) {
	c.bands.placement = placement
	c.bands.have = false
	c.seekBands()
	c.show()
}

// seekBands asks for the bands of the job as it stands.
func (c *Counter) seekBands() {
	if !c.current || c.engine.Cheapest == nil || c.lookedAt() == "" {
		return
	}
	c.bands.seq++
	if !c.bands.running {
		c.search()
	}
}

// search works the bands out off the window's goroutine. If more was typed meanwhile it starts again.
func (c *Counter) search() {
	c.bands.running = true
	seq, job, placement := c.bands.seq, c.job, c.lookedAt()
	upto := max(minUpto, c.result.Pieces*3/2)
	c.shop.Background(func() func() {
		got, err := c.engine.Cheapest(job, placement, upto)
		return func() { c.found(seq, upto, got, err) }
	})
}

func (c *Counter) found(seq, upto int, got quote.CheapestFromTo, err error) {
	c.bands.running = false
	if seq != c.bands.seq {
		if c.current && c.lookedAt() != "" {
			c.search()
		}
		return
	}
	c.bands.have = err == nil
	c.bands.got, c.bands.upto, c.bands.of = got, upto, seq
	c.show()
}

// lookedAt is the placement whose bands are wanted: the one chosen, or the first that takes part.
func (c *Counter) lookedAt() string {
	for _, m := range c.result.Methods {
		if m.Placement == c.bands.placement {
			return m.Placement
		}
	}
	if len(c.result.Methods) > 0 {
		return c.result.Methods[0].Placement
	}
	return ""
}

func (c *Counter) bandsView() Bands {
	key := c.lookedAt()
	b := Bands{Key: key, Placement: c.placementName(key), Upto: c.bands.upto, Pieces: c.result.Pieces}
	b.Seeking = c.bands.running || c.bands.of != c.bands.seq
	for _, m := range c.result.Methods {
		b.Placements = append(b.Placements, Option{Key: m.Placement, Name: c.placementName(m.Placement)})
	}
	if !c.bands.have || c.bands.got.Placement != key {
		return b
	}
	own := c.ownInks(key)
	for _, s := range c.bands.got.ByInks {
		if c.worthShowing(s, own) {
			b.Rows = append(b.Rows, c.bandRow(s, own))
		}
	}
	return b
}

// worthShowing leaves out ink counts far from the placement's own, so that three or four bands remain.
func (c *Counter) worthShowing(s quote.InkSpans, own string) bool {
	if s.Inks == "full" || s.Inks == own {
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
	for i, sp := range s.Spans {
		kind, place := c.cardKind(sp.Card)
		b := BandSpan{From: sp.From, To: sp.To, Card: c.cardName(sp.Card), Kind: kind, Place: place}
		b.Label = spanLabel(b, i, len(s.Spans))
		r.Spans = append(r.Spans, b)
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
