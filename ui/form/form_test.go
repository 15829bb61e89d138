package form

import (
	"testing"

	"pressworth/quote/money"
)

func read(texts map[string]string) *Reader {
	return &Reader{Get: func(path string) string { return texts[path] }}
}

func TestReader_takesWhatPeopleWriteAroundANumber(t *testing.T) {
	for text, want := range map[string]string{
		"12.50": "12.50", " $4.35 ": "4.35", "1,234.50": "1234.50", "": "0", ".5": "0.5", "8.25 %": "8.25",
	} {
		r := read(map[string]string{"x": text})
		if got := r.Amount("x"); got.String() != want || len(r.Problems) > 0 {
			t.Errorf("%q: got %s with %v, want %s", text, got, r.Problems, want)
		}
	}
}

func TestReader_saysWhatWouldDo(t *testing.T) {
	for text, do := range map[string]func(r *Reader){
		"12,50": func(r *Reader) { r.Amount("x") }, "-3": func(r *Reader) { r.Amount("x") }, "1e3": func(r *Reader) { r.Number("x") },
		"4,3O": func(r *Reader) { r.Number("x") }, "2.5": func(r *Reader) { r.Count("x") }, "0": func(r *Reader) { r.Length("x") },
		"31.5.2026": func(r *Reader) { r.Date("x") }, "100": func(r *Reader) { r.Percent("x", 100) },
		" ": func(r *Reader) { r.Need("x", "a name") },
	} {
		r := read(map[string]string{"x": text})
		do(r)
		if len(r.Problems) != 1 || r.Problems[0].Path != "x" {
			t.Errorf("%q: got %v, want one problem at x", text, r.Problems)
		}
	}
}

func TestReader_readsWordsAndDates(t *testing.T) {
	r := read(map[string]string{"w": "nylon, rain wear,,", "d": "2026-12-18", "n": "3/4"})
	if got := r.Words("w"); len(got) != 2 || got[1] != "rain wear" {
		t.Errorf("words: got %q", got)
	}
	if got := r.Date("d"); got != "2026-12-18" || len(r.Problems) > 0 {
		t.Errorf("date: got %q with %v", got, r.Problems)
	}
	if got := r.Number("n"); got.Cmp(money.Number{}) != 0 || len(r.Problems) != 1 {
		t.Errorf("fraction: got %s with %v, want a problem", got, r.Problems)
	}
}
