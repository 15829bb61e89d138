package packfile_test

import (
	"errors"
	"math/big"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/quote/packfile"
)

func TestDecode_defaults(t *testing.T) {
	r, err := packfile.Decode([]byte(`{"format":"pressworth.pack/1","width":"20","height":"","pieces":[{"w":"2","h":"12"},{"id":"b","w":"2.5","h":"1","count":3}]}`))
	if err != nil || r.Height != nil || r.NoTurn || r.Pieces[0].Count != 1 || r.Pieces[1].Count != 3 || r.Pieces[1].W.String() != "2.5" {
		t.Errorf("got %+v, %v", r, err)
	}
}

func TestRun_problems(t *testing.T) {
	cases := []struct {
		name, fields string
		paths        []string
	}{
		{"nothing given", ``, []string{"width", "pieces"}},
		{
			"forms", `"width":20,"height":"x","edge":"1e2","turn":1,"count":2,"pieces":[{"w":"2","h":"3","turn":false},{"w":"1"}]`,
			[]string{"width", "height", "edge", "turn", "count", "pieces[0].turn", "pieces[1].h"},
		},
		{"no pieces", `"width":"1","pieces":[]`, []string{"pieces"}},
		{
			"nothing above nothing", `"width":"0","height":"-1","edge":"-1","gap":"-2","seconds":"-1","pieces":[{"w":"0","h":"-1","count":0}]`,
			[]string{"width", "height", "edge", "gap", "seconds", "pieces[0].w", "pieces[0].h", "pieces[0].count"},
		},
		{"edges that meet", `"width":"4","height":"9","edge":"2","gap":"5","pieces":[{"w":"1","h":"1"}]`, []string{"edge", "gap"}},
		{
			"too large for the sheet", `"width":"4","height":"9","edge":"0.5","pieces":[{"w":"3","h":"8"},{"w":"8","h":"3"},{"w":"3.1","h":"4"},{"w":"1","h":"8.1"}]`,
			[]string{"pieces[2]", "pieces[3]"},
		},
		{"too large unless turned", `"width":"4","turn":false,"pieces":[{"w":"5","h":"1"},{"w":"1","h":"5"}]`, []string{"pieces[0]"}},
		{"too many", `"width":"4","pieces":[{"w":"1","h":"1","count":99999},{"w":"1","h":"1","count":2}]`, []string{"pieces"}},
		{"too long beside the finest place", `"width":"99999999999","pieces":[{"w":"1.12345678","h":"1"}]`, []string{"width"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := run(`{"format":"pressworth.pack/1",` + strings.TrimSuffix(c.fields, ",") + `}`)
			if c.fields == "" {
				_, err = run(`{"format":"pressworth.pack/1"}`)
			}
			var problems quote.Problems
			errors.As(err, &problems)
			var got []string
			for _, p := range problems {
				got = append(got, p.Path)
			}
			if !slices.Equal(got, c.paths) {
				t.Errorf("paths\n got %q\nwant %q\n%v", got, c.paths, err)
			}
		})
	}
}

func run(file string) (packfile.Answer, error) {
	r, err := packfile.Decode([]byte(file))
	if err != nil {
		return packfile.Answer{}, err
	}
	return packfile.Run(r, nil)
}

func TestRun_stripWithoutWaste(t *testing.T) {
	a, err := run(`{"format":"pressworth.pack/1","width":"20","height":"","seconds":"1","pieces":[{"id":"a","w":"2","h":"12","count":10},{"id":"b","w":"20","h":"0.5"}]}`)
	if err != nil || a.Height.String() != "12.5" || a.Bound.String() != "12.5" || a.UsedPercent != "100.0" || a.Sheets != 1 || len(a.Pieces) != 11 {
		t.Errorf("got %+v, %v", a, err)
	}
	out := string(packfile.Encode(a))
	for _, want := range []string{`"format": "pressworth.packed/1"`, `"sheets": 1`, `"height": "12.5"`, `"x": "0"`, `"turned": false`, `"sheet": 0`} {
		if !strings.Contains(out, want) {
			t.Errorf("%s is not in\n%s", want, out)
		}
	}
}

