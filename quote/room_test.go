package quote_test

import (
	"testing"

	"pressworth/quote"
)

// One left chest of 4 × 4 a sheet of 13 × 9.5 leaves room for five more, three across and two down.
func TestRoom_furtherCopiesOfTheOwnDesign(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	job.Placements = job.Placements[:1]
	p := &job.Placements[0]
	p.Width, p.Height, p.Method, p.On = number(t, "4"), number(t, "4"), "sheets", nil
	job.Garments = job.Garments[:1]
	for i := range job.Garments[0].Sizes {
		job.Garments[0].Sizes[i].Qty = 0
	}
	job.Garments[0].Sizes[0].Qty = 8
	job.RateCards[1].Sizes = job.RateCards[1].Sizes[1:]
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	run := r.Plans[0].Runs[0]
	if run.Room == nil || run.Room.Placement != "back" || run.Room.More != 6-len(run.Pieces) {
		t.Errorf("got room %+v beside %d pieces, want six in all", run.Room, len(run.Pieces))
	}
}
