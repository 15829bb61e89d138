package quote

import (
	"maps"
	"math/big"
	"slices"
	"unicode/utf8"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

// model is a checked job compiled for working out many quantities: indices in place of ids, scaled integers in place of
// decimals. Money is in minor units, time in units of 10^-secondPlaces s, length in units of 10^-lengthPlaces.
type model struct {
	job                         *Job
	places                      int // of the currency
	pieces                      int // the job's own N
	lines                       []line
	groups                      []group
	placements                  []placement
	items                       []item
	cards                       []card
	lengthPlaces                int
	secondPlaces                int
	pricePlaces                 int // of prices on sheet and roll cards
	blankPlaces                 int // of prices of blanks
	blankPrices                 map[*Break]int64
	blankRats                   map[*Break]*big.Rat
	vastBlanks                  bool
	changeover                  int64 // time
	garmentSpare, transferSpare exact // of pieces
	labour                      linear
	overhead                    linear
	wear                        linear // a: a hit, b: a unit of time
	allowed                     *big.Rat
	mixing                      int64 // mixing_saves_at_least in units of 10^-mixingPlaces minor units
	mixingScale                 int64
	freights                    []freight
	quantities                  map[int]*state
	problems                    Problems
	memory                      *Memory
	itemPrices                  map[[2]int][]itemPrice // by card and item
}

// freight is what a delivery of a supplier costs this job, and the value from which it is free (0: never).
type freight struct{ amount, free int64 }

// line is a garment line.
type line struct {
	*Garment
	group      int
	supplier   int // index, -1: none
	handling   int64
	extras     int64 // seconds of per-piece extras
	placements []int
}

// group is a price group; its lines are in file order.
type group struct {
	id           string
	lines        []int
	fromCustomer bool
}

// placement is a placement with its items: its artwork at one size each.
type placement struct {
	*Placement
	on      []int // lines
	items   []int
	inks    int
	serving []int // cards that allow it by kind of artwork and size
}

// item is a placement at one of its sizes, or, of names and numbers, all texts of one length.
type item struct {
	placement  int
	variant    int
	w, h       int64
	characters int
	texts      []string // of this length, in the order of the roster
}

// card is a rate card with its planner, where it has one.
type card struct {
	*RateCard
	supplier int
	seconds  int64 // at the press, a piece
	setup    int64 // at the press, a design
	sheets   *gang.Sheets
	roll     *gang.Roll
	sheetOf  gang.SheetCard
	rollOf   gang.RollCard

	priceScale int64 // planner's units in a minor unit
	areaPrice  float64
	free       bool    // no setups
	setups     []known // by placement, in minor units
}

func newModel(job *Job, memory *Memory) *model {
	m := &model{job: job, memory: memory, itemPrices: map[[2]int][]itemPrice{}, blankPrices: map[*Break]int64{}, blankRats: map[*Break]*big.Rat{}, quantities: map[int]*state{}}
	m.places, _ = money.Places(job.Currency)
	m.scales()
	m.vastBlanks = m.vast()
	m.changeover = m.minutes(job.Shop.ChangeoverMin)
	m.addLines()
	m.addPlacements()
	m.addGroups()
	m.addCards()
	m.rates()
	for p := range m.placements {
		m.placements[p].serving = m.servingCards(p)
	}
	return m
}

func (m *model) scales() {
	j := m.job
	m.pricePlaces, m.blankPlaces = m.places, m.places
	for _, n := range m.lengthNumbers() {
		m.lengthPlaces = max(m.lengthPlaces, n.Places())
	}
	times := []money.Number{j.Shop.Handling, j.Shop.JobSetupMin, j.Shop.DesignSetupMin, j.Shop.ChangeoverMin}
	for _, g := range j.Garments {
		if g.Handling != nil {
			times = append(times, *g.Handling)
		}
		for _, z := range g.Sizes {
			for _, b := range z.Each {
				m.blankPlaces = max(m.blankPlaces, money.Number(b.Each).Places())
			}
		}
	}
	for _, e := range j.Extras {
		times = append(times, e.Seconds)
	}
	for i := range j.RateCards {
		c := &j.RateCards[i]
		if p := c.Press; p != nil {
			times = append(times, p.Prep, p.Place, p.Dwell, p.Peel, p.Second, p.PrepMin)
		}
		for _, a := range gangPrices(c) {
			m.pricePlaces = max(m.pricePlaces, money.Number(a).Places())
		}
	}
	for _, n := range times {
		m.secondPlaces = max(m.secondPlaces, n.Places())
	}
}

func (m *model) lengthNumbers() (ns []money.Number) {
	for _, p := range m.job.Placements {
		ns = append(ns, p.Width, p.Height, p.CharWidth)
		for _, v := range p.Variants {
			ns = append(ns, v.Width, v.Height)
		}
	}
	for _, c := range m.job.RateCards {
		ns = append(ns, c.MaxWidth, c.MaxHeight, c.Width, c.Edge, c.Gap)
		for _, s := range c.Sizes {
			ns = append(ns, s.Width, s.Height, s.Edge, s.Gap)
		}
		for _, l := range c.Lengths {
			ns = append(ns, l.Length)
		}
	}
	return ns
}

// gangPrices are the prices of a card that the planner counts with.
func gangPrices(c *RateCard) (as []money.Amount) {
	as = append(as, c.SetupPerDesign, c.SetupPerInk)
	for _, s := range c.Sizes {
		for _, row := range s.Prices {
			for _, b := range row.Each {
				as = append(as, b.Each)
			}
		}
	}
	for _, l := range c.Lengths {
		as = append(as, l.Each)
	}
	return as
}

func (m *model) seconds(n money.Number) int64 { return fits(n.Scaled(m.secondPlaces)) }
func (m *model) minutes(n money.Number) int64 { return mul(60, m.seconds(n)) }
func (m *model) length(n money.Number) int64  { return fits(n.Scaled(m.lengthPlaces)) }
func (m *model) price(a money.Amount) int64   { return fits(a.Minor(m.pricePlaces)) }

// minor is an amount known to be whole minor units.
func (m *model) minor(a money.Amount) int64 { return fits(a.Minor(m.places)) }

// inMinor is an amount as an exact number of minor units.
func (m *model) inMinor(a money.Amount) *big.Rat { return times(a.Rat(), rat(power10(m.places))) }

func (m *model) amount(minor int64) money.Amount { return money.FromMinor(minor, m.places) }

func isOn(on []string, id string) bool { return on == nil || slices.Contains(on, id) }

func (m *model) addLines() {
	for i := range m.job.Garments {
		g := &m.job.Garments[i]
		l := line{Garment: g, supplier: -1, handling: m.seconds(m.job.Shop.Handling)}
		if g.Handling != nil {
			l.handling = m.seconds(*g.Handling)
		}
		if !g.FromCustomer {
			l.supplier = slices.Index(supplierIDs(m.job), g.Supplier)
		}
		for _, e := range m.job.Extras {
			if !e.PerOrder && isOn(e.On, g.ID) {
				l.extras = add(l.extras, m.seconds(e.Seconds))
			}
		}
		for _, s := range g.Sizes {
			m.pieces += s.Qty
		}
		m.lines = append(m.lines, l)
	}
}

func (m *model) addPlacements() {
	for i := range m.job.Placements {
		p := placement{Placement: &m.job.Placements[i]}
		p.inks = p.InkCount
		if len(p.Inks) > 0 {
			p.inks = len(inkSet(p.Inks))
		}
		if p.FullColor {
			p.inks = 0
		}
		for l, g := range m.lines {
			if isOn(p.On, g.ID) {
				p.on = append(p.on, l)
				m.lines[l].placements = append(m.lines[l].placements, i)
			}
		}
		if p.Personal {
			m.addTexts(i, &p)
		} else {
			m.addItem(&p, item{placement: i, w: m.length(p.Width), h: m.length(p.Height)})
			for k, v := range p.Variants {
				m.addItem(&p, item{placement: i, variant: k + 1, w: m.length(v.Width), h: m.length(v.Height)})
			}
		}
		m.placements = append(m.placements, p)
	}
}

func (m *model) addItem(p *placement, it item) int {
	p.items = append(p.items, len(m.items))
	m.items = append(m.items, it)
	return len(m.items) - 1
}

// addTexts gives a placement of names and numbers one item for every number of characters in its texts, short ones
// first, so that the order of the roster changes nothing.
func (m *model) addTexts(i int, p *placement) {
	of := map[int][]string{}
	for _, t := range p.Texts {
		if n := utf8.RuneCountInString(t.Text); n > 0 {
			of[n] = append(of[n], t.Text)
		}
	}
	for _, n := range slices.Sorted(maps.Keys(of)) {
		w := min(m.length(p.Width), mul(int64(n), m.length(p.CharWidth)))
		m.addItem(p, item{placement: i, w: w, h: m.length(p.Height), characters: n, texts: of[n]})
	}
}

// inkSet is the names of inks, each once, in their first order.
func inkSet(names []string) (set []string) {
	for _, n := range names {
		if !slices.Contains(set, n) {
			set = append(set, n)
		}
	}
	return set
}

// groupKey is what garment lines must share to have one price.
type groupKey struct {
	named, supplier, style, placements string
	fromCustomer                       bool
}

func (m *model) addGroups() {
	index := map[groupKey]int{}
	ids := map[string]bool{}
	for i := range m.lines {
		l := &m.lines[i]
		key := groupKey{named: l.Group}
		if l.Group == "" {
			key = groupKey{supplier: l.Supplier, style: l.Style, fromCustomer: l.FromCustomer, placements: string(runes(l.placements))}
		}
		g, ok := index[key]
		if !ok {
			g = len(m.groups)
			index[key] = g
			id := l.Group
			if id == "" {
				id = l.ID
			}
			for ids[id] {
				id += "+"
			}
			ids[id] = true
			m.groups = append(m.groups, group{id: id, fromCustomer: l.FromCustomer})
		}
		l.group = g
		m.groups[g].lines = append(m.groups[g].lines, i)
	}
}

// runes makes a comparable key of indices.
func runes(xs []int) []rune {
	rs := make([]rune, len(xs))
	for i, x := range xs {
		rs[i] = rune(x + 1)
	}
	return rs
}
