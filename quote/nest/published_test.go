package nest_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"pressworth/quote/nest"
)

// published is one instance of E. Hopper and B. C. H. Turton, An empirical investigation of meta-heuristic and heuristic
// algorithms for a 2D packing problem, European Journal of Operational Research 128 (2001) 34-57. Pieces may be turned;
// every instance has a packing without waste.
type published struct {
	name   string
	width  int64
	best   int64
	pieces []nest.Piece
}

func hopperTurton(tb testing.TB) []published {
	tb.Helper()
	f, err := os.Open("../../../shared/data/packing/hopper-turton-2001.csv")
	if err != nil {
		tb.Skip("the published instances are not laid beside the project: ", err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	var out []published
	for _, r := range rows[1:] {
		var n [5]int64
		for i := range n {
			if n[i], err = strconv.ParseInt(r[i+1], 10, 64); err != nil {
				tb.Fatal(err)
			}
		}
		if len(out) == 0 || out[len(out)-1].name != r[0] {
			out = append(out, published{name: r[0], width: n[0], best: n[1]})
		}
		p := &out[len(out)-1]
		p.pieces = append(p.pieces, nest.Piece{W: n[3], H: n[4], Turn: true, Count: 1})
	}
	return out
}

// publishedSteps is the effort for one published instance: well under two seconds each on two cores.
const publishedSteps = 2_000_000

func TestStrip_hopperTurtonInstancesAreNearTheirOptimum(t *testing.T) {
	var sum float64
	cases := hopperTurton(t)
	for _, c := range cases {
		r, err := nest.Strip(nest.Sheet{W: c.width}, c.pieces, nest.Effort{Steps: publishedSteps})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if err := nest.Check(nest.Sheet{W: c.width}, c.pieces, r.Placed); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		gap := 100 * float64(r.Length-c.best) / float64(c.best)
		if sum += gap; gap > 4 || r.Bound > c.best || c.name[:2] == "C1" && r.Length != 20 {
			t.Errorf("%s: got length %d, bound %d; the optimum is %d", c.name, r.Length, r.Bound, c.best)
		}
	}
	if mean := sum / float64(len(cases)); mean > 1.5 {
		t.Errorf("the mean gap is %.2f %%, want at most 1.5", mean)
	}
}

// The table of lengths and gaps; its times are those of one run each.
func BenchmarkStrip_hopperTurton(b *testing.B) {
	for _, c := range hopperTurton(b) {
		b.Run(c.name, func(b *testing.B) {
			var r nest.StripResult
			for b.Loop() {
				r, _ = nest.Strip(nest.Sheet{W: c.width}, c.pieces, nest.Effort{Steps: publishedSteps})
			}
			b.ReportMetric(float64(r.Length), "length")
			b.ReportMetric(100*float64(r.Length-c.best)/float64(c.best), "gap%")
		})
	}
}

// Next-fit decreasing height needs less than twice the area over the width, and one longest piece more (E. G. Coffman,
// M. R. Garey, D. S. Johnson and R. E. Tarjan, SIAM Journal on Computing 9 (1980) 808-826); a strip is never longer.
func TestStrip_isNoLongerThanNextFitDecreasingHeightMayBe(t *testing.T) {
	for _, c := range hopperTurton(t) {
		r, err := nest.Strip(nest.Sheet{W: c.width}, c.pieces, nest.Effort{})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		var area, longest int64
		for _, p := range c.pieces {
			area += p.W * p.H
			longest = max(longest, p.W, p.H)
		}
		if low := (area + c.width - 1) / c.width; r.Length < low || r.Bound < low || r.Length > 2*area/c.width+longest {
			t.Errorf("%s: got length %d, bound %d; want between %d and %d", c.name, r.Length, r.Bound, low, 2*area/c.width+longest)
		}
	}
}

// The textbook instance of cutting stock in one dimension: 73 rolls are the optimum.
func TestBins_textbookCuttingStock(t *testing.T) {
	widths := []int64{1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200}
	demand := []int{22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20}
	var ps []nest.Piece
	for i, w := range widths {
		ps = append(ps, nest.Piece{W: w, H: 1, Count: demand[i]})
	}
	s := nest.Sheet{W: 5600, H: 1}
	r, err := nest.Bins(s, ps, nest.Effort{Steps: 200_000})
	if err != nil {
		t.Fatal(err)
	}
	if err := nest.Check(s, ps, r.Placed); err != nil {
		t.Error(err)
	}
	if r.Bound > 73 || r.Sheets < 73 || r.Sheets > 76 {
		t.Errorf("got %d rolls, bound %d; the optimum is 73", r.Sheets, r.Bound)
	}
	t.Logf("%d rolls, bound %d, optimum 73", r.Sheets, r.Bound)
}
