package nest_test

import (
	"reflect"
	"testing"

	"pressworth/quote/nest"
)

// forty are pieces that take a search: different, and near to filling the sheet.
func forty() (nest.Sheet, []nest.Piece) {
	ps := make([]nest.Piece, 40)
	for i := range ps {
		ps[i] = nest.Piece{W: int64(11 + i*7%23), H: int64(9 + i*5%31), Turn: true, Count: 1}
	}
	return nest.Sheet{W: 150, H: 148}, ps
}

func TestEffort_sameStepsGiveTheSameLayout(t *testing.T) {
	s, ps := forty()
	e := nest.Effort{Steps: 30_000}
	one, _ := nest.Strip(s, ps, e)
	two, _ := nest.Strip(s, ps, e)
	if !reflect.DeepEqual(one, two) {
		t.Errorf("Strip: lengths %d and %d, layouts differ", one.Length, two.Length)
	}
	a, _ := nest.Bins(nest.Sheet{W: 80, H: 80}, ps, e)
	b, _ := nest.Bins(nest.Sheet{W: 80, H: 80}, ps, e)
	if !reflect.DeepEqual(a, b) {
		t.Errorf("Bins: %d and %d sheets, layouts differ", a.Sheets, b.Sheets)
	}
}

func TestEffort_moreStepsAreNoWorseThanNone(t *testing.T) {
	s, ps := forty()
	none, _ := nest.Strip(s, ps, nest.Effort{})
	some, _ := nest.Strip(s, ps, nest.Effort{Steps: 100_000})
	if some.Length >= none.Length {
		t.Errorf("length %d with steps, %d without: the search finds nothing", some.Length, none.Length)
	}
}

func TestEffort_stopEndsTheSearch(t *testing.T) {
	s, ps := forty()
	asked := 0
	e := nest.Effort{Steps: 1 << 50, Stop: func() bool { asked++; return asked > 3 }}
	r, err := nest.Strip(s, ps, e)
	if err != nil {
		t.Fatal(err)
	}
	s.H = 0
	if err := nest.Check(s, ps, r.Placed); err != nil {
		t.Error(err)
	}
	if asked < 4 && r.Length > r.Bound {
		t.Errorf("asked %d times, length %d, bound %d", asked, r.Length, r.Bound)
	}
	asked = 0
	if _, v := nest.Fit(nest.Sheet{W: 120, H: 118}, ps, e); v == nest.Fits {
		t.Error("Fit: these pieces are more than the sheet")
	}
}
