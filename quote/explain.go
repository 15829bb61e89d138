package quote

import (
	"slices"

	"pressworth/quote/money"
)

// Causes of a difference, in the order in which Explain takes them up.
const (
	CausePlans      = "plans"      // sheets planned anew that were frozen
	CauseQuantities = "quantities" // garment lines, sizes and pieces
	CauseWork       = "work"       // artwork, extras, art time, what garments are
	CauseBlanks     = "blanks"     // prices of blanks, declared worth
	CauseFreight    = "freight"    // what suppliers charge for delivery
	CauseTransfers  = "transfers"  // rate cards
	CauseShop       = "shop"       // what an hour, a hit and a spare cost
	CausePricing    = "pricing"    // rules of pricing, typed prices, charges
	CauseMethods    = "methods"    // placements on other cards than before
	CauseRest       = "rest"       // what is frozen in the later job and not found anew
)

// Effect is what one cause does to a price.
type Effect struct {
	Cause   string
	With    []string     // causes before it that could only be told together with it
	Total   money.Amount // signed: what it adds to the total
	Cost    money.Amount // signed: what it adds to the cost
	Details []string     // what changed, for people
}

// Difference is why one job comes to another total than another: the effects' totals and costs add up to its own.
type Difference struct {
	Old, Now Result
	Total    money.Amount
	Cost     money.Amount
	Effects  []Effect
}

// Explain prices two jobs and says by cause why the second has another total. It changes one group of inputs of the old
// job after another into those of the second, in the order of the constants above, and prices each time, every
// placement held on its old card until methods are taken up; what a group adds is the difference to the price before
// it. So the effects add up exactly, and each is that of its group after the groups before it. A group that cannot be
// priced by itself, say quantities that an old card does not serve, is told together with the next that can. Groups
// that change nothing are left out. The error, if any, is Problems, of either job.
func Explain(old, now Job) (Difference, error) {
	x := explaining{memory: NewMemory(), old: &old, now: &now}
	var d Difference
	if old.Currency != now.Currency {
		return d, Problems{{Path: "currency", Problem: "the two jobs are in " + old.Currency + " and " + now.Currency + ": they cannot be compared"}}
	}
	var err error
	if d.Old, err = x.memory.First(old); err != nil {
		return d, err
	}
	if d.Now, err = x.memory.First(now); err != nil {
		return d, err
	}
	d.Total, d.Cost = Less(d.Now.Price.Total, d.Old.Price.Total), Less(d.Now.Cost.Total, d.Old.Cost.Total)
	x.held, x.chosen = methodsOf(d.Old), methodsOf(d.Now)
	x.walk(&d)
	return d, nil
}

// explaining turns one job into another, group by group.
type explaining struct {
	memory       *Memory
	old, now     *Job
	held, chosen map[string]string // cards of the old and the later job, by placement
}

func methodsOf(r Result) map[string]string {
	cards := make(map[string]string, len(r.Methods))
	for _, m := range r.Methods {
		cards[m.Placement] = m.Card
	}
	return cards
}

// walk prices the jobs between the two.
func (x *explaining) walk(d *Difference) {
	job, last := *x.old, d.Old
	var waiting []string
	for _, s := range []struct {
		cause string
		turn  func(*Job)
	}{
		{CausePlans, x.plans},
		{CauseQuantities, x.quantities},
		{CauseWork, x.work},
		{CauseBlanks, x.blanks},
		{CauseFreight, x.freight},
		{CauseTransfers, x.transfers},
		{CauseShop, x.shop},
		{CausePricing, x.pricing},
		{CauseMethods, x.methods},
		{CauseRest, x.rest},
	} {
		before := job
		s.turn(&job)
		r, err := d.Now, error(nil)
		if s.cause != CauseRest {
			r, err = x.memory.First(job)
		}
		if err != nil {
			waiting = append(waiting, s.cause)
			continue
		}
		e := Effect{
			Cause: s.cause, With: waiting, Details: x.details(s.cause, stage{before, last}, stage{job, r}),
			Total: Less(r.Price.Total, last.Price.Total), Cost: Less(r.Cost.Total, last.Cost.Total),
		}
		if e.Total.Sign() != 0 || e.Cost.Sign() != 0 {
			d.Effects = append(d.Effects, e)
		}
		last, waiting = r, nil
	}
}

// hold fixes every placement on its old card, where the job has it.
func (x *explaining) hold(j *Job) {
	j.Placements = slices.Clone(j.Placements)
	for i := range j.Placements {
		p := &j.Placements[i]
		if card := x.held[p.ID]; card != "" && cardAt(j.RateCards, card) >= 0 {
			p.Method = card
		}
	}
}

func cardAt(cards []RateCard, id string) int {
	return slices.IndexFunc(cards, func(c RateCard) bool { return c.ID == id })
}

func (x *explaining) plans(j *Job) {
	j.Frozen = nil
	x.hold(j)
}

