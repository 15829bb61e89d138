package gang_test

import (
	"fmt"

	"pressworth/quote/gang"
)

// The oracle plans tiny cards by trying everything: every split, every size, every number of sheets up to more than
// can be needed, and every layout on a grid of whole lengths. It shares no code with the package.

// oracle is the answer for all items of a card: the lowest cost, then the fewest runs, then the fewest sheets, then the
// sizes listed first, in the order of the runs' earliest items, and then the earlier items together.
type oracle struct {
	ok           bool
	cost         int64
	runs, sheets int
	sizes        string // a digit for every run
	blocks       string // a digit for every item: the number of its run
}

func (o oracle) beats(p oracle) bool {
	if !p.ok || !o.ok {
		return o.ok
	}
	if o.cost != p.cost {
		return o.cost < p.cost
	}
	if o.runs != p.runs {
		return o.runs < p.runs
	}
	if o.sheets != p.sheets {
		return o.sheets < p.sheets
	}
	if o.sizes != p.sizes {
		return o.sizes < p.sizes
	}
	return o.blocks < p.blocks
}

func oracleSheets(card gang.SheetCard, items []gang.Item, need []int) oracle {
	var best oracle
	block := make([]int, len(items)) // by item: the number of its run
	var split func(i, blocks int)
	split = func(i, blocks int) {
		if i == len(items) {
			if o := oracleRuns(card, items, need, block, blocks); o.beats(best) {
				best = o
			}
			return
		}
		for b := 0; b <= blocks; b++ {
			block[i] = b
			split(i+1, max(blocks, b+1))
		}
	}
	split(0, 0)
	return best
}

func oracleRuns(card gang.SheetCard, items []gang.Item, need, block []int, blocks int) oracle {
	all := oracle{ok: true}
	for b := range blocks {
		var in []gang.Item
		var want []int
		for i := range items {
			if block[i] == b {
				in, want = append(in, items[i]), append(want, need[i])
			}
		}
		one := oracleRun(card, in, want)
		if !one.ok {
			return oracle{}
		}
		all.cost, all.runs, all.sheets = all.cost+one.cost, all.runs+1, all.sheets+one.sheets
		all.sizes += one.sizes
	}
	all.blocks = fmt.Sprint(block)
	return all
}

func oracleRun(card gang.SheetCard, items []gang.Item, need []int) oracle {
	inks, designs := oracleInks(items)
	if card.MaxInks > 0 && inks > card.MaxInks {
		return oracle{}
	}
	var best oracle
	for n, size := range card.Sizes {
		for _, row := range size.Prices {
			if row.Inks < inks {
				continue
			}
			for x := 1; x <= 30; x++ {
				var each int64 = -1
				for _, b := range row.Each {
					if x >= b.From {
						each = b.Each
					}
				}
				if each < 0 || x < size.Minimum || !oracleFits(size, items, need, x) {
					continue
				}
				cost := int64(x)*each + int64(designs)*card.SetupPerDesign + int64(inks)*card.SetupPerInk
				if o := (oracle{true, cost, 1, x, fmt.Sprint(n), ""}); o.beats(best) {
					best = o
				}
			}
			break // the first row with enough inks is the one that is paid
		}
	}
	return best
}

func oracleInks(items []gang.Item) (inks, designs int) {
	names, places := map[string]bool{}, map[int]bool{}
	for _, it := range items {
		for _, n := range it.Inks {
			names[n] = true
		}
		if !places[it.Placement] && it.Inks == nil {
			inks += it.InkCount
		}
		places[it.Placement] = true
	}
	return inks + len(names), len(places)
}

var oracleSeen = map[oracleQuestion]bool{}

type oracleQuestion struct {
	w, h, gap int64
	kinds     [4]gang.Break // From holds the copies, Each the geometry
}

func oracleFits(size gang.SheetSize, items []gang.Item, need []int, x int) bool {
	q := oracleQuestion{w: size.W - 2*size.Edge, h: size.H - 2*size.Edge, gap: size.Gap}
	g := grid{w: int(q.w + q.gap), h: int(q.h + q.gap)}
	area := 0
	for i, it := range items {
		n := (need[i] + x - 1) / x
		q.kinds[i] = gang.Break{From: n, Each: it.W*1000 + it.H*10}
		if it.Turn {
			q.kinds[i].Each++
		}
		g.kinds = append(g.kinds, kind{int(it.W + size.Gap), int(it.H + size.Gap), it.Turn, n})
		area += n * int((it.W+size.Gap)*(it.H+size.Gap))
	}
	fits, known := oracleSeen[q]
	if !known {
		g.taken = make([]bool, g.w*g.h)
		fits = area <= g.w*g.h && g.fill(0, g.w*g.h-area)
		oracleSeen[q] = fits
	}
	return fits
}

type kind struct {
	w, h  int
	turn  bool
	count int
}

type grid struct {
	w, h  int
	taken []bool
	kinds []kind
	ends  []int // by line: where the sheet it is on ends; nil: there is one sheet
	steps *int  // left before it gives up, unless nil
}

// fill decides the cells one by one: a free cell is the near left corner of a piece, or stays empty while waste lasts.
func (g *grid) fill(cell, waste int) bool {
	if g.steps != nil {
		if *g.steps--; *g.steps < 0 {
			return false
		}
	}
	left := 0
	for _, k := range g.kinds {
		left += k.count
	}
	if left == 0 {
		return true
	}
	for cell < len(g.taken) && g.taken[cell] {
		cell++
	}
	if cell == len(g.taken) {
		return false
	}
	for i := range g.kinds {
		k := &g.kinds[i]
		if k.count == 0 {
			continue
		}
		k.count--
		if g.try(cell, k.w, k.h, waste) || k.turn && k.w != k.h && g.try(cell, k.h, k.w, waste) {
			k.count++
			return true
		}
		k.count++
	}
	if waste == 0 {
		return false
	}
	g.taken[cell] = true
	ok := g.fill(cell+1, waste-1)
	g.taken[cell] = false
	return ok
}

func (g *grid) try(cell, w, h, waste int) bool {
	end := g.h
	if g.ends != nil {
		end = g.ends[cell/g.w]
	}
	if cell%g.w+w > g.w || cell/g.w+h > end {
		return false
	}
	for y := range h {
		for x := range w {
			if g.taken[cell+y*g.w+x] {
				return false
			}
		}
	}
	g.mark(cell, w, h, true)
	ok := g.fill(cell+w, waste)
	g.mark(cell, w, h, false)
	return ok
}

func (g *grid) mark(cell, w, h int, to bool) {
	for y := range h {
		for x := range w {
			g.taken[cell+y*g.w+x] = to
		}
	}
}
