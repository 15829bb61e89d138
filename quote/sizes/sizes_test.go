package sizes_test

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote/sizes"
)

var adult = []string{"S", "M", "L", "XL", "2XL"}

func TestParse(t *testing.T) {
	type counts = []sizes.Count
	cases := []struct {
		name, text string
		run        []string
		want       counts
	}{
		{"sizes by name", "S12 M24 L24 XL12 2XL6", adult, counts{{"S", 12}, {"M", 24}, {"L", 24}, {"XL", 12}, {"2XL", 6}}},
		{"come in the order of the run", "2xl6, s12", adult, counts{{"S", 12}, {"2XL", 6}}},
		{"youth, toddlers and one size", "YS4 YM6 2T3 OS10", nil, counts{{"2T", 3}, {"YS", 4}, {"YM", 6}, {"OS", 10}}},
		{"without spaces", "S12M24XL3", adult, counts{{"S", 12}, {"M", 24}, {"XL", 3}}},
		{"with marks between", "S:12; M = 24, L × 6\nXL 2", adult, counts{{"S", 12}, {"M", 24}, {"L", 6}, {"XL", 2}}},
		{"the other spelling of a size", "xxl4 XXXL2", []string{"2XL", "3XL"}, counts{{"2XL", 4}, {"3XL", 2}}},
		{"the run's own spelling", "2XL4", []string{"XXL"}, counts{{"XXL", 4}}},
		{"by position", "6/11/9/0/3", adult, counts{{"S", 6}, {"M", 11}, {"L", 9}, {"XL", 0}, {"2XL", 3}}},
		{"dashes and gaps for nothing", "6/–//-/3", adult, counts{{"S", 6}, {"M", 0}, {"L", 0}, {"XL", 0}, {"2XL", 3}}},
		{"fewer positions than sizes", "6 / 11", adult, counts{{"S", 6}, {"M", 11}}},
		{"figures only", "6 11 9", adult, counts{{"S", 6}, {"M", 11}, {"L", 9}}},
		{"one figure for the only size", "12", []string{"OS"}, counts{{"OS", 12}}},
		{"a row of a spreadsheet", "6\t\t9\t0\t3\n", adult, counts{{"S", 6}, {"M", 0}, {"L", 9}, {"XL", 0}, {"2XL", 3}}},
		{"two rows of a spreadsheet", "M\tS\tXXL\r\n4\t5\t\r\n", adult, counts{{"S", 5}, {"M", 4}, {"2XL", 0}}},
		{"a row with names", "S\t12\tM\t4", adult, counts{{"S", 12}, {"M", 4}}},
		{"sizes with slashes and spaces", "S/M12 L/XL 6 One Size 2", []string{"S/M", "L/XL", "OS"}, counts{{"S/M", 12}, {"L/XL", 6}, {"OS", 2}}},
		{"sizes that are numbers", "28:4 30 6", []string{"28", "30"}, counts{{"28", 4}, {"30", 6}}},
		{"nothing", "  \n", adult, nil},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := sizes.Parse(c.text, c.run)
			if err != nil || !slices.Equal(got, c.want) {
				t.Errorf("Parse(%q, %q) = %v, %v; want %v", c.text, c.run, got, err, c.want)
			}
		})
	}
}

