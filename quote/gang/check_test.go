package gang_test

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

// mangling is a way to spoil a plan; it is false where the plan offers no place for it.
type mangling struct {
	name  string
	spoil func(card gang.SheetCard, p *gang.Plan) bool
}

var manglings = []mangling{
	{"a piece lies on another", func(_ gang.SheetCard, p *gang.Plan) bool {
		placed := p.Runs[0].Placed
		if len(placed) < 2 {
			return false
		}
		placed[1].X, placed[1].Y = placed[0].X, placed[0].Y
		return true
	}},
	{"a piece lies over the edge", func(card gang.SheetCard, p *gang.Plan) bool {
		p.Runs[0].Placed[0].X = card.Sizes[p.Runs[0].Size].W
		return true
	}},
	{"a piece lies far off", func(_ gang.SheetCard, p *gang.Plan) bool {
		p.Runs[0].Placed[0].Y = math.MinInt64
		return true
	}},
	{"a piece lies at the end of numbers", func(_ gang.SheetCard, p *gang.Plan) bool {
		p.Runs[0].Placed[0].X = math.MaxInt64
		return true
	}},
	{"a piece is missing", func(_ gang.SheetCard, p *gang.Plan) bool {
		p.Runs[0].Placed = p.Runs[0].Placed[1:]
		return true
	}},
	{"a piece is of no item", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Placed[0].Item = -1; return true }},
	{"a run is missing", func(_ gang.SheetCard, p *gang.Plan) bool {
		p.Cost -= p.Runs[0].Cost()
		p.Runs = p.Runs[1:]
		return true
	}},
	{"a run is there twice", func(_ gang.SheetCard, p *gang.Plan) bool {
		p.Cost += p.Runs[0].Cost()
		p.Runs = append(p.Runs, p.Runs[0])
		return true
	}},
	{"too few sheets", func(_ gang.SheetCard, p *gang.Plan) bool {
		r := &p.Runs[0]
		p.Cost -= r.Cost()
		r.Sheets = 0
		p.Cost += r.Cost()
		return true
	}},
	{"a sheet more than paid", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Sheets++; return p.Runs[0].Each > 0 }},
	{"endless sheets", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Sheets = math.MaxInt; return true }},
	{"another price", func(_ gang.SheetCard, p *gang.Plan) bool {
		p.Cost -= p.Runs[0].Cost()
		p.Runs[0].Each++
		p.Cost += p.Runs[0].Cost()
		return true
	}},
	{"another sum", func(_ gang.SheetCard, p *gang.Plan) bool { p.Cost--; return true }},
	{"another setup", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Setup--; p.Cost--; return true }},
	{"fewer inks", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Inks--; return true }},
	{"another ink row", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Row++; return true }},
	{"no such size", func(card gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Size = len(card.Sizes); return true }},
	{"a size below all", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Size = -1; return true }},
	{"no copies", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Copies[0] = 0; return true }},
	{"copies that are not placed", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Copies[0]++; return true }},
	{"endless copies", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Copies[0] = math.MaxInt; return true }},
	{"no list of copies", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Copies = nil; return true }},
	{"an item that is not asked for", func(_ gang.SheetCard, p *gang.Plan) bool { p.Runs[0].Items[0] = 99; return true }},
}

func TestCheckSheets_findsEveryMangling(t *testing.T) {
	for _, m := range manglings {
		t.Run(m.name, func(t *testing.T) {
			tried := 0
			rapid.Check(t, func(t *rapid.T) {
				card, items := tinyCard(t), tinyItems(t, 4)
				need := needs(t, items, 8)
				plan, err := gang.NewSheets(card, items).Plan(upto(len(items)), need)
				if err != nil || !m.spoil(card, &plan) {
					return
				}
				tried++
				if gang.CheckSheets(card, items, upto(len(items)), need, plan) == nil {
					t.Fatalf("%v × %v on %+v: %s, and nothing was found in %+v", need, items, card, m.name, plan)
				}
			})
			if tried == 0 {
				t.Error("no plan could be spoilt so")
			}
		})
	}
}

func TestCheckSheets_keepsMinimumAndFirstBreak(t *testing.T) {
	item := []gang.Item{{W: 2, H: 2, InkCount: 1}}
	card := func(minimum, from int) gang.SheetCard {
		return gang.SheetCard{Sizes: []gang.SheetSize{{W: 4, H: 4, Minimum: minimum, Prices: []gang.InkRow{
			{Inks: 1, Each: []gang.Break{{From: from, Each: 5}}},
		}}}}
	}
	plan, err := gang.NewSheets(card(1, 1), item).Plan([]int{0}, []int{8})
	if err != nil || plan.Cost != 10 {
		t.Fatalf("plan costs %d, error %v; want 2 sheets at 5", plan.Cost, err)
	}
	for _, c := range []gang.SheetCard{card(3, 1), card(1, 3)} {
		if gang.CheckSheets(c, item, []int{0}, []int{8}, plan) == nil {
			t.Errorf("2 sheets pass on %+v", c)
		}
	}
}

