package quote_test

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/jobfile"
)

// unfolded is the card at each quantity.
func unfolded(t *rapid.T, spans []quote.Span, upto int) []string {
	var cards []string
	for _, s := range spans {
		if s.From != len(cards)+1 || s.To < s.From {
			t.Fatalf("spans do not follow one another: %v", spans)
		}
		for range s.To - s.From + 1 {
			cards = append(cards, s.Card)
		}
	}
	if len(cards) != upto {
		t.Fatalf("spans reach to %d, want %d: %v", len(cards), upto, spans)
	}
	return cards
}

func TestCheapest_isWhatTheOracleSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		if len(job.Placements) == 0 {
			t.Skip("no placement")
		}
		id, upto := job.Placements[0].ID, rapid.IntRange(1, 6).Draw(t, "upto")
		got, err := quote.Cheapest(job, id, upto)
		if err != nil {
			t.Skip(err.Error())
		}
		want := plain.Cheapest(job, id, upto, func(j quote.Job) plain.Planner { return newPlanner(j) })
		all := append([]quote.InkSpans{{Inks: "own", Spans: got.Spans}}, got.ByInks...)
		if len(all) != len(want) {
			t.Fatalf("%d bands, want %d", len(all), len(want))
		}
		for _, b := range all {
			if cards := unfolded(t, b.Spans, upto); !slices.Equal(cards, want[b.Inks]) {
				t.Fatalf("inks %s:\n got %s\nwant %s\n%s", b.Inks, fmt.Sprint(cards), fmt.Sprint(want[b.Inks]), jobfile.Encode(job))
			}
		}
	})
}
