package quote_test

import (
	"fmt"
	"math/big"

	"pressworth/quote"
	"pressworth/quote/gang"
	"pressworth/quote/internal/plain"
)

// planner hands the engine's own planner to the oracle: what a plan costs is tested in package gang, how its cost goes
// into a quote is tested here. Lengths and prices go over in units of a millionth.
type planner struct {
	job    quote.Job
	sheets map[string]*gang.Sheets
	rolls  map[string]*gang.Roll
	known  map[string][]plain.Run
}

func newPlanner(job quote.Job) *planner {
	return &planner{job: job, sheets: map[string]*gang.Sheets{}, rolls: map[string]*gang.Roll{}, known: map[string][]plain.Run{}}
}

var million = big.NewRat(1_000_000, 1)

func millionths(x *big.Rat) int64 {
	n := new(big.Rat).Mul(x, million)
	if !n.IsInt() {
		panic("the test's figures have too many places: " + x.RatString())
	}
	return n.Num().Int64()
}

func (p *planner) Plan(card quote.RateCard, items []plain.Item) ([]plain.Run, bool) {
	key, shape := card.ID, card.ID
	var list []gang.Item
	var idx, need []int
	for i, it := range items {
		shape += fmt.Sprintf(" %d/%d/%d", it.Placement, it.Variant, it.Characters)
		key += fmt.Sprintf(" %d/%d/%d×%d", it.Placement, it.Variant, it.Characters, it.Need)
		list = append(list, gang.Item{Placement: it.Placement, W: millionths(it.W), H: millionths(it.H), Turn: it.Turn, Inks: it.Inks, InkCount: it.Count})
		idx, need = append(idx, i), append(need, it.Need)
	}
	if runs, ok := p.known[key]; ok {
		return runs, runs != nil
	}
	if card.Kind == quote.SheetCard {
		if p.sheets[shape] == nil {
			p.sheets[shape] = gang.NewSheets(sheetCard(card), list)
		}
		p.known[key] = sheetRuns(p.sheets[shape].Plan(idx, need))
	} else {
		if p.rolls[shape] == nil {
			p.rolls[shape] = gang.NewRoll(rollCard(card), list)
		}
		p.known[key] = p.rollRun(card, items, idx, need, p.rolls[shape])
	}
	return p.known[key], p.known[key] != nil
}

func sheetRuns(plan gang.Plan, err error) []plain.Run {
	if err != nil {
		return nil
	}
	var runs []plain.Run
	for _, r := range plan.Runs {
		runs = append(runs, plain.Run{Items: r.Items, Cost: big.NewRat(r.Cost(), 1_000_000)})
	}
	return runs
}

// rollRun is all of a roll; every placement on it has its setup in the cost.
func (p *planner) rollRun(card quote.RateCard, items []plain.Item, idx, need []int, roll *gang.Roll) []plain.Run {
	cost, ok := roll.Cost(idx, need)
	if !ok {
		return nil
	}
	sum := big.NewRat(cost, 1_000_000)
	set := map[int]bool{}
	for _, it := range items {
		if set[it.Placement] {
			continue
		}
		set[it.Placement] = true
		inks := 0
		if pl := p.job.Placements[it.Placement]; !pl.FullColor {
			inks = max(len(pl.Inks), pl.InkCount)
		}
		sum.Add(sum, card.SetupPerDesign.Rat())
		sum.Add(sum, new(big.Rat).Mul(card.SetupPerInk.Rat(), big.NewRat(int64(inks), 1)))
	}
	return []plain.Run{{Items: idx, Cost: sum}}
}

func sheetCard(c quote.RateCard) gang.SheetCard {
	card := gang.SheetCard{MaxInks: c.MaxInks, SetupPerDesign: millionths(c.SetupPerDesign.Rat()), SetupPerInk: millionths(c.SetupPerInk.Rat())}
	for _, s := range c.Sizes {
		size := gang.SheetSize{
			W: millionths(s.Width.Rat()), H: millionths(s.Height.Rat()), Edge: millionths(s.Edge.Rat()),
			Gap: millionths(s.Gap.Rat()), Minimum: s.Minimum,
		}
		for _, row := range s.Prices {
			ink := gang.InkRow{Inks: row.Inks}
			for _, b := range row.Each {
				ink.Each = append(ink.Each, gang.Break{From: b.From, Each: millionths(b.Each.Rat())})
			}
			size.Prices = append(size.Prices, ink)
		}
		card.Sizes = append(card.Sizes, size)
	}
	return card
}

func rollCard(c quote.RateCard) gang.RollCard {
	card := gang.RollCard{W: millionths(c.Width.Rat()), Edge: millionths(c.Edge.Rat()), Gap: millionths(c.Gap.Rat())}
	for _, l := range c.Lengths {
		card.Lengths = append(card.Lengths, gang.RollLength{Length: millionths(l.Length.Rat()), Each: millionths(l.Each.Rat())})
	}
	return card
}