func TestCheckRoll_findsManglings(t *testing.T) {
	card := gang.RollCard{W: 2200, Gap: 25, Lengths: []gang.RollLength{{Length: 2400, Each: 1300}, {Length: 6000, Each: 2900}}}
	items := []gang.Item{{W: 1100, H: 900, Turn: true}, {Placement: 1, W: 400, H: 400}}
	need := []int{14, 20}
	plan := func() gang.Plan {
		p, err := gang.NewRoll(card, items).Plan([]int{0, 1}, need)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	if err := gang.CheckRoll(card, items, []int{0, 1}, need, plan()); err != nil {
		t.Fatalf("a sound plan: %v", err)
	}
	for name, spoil := range map[string]func(r *gang.Run, p *gang.Plan){
		"overlap": func(r *gang.Run, _ *gang.Plan) { r.Placed[1].X, r.Placed[1].Y = r.Placed[0].X, r.Placed[0].Y },
		"too few": func(r *gang.Run, p *gang.Plan) { p.Cost -= r.Cost(); p.Runs = p.Runs[1:] },
		"price":   func(r *gang.Run, p *gang.Plan) { r.Each--; p.Cost -= gang.Price(r.Sheets) },
		"setup":   func(r *gang.Run, p *gang.Plan) { r.Setup = 100; p.Cost += 100 },
		"length":  func(r *gang.Run, _ *gang.Plan) { r.Size = 2 },
		"turned": func(r *gang.Run, _ *gang.Plan) {
			r.Placed[len(r.Placed)-1].Turned = true
			r.Placed[0].Turned = !r.Placed[0].Turned
		},
		"sum":          func(_ *gang.Run, p *gang.Plan) { p.Cost++ },
		"lengths left": func(r *gang.Run, _ *gang.Plan) { r.Sheets = -1 },
	} {
		p := plan()
		spoil(&p.Runs[0], &p)
		if gang.CheckRoll(card, items, []int{0, 1}, need, p) == nil {
			t.Errorf("%s: nothing was found in %+v", name, p)
		}
	}
}

// FuzzCheckSheets feeds the checker numbers without sense; it must answer, and never pass a plan that costs nothing.
func FuzzCheckSheets(f *testing.F) {
	f.Add(int64(1), int64(5))
	f.Fuzz(func(t *testing.T, seed, wild int64) {
		r := rand.New(rand.NewSource(seed))
		number := func() int64 {
			return []int64{0, 1, 2, 3, -1, wild, math.MaxInt64, math.MinInt64, 1 << 40, int64(r.Intn(20))}[r.Intn(10)]
		}
		size := gang.SheetSize{W: number(), H: number(), Edge: number(), Gap: number(), Minimum: int(number())}
		size.Prices = []gang.InkRow{{Inks: int(number()), Each: []gang.Break{{From: int(number()), Each: number()}}}}
		card := gang.SheetCard{MaxInks: int(number()), SetupPerDesign: number(), SetupPerInk: number(), Sizes: []gang.SheetSize{size}}
		items := []gang.Item{{W: number(), H: number(), Turn: true, InkCount: int(number())}, {W: number(), H: number()}}
		run := gang.Run{Size: int(number()), Inks: int(number()), Row: int(number()), Sheets: int(number()), Each: number(), Setup: number()}
		run.Items, run.Copies = []int{int(number()), int(number())}, []int{int(number()), int(number())}
		for range r.Intn(5) {
			run.Placed = append(run.Placed, gang.Placed{Item: int(number()), X: number(), Y: number(), Turned: r.Intn(2) == 0})
		}
		plan := gang.Plan{Runs: slices.Repeat([]gang.Run{run}, r.Intn(3)), Cost: number()}
		idx, need := []int{0, 1}, []int{int(number()), int(number())}
		err := gang.CheckSheets(card, items, idx, need, plan)
		if err == nil && len(plan.Runs) == 0 && (need[0] > 0 || need[1] > 0 || plan.Cost != 0) {
			t.Fatalf("an empty plan passes for %v at %d", need, plan.Cost)
		}
		roll := gang.RollCard{W: size.W, Edge: size.Edge, Gap: size.Gap, Lengths: []gang.RollLength{{Length: size.H, Each: number()}}}
		_ = gang.CheckRoll(roll, items, idx, need, plan)
		// The searches must stand the same numbers.
		if p, err := gang.NewSheets(card, items).Plan(idx, need); err == nil {
			if err := gang.CheckSheets(card, items, idx, need, p); err != nil {
				t.Fatalf("%v × %v on %+v: %v", need, items, card, err)
			}
		}
		if p, err := gang.NewRoll(roll, items).Plan(idx, need); err == nil {
			if err := gang.CheckRoll(roll, items, idx, need, p); err != nil {
				t.Fatalf("%v × %v on %+v: %v", need, items, roll, err)
			}
		}
	})
}
