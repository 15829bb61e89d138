package quote

import (
	"strconv"

	"pressworth/quote/gang"
)

// known is a figure worked out once.
type known struct {
	done, ok bool
	x        int64
}

func (k *known) get(find func() (int64, bool)) (int64, bool) {
	if !k.done {
		k.x, k.ok = find()
		k.done = true
	}
	return k.x, k.ok
}

// memo is what a setting remembers of its figures.
type memo struct {
	constant, handling known
	placement          []known // by placement and card
	low, least         []known // by placement and card, of sheets and lengths
	guess              map[string]known
}

func (t *setting) newMemo() memo {
	n := len(t.m.placements) * len(t.m.cards)
	return memo{placement: make([]known, n), low: make([]known, n), least: make([]known, n), guess: map[string]known{}}
}

func (t *setting) constantCost() int64 {
	x, _ := t.memo.constant.get(func() (int64, bool) { return t.constant(), true })
	return x
}

func (t *setting) handlingTime() int64 {
	x, _ := t.memo.handling.get(func() (int64, bool) { return t.handling(), true })
	return x
}

func (t *setting) placementOn(c, p int) (int64, bool) {
	return t.memo.placement[p*len(t.m.cards)+c].get(func() (int64, bool) { return t.placementCost(c, p) })
}

func (t *setting) gangLow(c, p int) int64 {
	x, _ := t.memo.low[p*len(t.m.cards)+c].get(func() (int64, bool) { return t.areaFloor(c, p), true })
	return x
}

// areaFloor is less than or equal to what a placement costs on a sheet or roll card, by its area.
func (t *setting) areaFloor(c, p int) (low int64) {
	m, cd := t.m, &t.m.cards[c]
	items, need := t.gangItems(cd, []int{p})
	for k, i := range items {
		area := float64(m.items[i].w) * float64(m.items[i].h) * float64(need[k])
		low = add(low, max(0, int64(min(cd.perArea()*area, 1<<60))-1))
	}
	return low
}

// gangLeast is less than or equal to what the sheets or lengths cost that hold a placement, whatever else they hold.
func (t *setting) gangLeast(c, p int) int64 {
	x, _ := t.memo.least[p*len(t.m.cards)+c].get(func() (int64, bool) { return t.findLeast(c, p), true })
	return x
}

func (t *setting) findLeast(c, p int) (low int64) {
	m, cd := t.m, &t.m.cards[c]
	items, need := t.gangItems(cd, []int{p})
	for k, i := range items {
		if cd.sheets != nil {
			low = max(low, cd.sheets.Least(i, need[k]))
		} else {
			low = max(low, cd.roll.Least(i, need[k]))
		}
	}
	return max(0, m.roundPriceDown(low)-int64(len(m.items))) // every run is rounded
}

// gangGuess is about what placements cost together on a sheet or roll card, in minor units.
func (t *setting) gangGuess(c int, placements []int, r *scratch) (int64, bool) {
	r.name(c, placements)
	if k, ok := t.memo.guess[string(r.key)]; ok {
		return k.x, k.ok
	}
	m, cd := t.m, &t.m.cards[c]
	items, need := t.gangItems(cd, placements)
	var k known
	if cd.sheets != nil {
		k.x, k.ok = cd.sheets.Guess(items, need)
	} else {
		k.x, k.ok = cd.roll.Guess(items, need)
	}
	k.x = m.roundPriceDown(k.x)
	if cd.roll != nil {
		k.x = add(k.x, m.rollSetup(cd, placements))
	}
	t.memo.guess[string(r.key)] = k
	return k.x, k.ok
}

// gangUnder is gangCost, or false where that is proven to be more than a limit.
func (t *setting) gangUnder(c int, placements []int, r *scratch, limit int64) (int64, bool) {
	cd := &t.m.cards[c]
	if cd.roll == nil || cd.priceScale > 1 {
		return t.gangCost(c, placements, r)
	}
	r.name(c, placements)
	if k, ok := t.gangOf[string(r.key)]; ok {
		return k.x, k.ok
	}
	setup := t.m.rollSetup(cd, placements)
	items, need := t.gangItems(cd, placements)
	x, ok, out := cd.roll.CostUnder(items, need, max(0, limit-setup))
	if out {
		return 0, false
	}
	if ok {
		x = add(x, setup)
	}
	t.gangOf[string(r.key)] = known{done: true, ok: ok, x: x}
	return x, ok
}

// gangCost is what placements cost together on a sheet or roll card, in minor units.
func (t *setting) gangCost(c int, placements []int, r *scratch) (int64, bool) {
	r.name(c, placements)
	if k, ok := t.gangOf[string(r.key)]; ok {
		return k.x, k.ok
	}
	x, ok := t.findGangCost(c, placements)
	t.gangOf[string(r.key)] = known{done: true, ok: ok, x: x}
	return x, ok
}

// name makes the key of a card with its placements.
func (r *scratch) name(c int, placements []int) {
	r.key = strconv.AppendInt(r.key[:0], int64(c), 10)
	for _, p := range placements {
		r.key = strconv.AppendInt(append(r.key, ' '), int64(p), 10)
	}
}

// gangFloor is what placements cost together on a sheet card where few are on it, and no more than that on others.
func (t *setting) gangFloor(c int, placements []int, r *scratch) (int64, bool) {
	cd := &t.m.cards[c]
	if cd.roll == nil && len(placements) <= gang.Exact && len(t.m.items) <= gang.Exact {
		return t.gangCost(c, placements, r)
	}
	r.name(c, placements)
	if k, ok := t.floorOf[string(r.key)]; ok {
		return k.x, k.ok
	}
	items, need := t.gangItems(cd, placements)
	if cd.roll == nil && len(items) <= gang.Exact {
		return t.gangCost(c, placements, r)
	}
	low, ok := t.floorOn(cd, items, need)
	low = max(0, t.m.roundPriceDown(low)-int64(len(items)))
	if cd.roll != nil {
		low = add(low, t.m.rollSetup(cd, placements))
	}
	t.floorOf[string(r.key)] = known{done: true, ok: ok, x: low}
	return low, ok
}

func (t *setting) floorOn(cd *card, items, need []int) (int64, bool) {
	if cd.roll != nil {
		return cd.roll.Floor(items, need)
	}
	return cd.sheets.Floor(items, need)
}

func (t *setting) findGangCost(c int, placements []int) (int64, bool) {
	m, cd := t.m, &t.m.cards[c]
	if cd.priceScale > 1 {
		p, err := t.plan(c, placements) // each run is rounded: the plan's cost alone does not tell
		return p.cost, err == nil
	}
	items, need := t.gangItems(cd, placements)
	if cd.sheets != nil {
		return cd.sheets.Cost(items, need)
	}
	x, ok := cd.roll.Cost(items, need)
	if ok {
		x = add(x, m.rollSetup(cd, placements))
	}
	return x, ok
}

// rollSetup is the setups of placements on a roll card, in minor units.
func (m *model) rollSetup(c *card, placements []int) (total int64) {
	if c.setups == nil {
		c.setups = make([]known, len(m.placements))
	}
	for _, p := range placements {
		x, _ := c.setups[p].get(func() (int64, bool) { return cents(m.setupOn(c, p)), true })
		total = add(total, x)
	}
	return total
}
