package quote

import (
	"fmt"
	"slices"
	"unicode/utf8"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

// frozenPlans are the methods and plans of a frozen revision at one quantity.
type frozenPlans struct {
	choice []int
	plans  map[int]planned // by card
}

// thaw checks the frozen methods and plans of a job and sets them, so that nothing is searched for.
func (m *model) thaw() (ps Problems) {
	for i, f := range m.job.Frozen {
		at := fmt.Sprintf("frozen[%d]", i)
		if f.Pieces < 1 || f.Pieces > MaxPieces {
			ps = append(ps, Problem{at + ".pieces", fmt.Sprintf("enter 1 to %d pieces", MaxPieces)})
			continue
		}
		s := m.at(f.Pieces)
		if s.frozen != nil {
			ps = append(ps, Problem{at + ".pieces", "this quantity is frozen twice"})
			continue
		}
		z := thawing{s: s, at: at, f: f, out: &frozenPlans{plans: map[int]planned{}}}
		z.methods()
		if len(z.problems) == 0 {
			z.plans()
		}
		if ps = append(ps, z.problems...); len(z.problems) == 0 {
			s.frozen = z.out
		}
	}
	return ps
}

// thawing turns one frozen entry into methods and plans.
type thawing struct {
	s        *state
	at       string
	f        Frozen
	out      *frozenPlans
	problems Problems
}

func (z *thawing) say(path, problem string) {
	z.problems = append(z.problems, Problem{z.at + "." + path, problem})
}

func (z *thawing) methods() {
	m := z.s.m
	for p := range m.placements {
		choice := -1
		if z.s.active[p] {
			id := z.f.Methods[m.placements[p].ID]
			choice = slices.Index(cardIDs(m.job), id)
			if !slices.Contains(z.s.allowed[p], choice) {
				z.say("methods."+m.placements[p].ID, fmt.Sprintf("rate card %q does not serve it", id))
			}
		}
		z.out.choice = append(z.out.choice, choice)
	}
}

func (z *thawing) plans() {
	m := z.s.m
	r := m.newScratch()
	t := z.s.settingFor(z.out.choice, &r)
	for c := range m.cards {
		if m.cards[c].sheets == nil && m.cards[c].roll == nil {
			continue
		}
		var on []int
		for p, chosen := range z.out.choice {
			if chosen == c {
				on = append(on, p)
			}
		}
		if len(on) == 0 {
			continue
		}
		k := slices.IndexFunc(z.f.Plans, func(p Plan) bool { return p.Card == m.cards[c].ID })
		if k < 0 {
			z.say("plans", fmt.Sprintf("has no plan for rate card %q", m.cards[c].ID))
			continue
		}
		p, err := t.thawPlan(c, on, z.f.Plans[k])
		if err != nil {
			z.say(fmt.Sprintf("plans[%d]", k), err.Error())
			continue
		}
		z.out.plans[c] = p
	}
}

// thawPlan turns a plan of the result's form into the engine's and checks it.
func (t *setting) thawPlan(c int, on []int, f Plan) (planned, error) {
	m, cd := t.m, &t.m.cards[c]
	g := gang.Plan{}
	for k, r := range f.Runs {
		run, err := m.thawRun(c, r)
		if err != nil {
			return planned{}, fmt.Errorf("run %d: %w", k+1, err)
		}
		g.Runs = append(g.Runs, run)
		g.Cost = add(g.Cost, add(mul(int64(run.Sheets), run.Each), run.Setup))
	}
	items, need := t.gangItems(cd, on)
	var err error
	if cd.sheets != nil {
		err = gang.CheckSheets(cd.sheetOf, m.gangItems(), items, need, g)
	} else {
		err = gang.CheckRoll(cd.rollOf, m.gangItems(), items, need, g)
	}
	if err != nil {
		return planned{}, err
	}
	p := planned{card: c, placements: on, runs: g.Runs, heuristic: f.Heuristic, frozen: f.Runs}
	t.split(&p, items, need)
	p.bound = min(p.cost, fits(f.Bound.Minor(m.places)))
	return p, nil
}

func (m *model) thawRun(c int, r Run) (gang.Run, error) {
	cd := &m.cards[c]
	out := gang.Run{Sheets: r.Sheets, Inks: r.Inks, Each: m.price(r.Each), Setup: m.price(r.Setup)}
	if out.Sheets < 1 || out.Sheets > 10*MaxPieces {
		return out, fmt.Errorf("%d sheets cannot be", out.Sheets)
	}
	if cd.roll != nil {
		out.Size = slices.IndexFunc(cd.Lengths, func(l RollLength) bool { return l.Length.String() == r.Length })
	} else {
		out.Size = slices.IndexFunc(cd.Sizes, func(s SheetSize) bool { return s.Name == r.Size })
	}
	if out.Size < 0 {
		return out, fmt.Errorf("the card has no size %q", r.Size+r.Length)
	}
	if cd.sheets != nil {
		rows := cd.sheetOf.Sizes[out.Size].Prices
		out.Row = slices.IndexFunc(rows, func(row gang.InkRow) bool { return row.Inks >= r.Inks })
	}
	copies := map[int]int{}
	for _, x := range r.Pieces {
		placed, err := m.thawPiece(x)
		if err != nil {
			return out, err
		}
		copies[placed.Item]++
		out.Placed = append(out.Placed, placed)
	}
	for i := range m.items {
		if copies[i] > 0 {
			out.Items, out.Copies = append(out.Items, i), append(out.Copies, copies[i])
		}
	}
	return out, nil
}

func (m *model) thawPiece(x PlacedPiece) (p gang.Placed, err error) {
	p.Item = m.itemOf(x.Placement, x.Variant, x.Text)
	if p.Item < 0 {
		return p, fmt.Errorf("the job has no placement %q with variant %d", x.Placement, x.Variant)
	}
	p.Turned = x.Turned
	for _, f := range []struct {
		text string
		to   *int64
	}{{x.X, &p.X}, {x.Y, &p.Y}} {
		n, err := money.ParseNumber(f.text)
		if err != nil {
			return p, err
		}
		at, ok := n.Scaled(m.lengthPlaces)
		if !ok {
			return p, fmt.Errorf("%s is finer than the lengths of this job", f.text)
		}
		*f.to = at
	}
	return p, nil
}

// itemOf finds an item by what a result calls it; -1 where there is none.
func (m *model) itemOf(placement string, variant int, text string) int {
	for i, it := range m.items {
		if m.placements[it.placement].ID != placement || it.variant != variant {
			continue
		}
		if it.characters == 0 || it.characters == utf8.RuneCountInString(text) {
			return i
		}
	}
	return -1
}

// planOn is the plan of placements on a card, as far as costs need it: the frozen one where there is one.
func (t *setting) planOn(c int, on []int) (planned, error) {
	if t.frozen != nil {
		return t.frozen.plans[c], nil
	}
	return t.outline(c, on)
}