// quantities takes the later garment lines and sizes over, each at its old price where it had one.
func (x *explaining) quantities(j *Job) {
	lines := slices.Clone(x.now.Garments)
	for i := range lines {
		if had := garmentAt(x.old.Garments, lines[i]); had != nil {
			line := *had
			line.Sizes = atOldPrices(lines[i].Sizes, had.Sizes)
			lines[i] = line
		}
	}
	j.Garments = lines
	j.Suppliers = slices.Clone(x.old.Suppliers)
	for _, s := range x.now.Suppliers {
		if !slices.ContainsFunc(j.Suppliers, func(t Supplier) bool { return t.ID == s.ID }) {
			j.Suppliers = append(j.Suppliers, s)
		}
	}
	there := func(id string) bool { return slices.ContainsFunc(lines, func(g Garment) bool { return g.ID == id }) }
	j.Placements = slices.DeleteFunc(slices.Clone(j.Placements), func(p Placement) bool { return p.On != nil && !slices.ContainsFunc(p.On, there) })
	for i := range j.Placements {
		j.Placements[i].On = onThose(j.Placements[i].On, there)
	}
	j.Extras = slices.DeleteFunc(slices.Clone(j.Extras), func(e Extra) bool { return e.On != nil && !slices.ContainsFunc(e.On, there) })
	for i := range j.Extras {
		j.Extras[i].On = onThose(j.Extras[i].On, there)
	}
}

func onThose(on []string, there func(string) bool) []string {
	return slices.DeleteFunc(slices.Clone(on), func(id string) bool { return !there(id) })
}

// garmentAt finds a line again: the same key, and the same garment.
func garmentAt(lines []Garment, g Garment) *Garment {
	for i := range lines {
		l := &lines[i]
		if l.ID == g.ID && l.Supplier == g.Supplier && l.Style == g.Style && l.Color == g.Color && l.FromCustomer == g.FromCustomer {
			return l
		}
	}
	return nil
}

// atOldPrices are sizes at the prices they had.
func atOldPrices(sizes, had []Size) []Size {
	sizes = slices.Clone(sizes)
	for i := range sizes {
		if k := slices.IndexFunc(had, func(z Size) bool { return z.Size == sizes[i].Size }); k >= 0 {
			sizes[i].Each = had[k].Each
		}
	}
	return sizes
}

// work takes over what is made, but for prices. A placement that was there stays on its old card.
func (x *explaining) work(j *Job) {
	priced := j.Garments
	j.Garments = slices.Clone(x.now.Garments)
	for i := range j.Garments {
		g, had := &j.Garments[i], &priced[i]
		g.Sizes, g.Handling, g.Price, g.ValueEach = had.Sizes, had.Handling, had.Price, had.ValueEach
	}
	j.Placements, j.Extras, j.Art.Minutes, j.Unit = x.now.Placements, x.now.Extras, x.now.Art.Minutes, x.now.Unit
	x.hold(j)
	j.RateCards = slices.Clone(j.RateCards)
	for _, p := range j.Placements {
		if at := cardAt(x.now.RateCards, p.Method); at >= 0 && cardAt(j.RateCards, p.Method) < 0 {
			j.RateCards = append(j.RateCards, x.now.RateCards[at])
		}
	}
}

func (x *explaining) blanks(j *Job) {
	j.Garments = slices.Clone(j.Garments)
	for i := range j.Garments {
		j.Garments[i].Sizes, j.Garments[i].ValueEach = x.now.Garments[i].Sizes, x.now.Garments[i].ValueEach
	}
}

func (x *explaining) freight(j *Job) { j.Suppliers = x.now.Suppliers }

// transfers takes the later cards; an old one in use that is gone stays until methods are taken up.
func (x *explaining) transfers(j *Job) {
	had := j.RateCards
	j.RateCards = slices.Clone(x.now.RateCards)
	for _, p := range j.Placements {
		if at := cardAt(had, p.Method); at >= 0 && cardAt(j.RateCards, p.Method) < 0 {
			j.RateCards = append(j.RateCards, had[at])
		}
	}
}

func (x *explaining) shop(j *Job) {
	j.Shop, j.Art.PerHour = x.now.Shop, x.now.Art.PerHour
	j.Garments = slices.Clone(j.Garments)
	for i := range j.Garments {
		j.Garments[i].Handling = x.now.Garments[i].Handling
	}
}

func (x *explaining) pricing(j *Job) {
	j.Pricing, j.Ladder, j.Art.Charge = x.now.Pricing, x.now.Ladder, x.now.Art.Charge
	j.Garments = x.now.Garments
}

func (x *explaining) methods(j *Job) {
	*j = *x.now
	j.Frozen = nil
	j.Placements = slices.Clone(j.Placements)
	for i := range j.Placements {
		if card := x.chosen[j.Placements[i].ID]; card != "" {
			j.Placements[i].Method = card
		}
	}
}

func (x *explaining) rest(j *Job) { *j = *x.now }
