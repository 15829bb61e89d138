package present_test

import (
	"os"
	"testing"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
	"pressworth/ui/present"
)

func regattaJob(t *testing.T) quote.Job {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/regatta.job.json")
	if err != nil {
		t.Fatal(err)
	}
	job, err := jobfile.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return job
}

func pricedJob(t *testing.T, job quote.Job) quote.Result {
	t.Helper()
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The lines of price add up to the total, those of cost to the cost, on both sides and in the differences: each is the
// whole of its part.
func TestCompareJobs_linesAddUp(t *testing.T) {
	before := regattaJob(t)
	after := regattaJob(t)
	after.Pricing.RushPercent, after.Pricing.DiscountPercent = money.Int(10), money.Int(5)
	after.Pricing.DeliveryCharge = money.FromMinor(1500, 2)
	after.Shop.WagePerHour = money.FromMinor(3100, 2)
	after.Garments[0].Sizes[0].Qty += 4
	a, b := pricedJob(t, before), pricedJob(t, after)
	lines := present.CompareJobs(before, a, after, b)
	for part, total := range map[string]string{"Price": "Total with tax", "Cost": "Total cost"} {
		var sum [3]money.Amount
		var want [3]money.Amount
		for _, l := range lines {
			if l.Part != part {
				continue
			}
			for i, text := range []string{l.A, l.B, l.Differ} {
				x := read(t, text)
				if l.Name == total {
					want[i] = x
				} else {
					sum[i] = quote.Sum(sum[i], x)
				}
			}
		}
		for i, side := range []string{"before", "after", "the difference"} {
			if sum[i].Cmp(want[i]) != 0 {
				t.Errorf("%s, %s: the lines add up to %s, the total is %s", part, side, sum[i], want[i])
			}
		}
		if want[0].Cmp(want[1]) == 0 {
			t.Errorf("%s: nothing changed, the test says nothing", part)
		}
	}
}

// read is an amount as it stands on the page; a dash and nothing are none.
func read(t *testing.T, text string) money.Amount {
	t.Helper()
	plain := ""
	for _, r := range text {
		switch r {
		case ',', '+':
		case '−':
			plain += "-"
		default:
			plain += string(r)
		}
	}
	if plain == "" || plain == "–" {
		return money.Amount{}
	}
	a, err := money.ParseAmount(plain)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return a
}

func TestCompareJobs_saysSizesAndArtworkInWords(t *testing.T) {
	before, after := regattaJob(t), regattaJob(t)
	after.Garments[0].Sizes[0].Qty += 4
	after.Placements = after.Placements[:1]
	lines := present.CompareJobs(before, pricedJob(t, before), after, pricedJob(t, after))
	said := map[string]present.Line{}
	for _, l := range lines {
		said[l.Part+" "+l.Name] = l
	}
	if l := said["Garments Long-sleeve tee, navy"]; l.Same || l.A == l.B {
		t.Errorf("sizes: %+v", l)
	}
	gone := false
	for _, l := range lines {
		gone = gone || l.Part == "Artwork" && l.B == "–" && !l.Same
	}
	if !gone {
		t.Errorf("the placement that is gone is not said: %+v", lines)
	}
}
