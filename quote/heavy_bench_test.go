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
	return drawnPlacements(tb, placements, cards, int64(100*placements+cards))
}

func drawnPlacements(tb testing.TB, placements, cards int, seed int64) quote.Job {
	job := demoJob(tb)
	r := rand.New(rand.NewSource(seed))
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

// Where there are too many combinations to weigh them all, the one that is found is near the best: measured where all
// can be weighed.
func TestSearch_changingAGoodCombinationComesNearTheBest(t *testing.T) {
	missed, sum, worst, jobs := 0, 0.0, 0.0, 0
	for seed := range int64(16) {
		job := drawnPlacements(t, 5, 5, seed)
		roamed, best, err := quote.Roamed(job)
		if err != nil {
			t.Fatal(err)
		}
		gap := 100 * float64(roamed-best) / float64(best)
		if gap < 0 {
			t.Fatalf("seed %d: found %d, all weighed %d", seed, roamed, best)
		}
		if gap > 0 {
			missed++
		}
		jobs, sum, worst = jobs+1, sum+gap, max(worst, gap)
	}
	t.Logf("of %d jobs %d cost more than the best combination: %.2f %% on average, %.2f %% at most", jobs, missed, sum/float64(jobs), worst)
	if sum/float64(jobs) > 0.5 || worst > 3 {
		t.Errorf("%.2f %% above the best on average, %.2f %% at most", sum/float64(jobs), worst)
	}
}
