package quote_test

import (
	"fmt"
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

// demoLike is the regatta job with all four kinds of card: two garment styles, three placements, five cards, five
// ladder steps.
func demoLike(tb testing.TB) quote.Job {
	job := readJob(tb, "regatta.job.json")
	sheet := job.RateCards[1]
	sheet.ID, sheet.Press = "embroidery-sheets", nil
	job.RateCards = append(job.RateCards,
		quote.RateCard{
			ID: "roll", Name: "Film by the roll", Supplier: "kiln", Kind: quote.RollCard, FullColor: true,
			Width: number(tb, "22"), Gap: number(tb, "0.25"), Press: job.RateCards[0].Press,
			Lengths: []quote.RollLength{
				{Length: number(tb, "24"), Each: amount(tb, "13.00")}, {Length: number(tb, "60"), Each: amount(tb, "29.00")},
				{Length: number(tb, "120"), Each: amount(tb, "54.00")},
			},
		},
		quote.RateCard{
			ID: "vinyl", Name: "Cut vinyl", Kind: quote.AreaCard, MaxInks: 2, MinimumEach: amount(tb, "0.60"),
			Rates: []quote.Break{{From: 1, Each: amount(tb, "0.031")}}, Press: &quote.Press{Prep: number(tb, "90"), Place: number(tb, "20"), Dwell: number(tb, "12")},
		},
		quote.RateCard{
			ID: "contract", Name: "Contract decorator", Supplier: "kiln", Kind: quote.PieceCard, FullColor: true,
			SetupPerDesign: amount(tb, "20.00"),
			Prices:         []quote.PieceRow{{Upto: number(tb, "6"), Each: []quote.Break{{From: 1, Each: amount(tb, "4.10")}, {From: 48, Each: amount(tb, "2.60")}}}},
			FullColorEach:  []quote.Break{{From: 1, Each: amount(tb, "5.10")}},
		})
	return job
}

// sixBySix is a form of 6 garment lines and 6 placements.
func sixBySix(tb testing.TB) quote.Job {
	job := demoLike(tb)
	first := job.Garments[0]
	job.Garments = nil
	for g := range 6 {
		l := first
		l.ID, l.Style, l.Color = fmt.Sprintf("line%d", g), fmt.Sprintf("ST-%d", g/2), fmt.Sprintf("colour %d", g)
		job.Garments = append(job.Garments, l)
	}
	back := job.Placements[0]
	job.Placements = nil
	for p := range 6 {
		x := back
		x.ID, x.On = fmt.Sprintf("place%d", p), nil
		x.Width, x.Height = money.Int(int64(3+p)), money.Int(int64(2+p))
		job.Placements = append(job.Placements, x)
	}
	return job
}

func number(tb testing.TB, s string) money.Number {
	n, err := money.ParseNumber(s)
	if err != nil {
		tb.Fatal(err)
	}
	return n
}

func amount(tb testing.TB, s string) money.Amount {
	a, err := money.ParseAmount(s)
	if err != nil {
		tb.Fatal(err)
	}
	return a
}

func BenchmarkPrice(b *testing.B) {
	for name, job := range map[string]quote.Job{"demo job": demoLike(b), "6 lines 6 placements": sixBySix(b)} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := quote.Price(job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkCheapest(b *testing.B) {
	job := demoLike(b)
	for b.Loop() {
		if _, err := quote.Cheapest(job, "back", 150); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPrice_typing prices the jobs that come by while a quantity is typed, with what was learned before.
func BenchmarkPrice_typing(b *testing.B) {
	for name, job := range map[string]quote.Job{"demo job": demoLike(b), "6 lines 6 placements": sixBySix(b)} {
		b.Run(name, func(b *testing.B) {
			memory, n := quote.NewMemory(), 0
			sizes := job.Garments[0].Sizes
			for b.Loop() {
				n++
				sizes[1].Qty = 5 + n%40
				if _, err := memory.Price(job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
