package catalog

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// Demo is a shop to begin with: its rates, its price lists and a few quotes. Styles have the ids that the drafts use.
type Demo struct {
	Shop      Shop
	Suppliers []Supplier
	Styles    []Style
	Cards     []RateCard
	Drafts    []Draft
}

// ReadDemo reads a demo shop: rates and cards in the form of a job file, styles and quotes in a form of its own. Its
// dates are counted from the given day (2006-01-02).
func ReadDemo(job, rest []byte, day string) (Demo, error) {
	base, err := jobfile.Decode(job)
	if err != nil {
		return Demo{}, fmt.Errorf("demo job: %w", err)
	}
	today, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return Demo{}, fmt.Errorf("demo day: %w", err)
	}
	r := demoReader{job: base, today: today}
	dec := json.NewDecoder(bytes.NewReader(rest))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&r.file); err != nil {
		return Demo{}, fmt.Errorf("demo catalog: %w", err)
	}
	d := Demo{Shop: r.shop(), Suppliers: r.suppliers(), Cards: r.cards()}
	if d.Styles, err = r.styles(); err != nil {
		return Demo{}, fmt.Errorf("demo catalog: %w", err)
	}
	d.Drafts = r.drafts(d)
	return d, nil
}

// demoFile is the form of the demo's styles and quotes.
type demoFile struct {
	Suppliers []struct {
		Key         string `json:"key"`
		TransitDays int    `json:"transit_days"`
		CutOff      string `json:"cut_off"`
		Contact     string `json:"contact"`
		Notes       string `json:"notes"`
		PricedAgo   int    `json:"priced_days_ago"`
	} `json:"suppliers"`
	Terms       map[string]Terms    `json:"terms"` // by the id of the rate card
	StaleDays   int                 `json:"stale_days"`
	Levels      []demoLevel         `json:"levels"`
	UsualExtras []string            `json:"usual_extras"`
	Presets     []demoPreset        `json:"presets"`
	Palette     map[string]demoTint `json:"palette"`
	Styles      []demoStyle         `json:"styles"`
	Drafts      []demoDraft         `json:"drafts"`
}

type demoTint struct {
	Hex   string `json:"hex"`
	Shade string `json:"shade"`
}

type demoLevel struct {
	Name         string        `json:"name"`
	Percent      *money.Number `json:"percent"`
	FloorPercent *money.Number `json:"floor_percent"`
	MinimumOrder *money.Amount `json:"minimum_order"`
	Exempt       bool          `json:"exempt"`
}

type demoPreset struct {
	Name     string       `json:"name"`
	Width    money.Number `json:"width"`
	Height   money.Number `json:"height"`
	Side     string       `json:"side"`
	Position string       `json:"position"`
}

type demoReader struct {
	job   quote.Job
	file  demoFile
	today time.Time
}

// ago is the day so many days before, later where the count is negative.
func (r demoReader) ago(days int) string { return r.today.AddDate(0, 0, -days).Format(time.DateOnly) }

func (r demoReader) pricedOn(supplier string) string {
	for _, s := range r.file.Suppliers {
		if s.Key == supplier {
			return r.ago(s.PricedAgo)
		}
	}
	return r.ago(0)
}

func (r demoReader) suppliers() []Supplier {
	var out []Supplier
	for i, s := range r.job.Suppliers {
		supplier := Supplier{ID: int64(i + 1), Key: s.ID, Name: s.Name, Freight: s.Freight, FreeFrom: s.FreeFrom, SharePercent: money.Int(100)}
		if s.SharePercent != nil {
			supplier.SharePercent = *s.SharePercent
		}
		for _, more := range r.file.Suppliers {
			if more.Key == s.ID {
				supplier.TransitDays, supplier.CutOff, supplier.Contact, supplier.Notes = more.TransitDays, more.CutOff, more.Contact, more.Notes
			}
		}
		out = append(out, supplier)
	}
	return out
}

func (r demoReader) cards() []RateCard {
	var out []RateCard
	for i, c := range r.job.RateCards {
		out = append(out, RateCard{ID: int64(i + 1), Card: c, ValidFrom: r.pricedOn(c.Supplier), Active: true, Terms: r.file.Terms[c.ID]})
	}
	return out
}

func (r demoReader) shop() Shop {
	paper := r.job.Paper
	s := Shop{
		Letterhead: paper.Shop, Currency: r.job.Currency, Rates: r.job.Shop, ArtPerHour: r.job.Art.PerHour,
		Ladder: r.job.Ladder, ValidDays: paper.ValidDays, Terms: paper.Terms, StaleDays: r.file.StaleDays, Demo: paper.Demo,
	}
	for _, l := range r.file.Levels {
		s.Levels = append(s.Levels, Level{Name: l.Name, Pricing: l.over(r.job.Pricing)})
	}
	for _, x := range r.job.Extras {
		s.Extras = append(s.Extras, Extra{Key: x.ID, Extra: x, Usual: contains(r.file.UsualExtras, x.ID)})
	}
	for _, p := range r.file.Presets {
		s.Presets = append(s.Presets, Preset{Name: p.Name, Width: p.Width, Height: p.Height, Position: p.Position, Side: p.Side})
	}
	return s
}

func (l demoLevel) over(p quote.Pricing) quote.Pricing {
	if l.Percent != nil {
		p.Percent = *l.Percent
	}
	if l.FloorPercent != nil {
		p.FloorPercent = *l.FloorPercent
	}
	if l.MinimumOrder != nil {
		p.MinimumOrder = *l.MinimumOrder
	}
	p.Tax.Exempt = l.Exempt
	return p
}

// ReadBreaks reads prices written as "6.85 72:6.20": a price each, and what it falls to from a quantity on.
func ReadBreaks(text string) ([]quote.Break, error) {
	var out []quote.Break
	for _, word := range strings.Fields(text) {
		b := quote.Break{From: 1}
		from, each, found := strings.Cut(word, ":")
		if !found {
			each = word
		} else if _, err := fmt.Sscanf(from, "%d", &b.From); err != nil {
			return nil, fmt.Errorf("price %q: no quantity before the colon", word)
		}
		var err error
		if b.Each, err = money.ParseAmount(each); err != nil {
			return nil, fmt.Errorf("price %q: %w", word, err)
		}
		if len(out) > 0 && out[len(out)-1].From >= b.From {
			return nil, fmt.Errorf("price %q: its quantity does not rise", word)
		}
		out = append(out, b)
	}
	return out, nil
}

// WriteBreaks writes prices as ReadBreaks reads them.
func WriteBreaks(breaks []quote.Break) string {
	var b strings.Builder
	for i, x := range breaks {
		if i > 0 {
			b.WriteByte(' ')
		}
		if x.From != 1 {
			fmt.Fprintf(&b, "%d:", x.From)
		}
		b.WriteString(x.Each.String())
	}
	return b.String()
}
