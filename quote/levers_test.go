package quote_test

import (
	"reflect"
	"testing"

	"pressworth/quote"
)

func TestLevers_theStrongestComesFirstAndEachMovesThePriceItsWay(t *testing.T) {
	job := demoJob(t)
	before := demoJob(t)
	got, err := quote.Levers(job)
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 6 {
		t.Fatalf("got %d levers, want six: %+v", len(got), got)
	}
	seen := map[string]quote.Lever{}
	for i, l := range got {
		seen[l.Name] = l
		if l.More.Sign() < 0 || l.Less.Sign() > 0 {
			t.Errorf("%s: a tenth less moves the price by %s, a tenth more by %s", l.Name, l.Less, l.More)
		}
		if i > 0 && quote.Less(l.More, l.Less).Cmp(quote.Less(got[i-1].More, got[i-1].Less)) > 0 {
			t.Errorf("%s reaches further than %s before it", l.Name, got[i-1].Name)
		}
	}
	if seen[quote.LeverBlanks].More.Cmp(seen[quote.LeverWage].More) <= 0 {
		t.Errorf("blanks (%s) should move this job more than the wage (%s)", seen[quote.LeverBlanks].More, seen[quote.LeverWage].More)
	}
	if !reflect.DeepEqual(job, before) {
		t.Error("the job was written into")
	}
}

// A tenth more for blanks of 301.10 raises cost by 30.11, and at 45 % margin the price by 30.11 / 0.55 = 54.75 (computed
// from the rule of margins); rounding to the cent of 46 prices may add up to 46 cents.
func TestLevers_aTenthOfTheBlanksIsWorthTheirShareOverOneLessMargin(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	got, err := quote.Levers(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range got {
		if l.Name != quote.LeverBlanks {
			continue
		}
		if units, _ := l.More.Minor(2); units < 5475-46 || units > 5475+46 {
			t.Errorf("got %s more for a tenth dearer blanks, want about 54.75", l.More)
		}
	}
}
