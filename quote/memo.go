package quote

import "strconv"

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
	placement, low     []known // by placement and card
}

func (t *setting) newMemo() memo {
	n := len(t.m.placements) * len(t.m.cards)
	return memo{placement: make([]known, n), low: make([]known, n)}
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

// gangFloor is what placements cost together on a sheet card, and no more than that on a roll card.
func (t *setting) gangFloor(c int, placements []int, r *scratch) (int64, bool) {
	cd := &t.m.cards[c]
	if cd.roll == nil {
		return t.gangCost(c, placements, r)
	}
	r.name(c, placements)
	if k, ok := t.floorOf[string(r.key)]; ok {
		return k.x, k.ok
	}
	items, need := t.gangItems(cd, placements)
	low, ok := cd.roll.Floor(items, need)
	low = max(0, t.m.roundPriceDown(low)-int64(len(items))) + t.m.rollSetup(cd, placements)
	t.floorOf[string(r.key)] = known{done: true, ok: ok, x: low}
	return low, ok
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
	for _, p := range placements {
		total = add(total, cents(m.setupOn(c, p)))
	}
	return total
}
