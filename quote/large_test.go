package quote_test

import (
	"errors"
	"strings"
	"testing"

	"pressworth/quote"
)

// The largest price that a file may hold is still worked out to the cent: 6 × 999999999999.99999999 and what the rest
// of the regatta costs.
func TestPrice_theLargestPriceOfABlank(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	job.Garments[0].Sizes[0].Each = []quote.Break{{From: 1, Each: amount(t, "999999999999.99999999")}}
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := r.Cost.Lines[0].Amount.String(), "6000000000170.55"; got != want { // 21 × 6.85 + 3 × 8.90 beside them
		t.Errorf("blanks of the navy line cost %s, want %s", got, want)
	}
}

func TestPrice_amountsTooLargeAreNamed(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	job.Shop.WagePerHour, job.Shop.JobSetupMin = amount(t, "999999999999.99999999"), number(t, "999999999999.99999999")
	_, err := quote.Price(job)
	var problems quote.Problems
	if !errors.As(err, &problems) || !strings.Contains(err.Error(), "shop.wage_per_hour") || !strings.Contains(err.Error(), "shop.job_setup_min") {
		t.Errorf("got %v, want both fields named", err)
	}
}
