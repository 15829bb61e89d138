package quote_test

import (
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Two clubs with small left-chest prints in the same inks: apart each buys the minimum of ten sheets, together one run
// of ten holds both.
func TestTogether_smallJobsShareASheet(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	job.Placements = job.Placements[:1]
	job.Placements[0].Width, job.Placements[0].Height = number(t, "4"), number(t, "4")
	job.Placements[0].Method = "sheets"
	other := job
	other.Placements = append([]quote.Placement(nil), job.Placements...)
	other.Placements[0].ID, other.Placements[0].Width = "chest", number(t, "3.5")
	shared, err := quote.Together([]quote.Job{job, other})
	if err != nil {
		t.Fatal(err)
	}
	if len(shared) != 1 {
		t.Fatalf("got %+v, want one group", shared)
	}
	s := shared[0]
	if s.Saves.Sign() <= 0 || len(s.Jobs) != 2 || quote.Sum(s.Together, s.Saves).Cmp(s.Separate) != 0 || quote.Sum(s.Parts...).Cmp(s.Together) != 0 {
		t.Errorf("got %+v: parts must add up to the cost together, and saving to the cost apart", s)
	}
	a, b := planCost(t, job), planCost(t, other)
	if quote.Sum(a, b).String() != s.Separate.String() {
		t.Errorf("apart %s and %s, but separate is %s", a, b, s.Separate)
	}
	if s.Parts[0].Cmp(a) > 0 || s.Parts[1].Cmp(b) > 0 {
		t.Errorf("parts %v of %s and %s: a job pays more than alone", s.Parts, a, b)
	}
}

func TestTogether_otherInksOrNoSheetsShareNothing(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	film := job
	film.RateCards = job.RateCards[:1]
	shared, err := quote.Together([]quote.Job{job, film})
	if err != nil || len(shared) != 0 {
		t.Errorf("got %+v, %v; want nothing", shared, err)
	}
	if shared, err := quote.Together(nil); err != nil || shared != nil {
		t.Errorf("of no jobs: got %+v, %v", shared, err)
	}
}

func planCost(t *testing.T, job quote.Job) money.Amount {
	t.Helper()
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	return r.Plans[0].Cost
}
