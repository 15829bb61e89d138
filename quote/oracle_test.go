package quote_test

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

func places(job quote.Job) int {
	if job.Currency == "JPY" {
		return 0
	}
	return 2
}

// Every figure of a random job, from the split of a cost line to the cliffs, has to be what the oracle makes of it.
func TestPrice_isWhatTheOracleSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		want, unserved := plain.Price(job, newPlanner(job))
		got, err := quote.Price(job)
		if (err != nil) != (unserved != nil) {
			t.Fatalf("oracle: %v, engine: %v\n%s", unserved, err, jobfile.Encode(job))
		}
		var problems quote.Problems
		if err != nil && (!errors.As(err, &problems) || !strings.HasPrefix(problems[0].Path, "placements[")) {
			t.Fatalf("a placement that no card serves, engine: %v\n%s", err, jobfile.Encode(job))
		}
		if err != nil {
			return
		}
		if d := differences(want, got, places(job)); len(d) > 0 {
			t.Fatalf("%s\n%s", strings.Join(d, "\n"), jobfile.Encode(job))
		}
	})
}

// The same with all placements fixed on one sheet or roll card, so that runs and the ways to share them are looked at.
func TestPrice_sharedSheetsAreWhatTheOracleSays(t *testing.T) {
	shared := 0
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		d := &draw{T: t, places: places(job), mm: job.Unit == "mm", fine: true}
		c := quote.RateCard{ID: "gang", Name: "Gang", Supplier: "kiln", SetupPerDesign: d.amount(0, 9), SetupPerInk: d.amount(0, 9)}
		if d.oneIn(2) {
			c.Press = &quote.Press{Place: d.number(1, 20, 0)}
		}
		if d.oneIn(3) {
			d.rollCard(&c)
		} else {
			d.sheetCard(&c)
			c.Sizes[0].Prices = append(c.Sizes[0].Prices, quote.InkRow{Inks: 12, Each: d.breaks(3, 1, 9, 1, d.price)})
		}
		job.RateCards = append(job.RateCards, c)
		job.Placements = append(job.Placements[:min(1, len(job.Placements))], d.placement(7, job), d.placement(8, job))
		for i := range job.Placements {
			p := &job.Placements[i]
			if p.FullColor {
				p.FullColor, p.InkCount = false, 1
			}
			if p.Method = "gang"; d.oneIn(6) {
				p.Method = ""
			}
		}
		want, unserved := plain.Price(job, newPlanner(job))
		got, err := quote.Price(job)
		if (err != nil) != (unserved != nil) {
			t.Fatalf("oracle: %v, engine: %v\n%s", unserved, err, jobfile.Encode(job))
		}
		if err != nil {
			t.Skip("a placement that the card does not serve")
		}
		for _, p := range got.Plans {
			for _, r := range p.Runs {
				if len(r.Weights) > 1 {
					shared++
				}
			}
		}
		if d := differences(want, got, places(job)); len(d) > 0 {
			t.Fatalf("%s\n%s", strings.Join(d, "\n"), jobfile.Encode(job))
		}
	})
	if shared == 0 {
		t.Error("no run was shared")
	}
}

// A comparison that never finds anything would be worth nothing: every kind of figure, changed a little, has to be found.
func TestOracle_findsAWrongFigure(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	job.Ladder = append(job.Ladder, 47)
	want, err := plain.Price(job, newPlanner(job))
	if err != nil {
		t.Fatal(err)
	}
	cent := money.FromMinor(1, 2)
	for name, spoil := range map[string]func(r *quote.Result){
		"a cost line":     func(r *quote.Result) { r.Cost.Lines[0].Amount = cent },
		"a missing line":  func(r *quote.Result) { r.Cost.Lines = r.Cost.Lines[1:] },
		"a line twice":    func(r *quote.Result) { r.Cost.Lines = append(r.Cost.Lines, r.Cost.Lines[0]) },
		"a split":         func(r *quote.Result) { r.Garments[1].Split[0].Amount = cent },
		"a spare":         func(r *quote.Result) { r.Garments[0].Sizes[0].Spares++ },
		"a unit price":    func(r *quote.Result) { r.Garments[2].UnitPrice = cent },
		"a size's price":  func(r *quote.Result) { r.Garments[0].Sizes[3].UnitPrice = cent },
		"a method":        func(r *quote.Result) { r.Methods[0].Card = "film" },
		"a runner-up":     func(r *quote.Result) { r.Methods[0].RunnerUp = "sheets" },
		"its cost":        func(r *quote.Result) { r.Methods[1].RunnerUpCost = &cent },
		"the tax":         func(r *quote.Result) { r.Price.Tax = cent },
		"the hours":       func(r *quote.Result) { r.Hours = "2.24" },
		"the margin":      func(r *quote.Result) { r.MarginPercent = nil },
		"left per hour":   func(r *quote.Result) { r.LeftPerHour = &cent },
		"a ladder price":  func(r *quote.Result) { r.Ladder[2].Units["cap"] = cent },
		"a ladder method": func(r *quote.Result) { r.Ladder[0].Methods["back"] = "sheets" },
		"a ladder total":  func(r *quote.Result) { r.Ladder[4].Total = cent },
		"a cliff":         func(r *quote.Result) { r.Cliffs = append(r.Cliffs, quote.Cliff{From: 46, To: 47, Saves: cent}) },
	} {
		t.Run(name, func(t *testing.T) {
			got, err := quote.Price(job)
			if err != nil {
				t.Fatal(err)
			}
			if d := differences(want, got, 2); len(d) != 0 {
				t.Fatalf("before anything is spoilt: %v", d)
			}
			if spoil(&got); len(differences(want, got, 2)) == 0 {
				t.Error("not found")
			}
		})
	}
}
