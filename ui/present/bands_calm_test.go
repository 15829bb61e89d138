package present

import (
	"fmt"
	"strings"
	"testing"
)

func TestBands_cardsThatTakeTurnsAreOneSpan(t *testing.T) {
	span := func(from, to int, card string) BandSpan { return BandSpan{From: from, To: to, Card: card} }
	for name, x := range map[string]struct {
		spans []BandSpan
		want  string
	}{
		"long spans stay":      {[]BandSpan{span(1, 17, "Film"), span(18, 150, "Sheets")}, "1–17 Film|18–150 Sheets"},
		"two short ones stay":  {[]BandSpan{span(1, 2, "Film"), span(3, 4, "Roll"), span(5, 150, "Sheets")}, "1–2 Film|3–4 Roll|5–150 Sheets"},
		"many become one":      {[]BandSpan{span(1, 9, "Film"), span(10, 10, "Roll"), span(11, 11, "Film"), span(12, 13, "Roll"), span(14, 150, "Film")}, "1–9 Film|10–13 roll or film|14–150 Film"},
		"one without any card": {[]BandSpan{span(1, 1, ""), span(2, 2, "Film"), span(3, 3, "")}, "1–3 no card or film"},
	} {
		var got []string
		for _, s := range calm(x.spans) {
			got = append(got, fmt.Sprintf("%d–%d %s", s.From, s.To, s.Card))
		}
		if s := strings.Join(got, "|"); s != x.want {
			t.Errorf("%s: got %s, want %s", name, s, x.want)
		}
	}
}