func TestParse_problems(t *testing.T) {
	cases := []struct {
		text string
		run  []string
		says []string // each in a problem of its own, in order
	}{
		{"3XL4", adult, []string{"3XL is none of the sizes here: S, M, L, XL, 2XL"}},
		{"M", adult, []string{"how many"}},
		{"S12 M L3", adult, []string{"M: how many"}},
		{"12", adult, []string{"12 of which size"}},
		{"12", nil, []string{"behind its size"}},
		{"1/2/3/4/5/6", adult, []string{"6 quantities, but 5 sizes"}},
		{"M12 M3", adult, []string{"given twice"}},
		{"M100001", adult, []string{"at most 100000"}},
		{"M99999999999999999999", adult, []string{"at most 100000"}},
		{"M-3 Q5", adult, []string{"M-3 is not read", "Q5 is not read"}},
		{"M1.5", adult, []string{"M1.5 is not read"}},
		{"284", []string{"28", "30"}, []string{"284 of which size"}},
		{"size", nil, []string{"size is not read"}},
		{"M١٢", adult, []string{"is not read"}},
		{"A\tB\n1\t2\t3", nil, []string{"A is no size", "B is no size", "3 quantities under 2 sizes"}},
	}
	for _, c := range cases {
		_, err := sizes.Parse(c.text, c.run)
		var problems sizes.Problems
		if !errors.As(err, &problems) || len(problems) != len(c.says) {
			t.Errorf("Parse(%q, %q): %d problems, want %d: %v", c.text, c.run, len(problems), len(c.says), err)
			continue
		}
		for i, want := range c.says {
			if !strings.Contains(problems[i], want) {
				t.Errorf("Parse(%q): problem %q does not say %q", c.text, problems[i], want)
			}
		}
	}
}

func TestParse_whatWasUnderstoodStays(t *testing.T) {
	got, err := sizes.Parse("S12 Q4 M3", adult)
	if want := []sizes.Count{{"S", 12}, {"M", 3}}; err == nil || !slices.Equal(got, want) {
		t.Errorf("got %v, %v; want %v and an error", got, err, want)
	}
}

func TestSort_orderOfTheRack(t *testing.T) {
	want := []string{
		"NB", "6M", "12M", "2T", "5T", "YXS", "YS", "YM", "YL", "YXL", "2XS", "XS", "S", "M", "L", "XL", "XXL", "3XL", "6XL",
		"LT", "XLT", "2XLT", "6", "28", "30", "S/M", "OS",
	}
	got := slices.Clone(want)
	for range 20 {
		slices.Reverse(got[:len(got)/2])
		slices.Reverse(got)
		sizes.Sort(got)
		if !slices.Equal(got, want) {
			t.Fatalf("got %q\nwant %q", got, want)
		}
	}
}

func TestLess_isAnOrder(t *testing.T) {
	name := rapid.StringMatching(`[Yy0-9]?[0-9X]{0,3}[SMLTlO/ ]{0,2}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := name.Draw(t, "a"), name.Draw(t, "b"), name.Draw(t, "c")
		if sizes.Less(a, b) && sizes.Less(b, a) {
			t.Fatalf("%q and %q are each before the other", a, b)
		}
		if sizes.Less(a, b) && sizes.Less(b, c) && !sizes.Less(a, c) {
			t.Fatalf("%q, %q, %q: not in order", a, b, c)
		}
		if a != b && !sizes.Less(a, b) && !sizes.Less(b, a) {
			t.Fatalf("%q and %q: neither is first", a, b)
		}
	})
}

func TestParse_whatIsWrittenIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var text strings.Builder
		var want []sizes.Count
		for _, s := range adult {
			if n := rapid.IntRange(-50, 500).Draw(t, s); n >= 0 {
				want = append(want, sizes.Count{Size: s, Qty: n})
				text.WriteString(s + strconv.Itoa(n) + rapid.SampledFrom([]string{" ", ",", "\n", "\t"}).Draw(t, "apart"))
			}
		}
		if got, err := sizes.Parse(text.String(), adult); err != nil || !slices.Equal(got, want) {
			t.Fatalf("Parse(%q) = %v, %v; want %v", text.String(), got, err, want)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"S12 M24", "6/11/9/0/3", "YS4 2T3 OS10", "S\tM\n1\t2", "–/", "2XL62XL4", "\xff\xfe", "ſ12 K4"} {
		f.Add(s, "S,M,2XL")
		f.Add(s, "")
	}
	f.Fuzz(func(t *testing.T, text, run string) {
		var list []string
		if run != "" {
			list = strings.Split(run, ",")
		}
		counts, _ := sizes.Parse(text, list)
		for _, c := range counts {
			if c.Qty < 0 || c.Qty > sizes.MaxPieces {
				t.Errorf("Parse(%q, %q) gave %v", text, list, c)
			}
		}
		sizes.Sort(strings.Fields(text))
	})
}
