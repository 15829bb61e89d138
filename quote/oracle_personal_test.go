package quote_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/jobfile"
)

// personal adds names and numbers on one garment line to a job, on a card by area or by piece. The ladder is left out: it
// is not told how many texts another quantity has.
func (d *draw) personal(job *quote.Job) {
	job.Ladder = nil
	g := &job.Garments[0]
	s := &g.Sizes[0]
	s.Qty = max(1, s.Qty)
	p := quote.Placement{
		ID: "names", Name: "Names", Personal: true, Width: d.length(3, 11), Height: d.length(1, 3), CharWidth: d.length(1, 2),
		InkCount: 1, On: []string{g.ID}, ChargeEach: d.amount(0, 9), FullColor: d.oneIn(3),
	}
	for range d.upto(1, s.Qty) {
		p.Texts = append(p.Texts, quote.Text{Garment: g.ID, Size: s.Size, Text: d.one("7", "23", "RIVERA", "Ærø", "OKONKWO-LINDGREN")})
	}
	c := quote.RateCard{
		ID: "names", Name: "Names", Supplier: "kiln", SetupPerDesign: d.amount(0, 9), SetupPerInk: d.amount(0, 9),
		Press: &quote.Press{Place: d.number(1, 20, 0), PrepMin: d.number(0, 3, 1)}, MinimumEach: d.amount(0, 1),
	}
	switch d.upto(1, 3) {
	case 1:
		c.Kind, c.FullColor = quote.AreaCard, true
		c.Rates = d.breaks(3, 0, 1, 1, d.amount)
	case 2:
		c.Kind, c.By = quote.PieceCard, "character"
		c.Prices = []quote.PieceRow{{Upto: num("6"), Each: d.breaks(2, 0, 2, 1, d.amount)}, {Upto: num("20"), Each: d.breaks(2, 0, 2, 1, d.amount)}}
	default:
		c.Kind = quote.PieceCard
		c.Prices = []quote.PieceRow{{Upto: num("1"), Each: d.breaks(2, 0, 6, 1, d.amount)}}
	}
	// a roll shares by text, and parts of a cent by length of text: neither is compared
	other := func(c quote.RateCard) bool { return c.Kind == quote.RollCard || c.Kind == quote.PieceCard }
	job.RateCards = append(slices.DeleteFunc(job.RateCards, other), c)
	job.Placements = job.Placements[:min(1, len(job.Placements))] // for speed
	for i := range job.Placements {
		job.Placements[i].Method = ""
	}
	job.Placements = append(job.Placements, p)
}

func TestPrice_namesAndNumbersAreWhatTheOracleSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		(&draw{T: t, places: places(job), mm: job.Unit == "mm"}).personal(&job)
		want, unserved := plain.Price(job, newPlanner(job))
		got, err := quote.Price(job)
		if (err != nil) != (unserved != nil) {
			t.Fatalf("oracle: %v, engine: %v\n%s", unserved, err, jobfile.Encode(job))
		}
		if err != nil {
			t.Skip("a placement that no card serves")
		}
		want.Cliffs, got.Cliffs = nil, nil
		if d := differences(want, got, places(job)); len(d) > 0 {
			t.Fatalf("%s\n%s", strings.Join(d, "\n"), jobfile.Encode(job))
		}
	})
}