func TestRequest_ceiling(t *testing.T) {
	n, _ := money.ParseNumber("1.5")
	if got := (packfile.Request{Seconds: n}).Ceiling(); got != 1500*time.Millisecond {
		t.Errorf("got %v", got)
	}
	far, _ := money.ParseNumber("999999999999")
	if got := (packfile.Request{Seconds: far}).Ceiling(); got <= 0 {
		t.Errorf("a ceiling of 999999999999 s became %v", got)
	}
}

// Every layout is looked at again in exact fractions: on the sheet, edges and gaps kept, all copies there.
func TestRun_layoutsHold(t *testing.T) {
	length := func(t *rapid.T, lo, hi int, name string) money.Number {
		places := rapid.IntRange(0, 3).Draw(t, name+" places")
		n := rapid.IntRange(lo, hi).Draw(t, name)
		return money.Number(money.FromMinor(int64(n*[]int{1, 10, 100, 1000}[places]+rapid.IntRange(0, []int{0, 9, 99, 999}[places]).Draw(t, name+" part")), places))
	}
	rapid.Check(t, func(t *rapid.T) {
		r := packfile.Request{Width: length(t, 8, 30, "width"), Edge: length(t, 0, 1, "edge"), Gap: length(t, 0, 1, "gap"), NoTurn: rapid.Bool().Draw(t, "no turn")}
		r.Seconds, _ = money.ParseNumber("0.001")
		if rapid.Bool().Draw(t, "sheets") {
			h := length(t, 8, 30, "height")
			r.Height = &h
		}
		total := 0
		for range rapid.IntRange(1, 4).Draw(t, "pieces") {
			p := packfile.Piece{ID: "p", W: length(t, 1, 3, "w"), H: length(t, 1, 3, "h"), Count: rapid.IntRange(1, 9).Draw(t, "count")}
			total += p.Count
			r.Pieces = append(r.Pieces, p)
		}
		a, err := packfile.Run(r, nil)
		if err != nil || len(a.Pieces) != total {
			t.Fatalf("%d pieces lie, want %d: %v", len(a.Pieces), total, err)
		}
		holds(t, r, a)
	})
}

func holds(t *rapid.T, r packfile.Request, a packfile.Answer) {
	plus := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Add(a, b) }
	edge, gap := r.Edge.Rat(), r.Gap.Rat()
	for i, p := range a.Pieces {
		right, end := plus(p.X.Rat(), plus(p.W.Rat(), edge)), plus(p.Y.Rat(), plus(p.H.Rat(), edge))
		if p.X.Rat().Cmp(edge) < 0 || p.Y.Rat().Cmp(edge) < 0 || right.Cmp(r.Width.Rat()) > 0 || end.Cmp(a.Height.Rat()) > 0 {
			t.Fatalf("piece %d lies over the edge: %+v", i, p)
		}
		if p.Turned && r.NoTurn {
			t.Fatalf("piece %d is turned: %+v", i, p)
		}
		for j, q := range a.Pieces[:i] {
			apart := func(x, w, y *big.Rat) bool { return plus(x, plus(w, gap)).Cmp(y) <= 0 }
			if p.Sheet == q.Sheet && !apart(p.X.Rat(), p.W.Rat(), q.X.Rat()) && !apart(q.X.Rat(), q.W.Rat(), p.X.Rat()) &&
				!apart(p.Y.Rat(), p.H.Rat(), q.Y.Rat()) && !apart(q.Y.Rat(), q.H.Rat(), p.Y.Rat()) {
				t.Fatalf("pieces %d and %d overlap or lie nearer than the gap: %+v %+v", i, j, p, q)
			}
		}
	}
}

func FuzzRun(f *testing.F) {
	f.Add([]byte(`{"format":"pressworth.pack/1","width":"20","height":"9","pieces":[{"w":"2","h":"3","count":40}]}`))
	f.Add([]byte(`{"format":"pressworth.pack/1","width":"20","edge":"0.125","gap":"3","pieces":[{"w":"2","h":"3","count":100000}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := packfile.Decode(data)
		if err != nil {
			return
		}
		r.Seconds = money.Number{}
		_, _ = packfile.Run(r, nil)
	})
}
