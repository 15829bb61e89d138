package quote_test

import (
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// personal adds names and numbers on any of a job's garments, and cards that take them: by area, by the character, by
// text, and on a roll. Prices may have parts of a cent.
func (d *draw) personal(job *quote.Job) {
	job.Placements = job.Placements[:min(1, len(job.Placements))] // for speed
	for i := range job.Placements {
		job.Placements[i].Method = ""
	}
	job.Ladder = job.Ladder[:min(2, len(job.Ladder))]
	cards := job.RateCards[:1] // takes everything
	for i := range d.upto(1, 2) {
		cards = append(cards, d.textCard(i))
	}
	job.RateCards = cards
	job.Garments[0].Sizes[0].Qty = max(1, job.Garments[0].Sizes[0].Qty)
	for i := range d.upto(1, 2) {
		job.Placements = append(job.Placements, d.texts(i, *job))
	}
}

// texts are names or numbers on some of the pieces of a job.
func (d *draw) texts(i int, job quote.Job) quote.Placement {
	p := quote.Placement{
		ID: fmt.Sprint("names", i), Name: "Names", Personal: true, Width: d.length(3, 11), Height: d.length(1, 3), CharWidth: d.length(1, 2),
		InkCount: 1, On: d.on(job), ChargeEach: d.amount(0, 9), FullColor: d.oneIn(3), NoTurn: d.oneIn(4),
		ChargeBy: d.one("", "text", "character"), Untaxed: d.oneIn(3),
	}
	if p.On != nil && !slices.Contains(p.On, job.Garments[0].ID) {
		p.On = append(p.On, job.Garments[0].ID)
	}
	for _, g := range job.Garments {
		if p.On != nil && !slices.Contains(p.On, g.ID) {
			continue
		}
		for _, z := range g.Sizes {
			for range min(z.Qty, d.upto(0, 3)) {
				p.Texts = append(p.Texts, quote.Text{Garment: g.ID, Size: z.Size, Text: d.one("7", "23", "RIVERA", "Ærø", "OKONKWO-LINDGREN")})
			}
		}
	}
	if len(p.Texts) == 0 {
		g := job.Garments[0]
		p.Texts = []quote.Text{{Garment: g.ID, Size: g.Sizes[0].Size, Text: "LI"}}
	}
	return p
}

func (d *draw) textCard(i int) quote.RateCard {
	c := quote.RateCard{
		ID: fmt.Sprint("names", i), Name: "Names", Supplier: "kiln", SetupPerDesign: d.amount(0, 9), SetupPerInk: d.amount(0, 9),
		MinimumEach: d.amount(0, 1),
	}
	if !d.oneIn(4) {
		c.Press = &quote.Press{Place: d.number(1, 20, 0), PrepMin: d.number(0, 3, 1)}
	}
	switch d.upto(1, 4) {
	case 1:
		c.Kind, c.FullColor = quote.AreaCard, true
		c.Rates = d.breaks(3, 0, 1, 1, d.price)
	case 2:
		c.Kind, c.By = quote.PieceCard, "character"
		c.Prices = []quote.PieceRow{{Upto: num("6"), Each: d.breaks(2, 0, 2, 1, d.price)}, {Upto: num("20"), Each: d.breaks(2, 0, 2, 1, d.price)}}
	case 3:
		c.Kind = quote.PieceCard
		c.Prices = []quote.PieceRow{{Upto: num("3"), Each: d.breaks(2, 0, 6, 1, d.price)}}
	default:
		d.rollCard(&c)
		c.FullColor = true
	}
	return c
}

// namedJob is a random job with names and numbers.
func namedJob(t *rapid.T) quote.Job {
	job := drawJob(t)
	(&draw{T: t, places: places(job), mm: job.Unit == "mm", fine: rapid.Bool().Draw(t, "fine")}).personal(&job)
	return job
}

func TestPrice_namesAndNumbersAreWhatTheOracleSays(t *testing.T) {
	kinds := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		job := namedJob(t)
		want, unserved := plain.Price(job, newPlanner(job))
		got, err := quote.Price(job)
		if (err != nil) != (unserved != nil) {
			t.Fatalf("oracle: %v, engine: %v\n%s", unserved, err, jobfile.Encode(job))
		}
		if err != nil {
			t.Skip("a placement that no card serves")
		}
		for _, m := range got.Methods {
			i := slices.IndexFunc(job.RateCards, func(c quote.RateCard) bool { return c.ID == m.Card })
			if strings.HasPrefix(m.Placement, "names") {
				kinds[job.RateCards[i].Kind+" "+job.RateCards[i].By]++
			}
		}
		if d := differences(want, got, places(job)); len(d) > 0 {
			t.Fatalf("%s\n%s", strings.Join(d, "\n"), jobfile.Encode(job))
		}
	})
	for _, kind := range []string{"area ", "piece ", "piece character", "roll "} {
		if kinds[kind] == 0 {
			t.Errorf("no names went on a card of kind %q: %v", kind, kinds)
		}
	}
}

