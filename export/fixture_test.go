package export

import (
	"os"
	"testing"
	"time"

	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// date is the day on every document of these tests.
var date = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// regatta is a whole job with its paper, and its result.
func regatta(tb testing.TB) (quote.Job, quote.Result) {
	tb.Helper()
	data, err := os.ReadFile("../testdata/jobs/regatta.job.json")
	if err != nil {
		tb.Fatal(err)
	}
	job, err := jobfile.Decode(data)
	if err != nil {
		tb.Fatal(err)
	}
	job.Paper = &quote.Paper{
		Customer: quote.Party{Name: "Harbour Rowing Club", Contact: "Ines Halvorsen", Email: "ines@rowing.example"},
		Shop: quote.Party{
			Name: "Harbour & Pine Print Room", Address: "12 Quay Lane\nPort Ellery", Phone: "555 0142",
			Email: "hello@harbourandpine.example",
		},
		Number: "2026-0147", NeededBy: "2026-12-18", ValidDays: 14, Demo: true,
		Terms: "Half on ordering, the rest when you collect.", Notes: "Blades crossed on the sleeve, as last year.",
	}
	for i, look := range [][2]string{{"long sleeve", "#22335a"}, {"long sleeve", "#fbfaf6"}, {"cap", "#22335a"}} {
		job.Garments[i].Info.Category, job.Garments[i].Info.Hex = look[0], look[1]
	}
	return job, resultOf(tb, job)
}

func resultOf(tb testing.TB, job quote.Job) quote.Result {
	tb.Helper()
	r, err := quote.Price(job)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}
