package quote_test

import (
	"fmt"
	"os"
	"testing"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// demoJob is the rowing club's job at the demo shop: two styles in three lines, three placements, five cards of all four
// kinds, five ladder steps.
func demoJob(tb testing.TB) quote.Job {
	data, err := os.ReadFile("../assets/demo/job.json")
	if err != nil {
		tb.Fatal(err)
	}
	shop, err := jobfile.Decode(data)
	if err != nil {
		tb.Fatal(err)
	}
	job := readJob(tb, "regatta.job.json")
	job.Suppliers, job.RateCards = shop.Suppliers, shop.RateCards
	return job
}

// sixBySix is a form of 6 garment lines and 6 placements.
func sixBySix(tb testing.TB) quote.Job {
	job := demoJob(tb)
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
	for name, job := range map[string]quote.Job{"demo job": demoJob(b), "6 lines 6 placements": sixBySix(b)} {
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
	job := demoJob(b)
	for b.Loop() {
		if _, err := quote.Cheapest(job, "back", 150); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPrice_typing prices the jobs that come by while a quantity is typed, with what was learned before.
func BenchmarkPrice_typing(b *testing.B) {
	for name, job := range map[string]quote.Job{"demo job": demoJob(b), "6 lines 6 placements": sixBySix(b)} {
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

// BenchmarkFirst_typing is BenchmarkPrice_typing as far as a key needs it.
func BenchmarkFirst_typing(b *testing.B) {
	for name, job := range map[string]quote.Job{"demo job": demoJob(b), "6 lines 6 placements": sixBySix(b)} {
		b.Run(name, func(b *testing.B) {
			memory, n := quote.NewMemory(), 0
			sizes := job.Garments[0].Sizes
			for b.Loop() {
				n++
				sizes[1].Qty = 5 + n%40
				if _, err := memory.First(job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