func TestPrice_orderOfTheRosterChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := namedJob(t)
		want, err := quote.Price(job)
		if err != nil {
			t.Skip(err.Error())
		}
		other := job
		other.Placements = slices.Clone(job.Placements)
		for i := range other.Placements {
			texts := slices.Clone(other.Placements[i].Texts)
			rand.New(rand.NewSource(rapid.Int64().Draw(t, "seed"))).Shuffle(len(texts), func(a, b int) { texts[a], texts[b] = texts[b], texts[a] })
			other.Placements[i].Texts = texts
		}
		got, err := quote.Price(other)
		if err != nil {
			t.Fatal(err)
		}
		withoutTexts(&want)
		withoutTexts(&got)
		if w, g := jobfile.EncodeResult(want), jobfile.EncodeResult(got); string(w) != string(g) {
			t.Fatalf("got\n%s\nwant\n%s\n%s", g, w, jobfile.Encode(job))
		}
	})
}

// withoutTexts leaves out which text lies where on a sheet.
func withoutTexts(r *quote.Result) {
	for i := range r.Plans {
		for k := range r.Plans[i].Runs {
			run := &r.Plans[i].Runs[k]
			for n := range run.Pieces {
				run.Pieces[n].Text = ""
			}
			for n := range run.Weights {
				run.Weights[n].Text = ""
			}
		}
	}
}

// Without breaks, and with freight that is never free, one more text never makes a job cheaper to make.
func TestPrice_oneMoreTextNeverLowersTheCost(t *testing.T) {
	tried := 0
	rapid.Check(t, func(t *rapid.T) {
		job := namedJob(t)
		job.Ladder, job.Shop.MixingSavesAtLeast = nil, money.Amount{}
		for i := range job.Suppliers {
			job.Suppliers[i].FreeFrom = money.Amount{}
		}
		for i := range job.RateCards {
			c := &job.RateCards[i]
			c.Rates = c.Rates[:min(1, len(c.Rates))]
			for k := range c.Prices {
				c.Prices[k].Each = c.Prices[k].Each[:1]
				c.Prices[k].Each[0].Each = c.Prices[0].Each[0].Each
			}
		}
		p := &job.Placements[len(job.Placements)-1]
		more := p.Texts
		p.Texts = p.Texts[:len(p.Texts)-1]
		if len(p.Texts) == 0 {
			t.Skip("one text only")
		}
		less, err := quote.Price(job)
		if err != nil {
			t.Skip(err.Error())
		}
		p.Texts = more
		got, err := quote.Price(job)
		if err != nil {
			t.Skip(err.Error())
		}
		tried++
		if got.Cost.Total.Cmp(less.Cost.Total) < 0 {
			t.Fatalf("%d texts cost %s, one fewer %s\n%s", len(more), got.Cost.Total, less.Cost.Total, jobfile.Encode(job))
		}
	})
	if tried == 0 {
		t.Error("nothing was tried")
	}
}

// On a layout every text stands once.
func TestPlan_everyTextIsOnTheRollOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := namedJob(t)
		result, err := quote.Price(job)
		if err != nil {
			t.Skip(err.Error())
		}
		for _, plan := range result.Plans {
			count := map[string]int{}
			for _, run := range plan.Runs {
				for _, x := range run.Pieces {
					count[x.Placement+" "+x.Text]++
				}
				if run.Sheets > 1 {
					return // one layout stands for several lengths
				}
			}
			for _, p := range job.Placements {
				for _, x := range p.Texts {
					if _, on := count[p.ID+" "+x.Text]; on {
						count[p.ID+" "+x.Text]--
					}
				}
			}
			for x, n := range count {
				if n != 0 && strings.HasPrefix(x, "names") {
					t.Fatalf("%q: %d too many\n%s", x, n, jobfile.Encode(job))
				}
			}
		}
	})
}
