package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/quote"
	"pressworth/ui/chart"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// bands are the cheapest cards by quantity for one placement.
type bands struct {
	box    *fyne.Container
	choice *parts.Choice
	chart  *chart.Bands
	keys   []string
}

func newBands(p *present.Counter) *bands {
	b := &bands{chart: chart.NewBands()}
	b.choice = parts.NewChoice(nil, func(o parts.Option) { p.LookAt(o.Key) }).Small().Bare()
	head := parts.Row(8, []parts.Track{parts.Share(1), parts.Fixed(128)},
		parts.NewText("Cheapest from–to", parts.TitleStyle), b.choice)
	b.box = parts.Column(6, head, b.chart)
	return b
}

func (b *bands) set(v present.Bands, stale bool) {
	b.options(v)
	rows := make([]chart.Band, len(v.Rows))
	for i, r := range v.Rows {
		rows[i] = chart.Band{Name: r.Name, Own: r.Own}
		for _, s := range r.Spans {
			rows[i].Spans = append(rows[i].Spans, bandSpan(s))
		}
	}
	b.chart.Set(rows, v.Upto, v.Pieces, stale || v.Seeking)
}

// bandSpan tells cards apart: films by area and by the roll in one tone, printed sheets and pieces in the other.
func bandSpan(s present.BandSpan) chart.Span {
	out := chart.Span{From: s.From, To: s.To, Label: s.Label, Tone: s.Place, Film: isFilm(s.Kind)}
	if s.Card == "" {
		out.Tone = -1
	}
	return out
}

func isFilm(kind string) bool { return kind == quote.AreaCard || kind == quote.RollCard }

// options offers the placements of the job.
func (b *bands) options(v present.Bands) {
	same := len(b.keys) == len(v.Placements)
	for i := 0; same && i < len(b.keys); i++ {
		same = b.keys[i] == v.Placements[i].Key
	}
	if !same {
		options := make([]parts.Option, len(v.Placements))
		b.keys = nil
		for i, p := range v.Placements {
			options[i] = parts.Option{Key: p.Key, Name: p.Name}
			b.keys = append(b.keys, p.Key)
		}
		b.choice.SetOptions(options)
	}
	b.choice.SetKey(v.Key)
}
