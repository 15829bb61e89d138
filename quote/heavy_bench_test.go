package quote_test

import (
	"fmt"
	"math/rand"
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

// manyPlacements is the demo job with so many placements, each on every garment, and so many rate cards: the demo
// shop's in turn, each round a little dearer and on other suppliers' terms.
func manyPlacements(tb testing.TB, placements, cards int) quote.Job {
	job := demoJob(tb)
	r := rand.New(rand.NewSource(int64(100*placements + cards)))
	inks := []string{"white", "gold", "navy", "red"}
	back := job.Placements[0]
	job.Placements = nil
	for p := range placements {
		x := back
		x.ID, x.On, x.Method, x.Variants = fmt.Sprintf("place%d", p), nil, "", nil
		x.Width, x.Height = money.Int(int64(2+r.Intn(10))), money.Int(int64(2+r.Intn(9)))
		x.Inks = nil
		for _, k := range r.Perm(len(inks))[:1+r.Intn(3)] {
			x.Inks = append(x.Inks, inks[k])
		}
		job.Placements = append(job.Placements, x)
	}
	shop := job.RateCards
	job.RateCards = nil
	for c := range cards {
		card := shop[c%len(shop)]
		if round := c / len(shop); round > 0 {
			card.ID = fmt.Sprintf("%s-%d", card.ID, round)
			card.SetupPerDesign = quote.Sum(card.SetupPerDesign, amount(tb, fmt.Sprintf("%d.50", round)))
		}
		job.RateCards = append(job.RateCards, card)
	}
	return job
}

// manyLines is the demo job with so many garment lines, each of a style or a colour of its own.
func manyLines(tb testing.TB, lines int) quote.Job {
	job := demoJob(tb)
	first := job.Garments[0]
	job.Garments = nil
	for g := range lines {
		l := first
		l.ID, l.Style, l.Color = fmt.Sprintf("line%d", g), fmt.Sprintf("ST-%d", g/2), fmt.Sprintf("colour %d", g)
		job.Garments = append(job.Garments, l)
	}
	for p := range job.Placements {
		job.Placements[p].On = nil
	}
	return job
}

// BenchmarkPrice_large prices jobs far larger than a shop's, cold.
func BenchmarkPrice_large(b *testing.B) {
	for _, c := range []struct {
		name string
		job  quote.Job
	}{
		{"12 placements on 7 cards", manyPlacements(b, 12, 7)},
		{"40 placements on 13 cards", manyPlacements(b, 40, 13)},
		{"400 garment lines", manyLines(b, 400)},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := quote.Price(c.job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
