package quote

import (
	"testing"

	"pressworth/quote/money"
)

func amount(t *testing.T, s string) money.Amount {
	t.Helper()
	a, err := money.ParseAmount(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestCost_gatherAddsUpByKind(t *testing.T) {
	c := Cost{Lines: []CostLine{
		{Kind: KindBlanks, Ref: "a", Amount: amount(t, "211.65")},
		{Kind: KindBlanks, Ref: "b", Amount: amount(t, "47.95")},
		{Kind: KindSpoilage, Ref: "a", Amount: amount(t, "0.00")},
		{Kind: KindFreight, Ref: "n", Amount: amount(t, "12.50")},
	}}
	got := c.Gather()
	if len(got) != 2 || got[0].Amount.String() != "259.60" || len(got[0].Lines) != 2 || got[1].Kind != KindFreight {
		t.Errorf("got %+v, want blanks 259.60 of two lines, then freight; the zero kind left out", got)
	}
}

func TestPerPiece_roundsHalfAwayFromZero(t *testing.T) {
	for _, c := range []struct {
		amount string
		n      int
		want   string
	}{
		{"131.10", 36, "3.64"}, {"0.01", 2, "0.01"}, {"-0.01", 2, "-0.01"}, {"100", 3, "33"}, {"5.00", 0, "0.00"},
	} {
		if got := PerPiece(amount(t, c.amount), c.n).String(); got != c.want {
			t.Errorf("%s over %d: got %s, want %s", c.amount, c.n, got, c.want)
		}
	}
}

func TestNextBreak_passesOverATrifle(t *testing.T) {
	r := Result{
		Pieces: 46,
		Groups: []Group{
			{ID: "g", Lines: []string{"ls"}, UnitPrice: amount(t, "27.25")},
			{ID: "h", Lines: []string{"cap"}, UnitPrice: amount(t, "12.50")},
		},
		Ladder: []Step{step(t, 24, "30.75", "13.50"), step(t, 48, "27.00", "12.50"), step(t, 72, "24.25", "12.50")},
	}
	d, ok := r.NextBreak()
	if !ok || d.More != 26 || d.Less.String() != "3.00" || d.Group != "g" {
		t.Errorf("got %+v %v, want 26 more and 3.00 less for g", d, ok)
	}
	r.Ladder = r.Ladder[:2]
	if d, ok = r.NextBreak(); !ok || d.More != 2 || d.Less.String() != "0.25" {
		t.Errorf("got %+v %v, want the trifle where there is nothing else", d, ok)
	}
	r.Ladder = r.Ladder[:1]
	if d, ok = r.NextBreak(); ok {
		t.Errorf("got %+v, want no break above the last step", d)
	}
}

func step(t *testing.T, n int, ls, cap string) Step {
	return Step{Pieces: n, Units: map[string]money.Amount{"ls": amount(t, ls), "cap": amount(t, cap)}}
}
