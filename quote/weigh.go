package quote

import (
	"math"
	"slices"
)

// constant is what the job costs whatever the methods: extras, art, delivery.
func (s *state) constant() (total int64) {
	for e := range s.m.job.Extras {
		total = add(total, s.extraCost(e))
	}
	return add(total, add(s.m.artCost(), cents(s.m.inMinor(s.m.job.Pricing.DeliveryCost))))
}

func (m *model) artCost() int64 {
	return cents(times(m.job.Art.Minutes.Rat(), frac(1, 60), m.inMinor(m.job.Art.PerHour)))
}

// extraPieces is the pieces an extra is counted for: those it is on, or 1 for the order.
func (s *state) extraPieces(e int) int {
	x := &s.m.job.Extras[e]
	if x.PerOrder {
		return 1
	}
	n := 0
	for l, g := range s.m.lines {
		if isOn(x.On, g.ID) {
			n += s.lineQty[l]
		}
	}
	return n
}

func (s *state) extraCost(e int) int64 {
	return cents(times(rat(int64(s.extraPieces(e))), s.m.inMinor(s.m.job.Extras[e].Cost)))
}

// handling is the time of a job before any placement: set-up, extras of the order, and each piece in hand.
func (t *setting) handling() int64 {
	m := t.m
	s := m.minutes(m.job.Shop.JobSetupMin)
	for _, e := range m.job.Extras {
		if e.PerOrder {
			s = add(s, m.seconds(e.Seconds))
		}
	}
	for l, g := range m.lines {
		s = add(s, mul(int64(t.bought[l]), add(g.handling, g.extras)))
	}
	return s
}

// weigh works out what a combination costs. It may stop early, with !ok, where that is known to be more than limit.
func (s *state) weigh(choice []int, r *scratch, limit combination) combination {
	w, ok := s.weighing(choice, r)
	r.planned = 0
	if !ok || w.over(limit, add(w.low, w.surely())) || !w.floor() || w.over(limit, add(w.low, w.surely())) {
		return combination{}
	}
	for _, on := range r.on {
		r.planned += len(on) * len(on)
	}
	if !w.gang(limit) {
		return combination{}
	}
	return w.combination()
}

// guess works out about what a combination costs: its sheets and lengths are not planned.
func (s *state) guess(choice []int, r *scratch) combination {
	w, ok := s.weighing(choice, r)
	if !ok {
		return combination{}
	}
	for c, on := range r.on {
		if len(on) == 0 {
			continue
		}
		cost, ok := w.t.gangGuess(c, on, r)
		if !ok {
			return combination{}
		}
		w.buy(&s.m.cards[c], cost)
	}
	return w.combination()
}

// weighing adds up a combination but for its sheets, lengths and freight.
func (s *state) weighing(choice []int, r *scratch) (w weighing, ok bool) {
	t := s.settingFor(choice, r)
	if len(t.unpriced) > 0 {
		return w, false
	}
	w = weighing{t: t, r: r, choice: choice}
	w.start()
	for p, c := range choice {
		if c >= 0 && !w.place(p, c) {
			return w, false
		}
	}
	w.finishTime()
	return w, true
}

func (w *weighing) combination() combination {
	w.freight()
	return combination{choice: w.choice, cost: w.cost, figure: w.t.m.choosingFigure(w.cost, w.cards), ok: true}
}

// choosingFigure is the figure that methods are chosen by: the cost, and what mixing cards must save for each card but one.
func (m *model) choosingFigure(cost int64, cards int) int64 {
	return add(mul(cost, m.mixingScale), mul(m.mixing, int64(max(cards-1, 0))))
}

// settingFor is the setting that a combination leads to.
func (s *state) settingFor(choice []int, r *scratch) *setting {
	clear(r.pressed)
	for p, c := range choice {
		if c >= 0 && s.m.cards[c].Press != nil {
			for _, g := range s.groupsOf(p) {
				r.pressed[g] = true
			}
		}
	}
	if r.last == nil || !slices.Equal(r.last.pressed, r.pressed) {
		r.last = s.with(r.pressed)
	}
	return r.last
}

// weighing adds up one combination.
type weighing struct {
	t       *setting
	r       *scratch
	choice  []int
	cost    int64
	low     int64 // the least the sheet and roll cards cost
	seconds int64
	hits    int64
	cards   int // different ones
	pressed int // different pressed ones
}

func (w *weighing) start() {
	clear(w.r.used)
	for i := range w.r.on {
		w.r.on[i] = w.r.on[i][:0]
	}
	copy(w.r.value, w.t.value)
	copy(w.r.orders, w.t.orders)
	w.cost = add(w.t.fixed, w.t.constantCost())
	w.seconds = w.t.handlingTime()
}

// place adds one placement; false where the card does not serve it here.
func (w *weighing) place(p, c int) bool {
	cd := &w.t.m.cards[c]
	if !w.r.used[c] {
		w.r.used[c] = true
		w.cards++
		if cd.Press != nil {
			w.pressed++
		}
	}
	if cd.Press != nil {
		w.seconds = add(w.seconds, add(cd.setup, mul(cd.seconds, w.t.hitsOn[p])))
		w.hits = add(w.hits, w.t.hitsOn[p])
	}
	if cd.sheets != nil || cd.roll != nil {
		w.r.on[c] = append(w.r.on[c], p)
		w.low = add(w.low, w.t.gangLow(c, p))
		if cd.supplier >= 0 {
			w.r.orders[cd.supplier] = true
		}
		return true
	}
	cost, ok := w.t.placementOn(c, p)
	if ok {
		w.buy(cd, cost)
	}
	return ok
}

// over tells whether the combination costs more than the limit, whatever is still to be added to low.
func (w *weighing) over(limit combination, low int64) bool {
	return limit.ok && w.t.m.choosingFigure(add(w.cost, low), w.cards) > limit.figure
}

// surely is the freight that is never free, of suppliers that are bought from.
func (w *weighing) surely() (total int64) {
	for s, f := range w.t.m.freights {
		if f.free == 0 && w.r.orders[s] {
			total = add(total, f.amount)
		}
	}
	return total
}

// floor raises low to what the sheet cards cost, and to the least that the roll cards do; false where one cannot hold
// its placements.
func (w *weighing) floor() bool {
	w.low = 0
	for c, on := range w.r.on {
		if len(on) == 0 {
			continue
		}
		low, ok := w.t.gangFloor(c, on, w.r)
		if !ok {
			return false
		}
		w.low = add(w.low, low)
	}
	return true
}

func (w *weighing) buy(cd *card, cost int64) {
	w.cost = add(w.cost, cost)
	if cd.supplier >= 0 {
		w.r.value[cd.supplier] = add(w.r.value[cd.supplier], cost)
		w.r.orders[cd.supplier] = true
	}
}

func (w *weighing) finishTime() {
	m := w.t.m
	w.seconds = add(w.seconds, mul(m.changeover, int64(max(w.pressed-1, 0))))
	w.cost = add(w.cost, m.timeCost(w.seconds, w.hits))
}

// gang adds the sheet and roll cards; false where one cannot hold its placements, or all is known to be more than limit.
func (w *weighing) gang(limit combination) bool {
	rest := w.low
	for c, on := range w.r.on {
		if len(on) == 0 {
			continue
		}
		low, _ := w.t.gangFloor(c, on, w.r)
		rest -= low
		cost, ok := w.t.gangUnder(c, on, w.r, w.room(limit, add(rest, w.surely())))
		if !ok {
			return false
		}
		w.buy(&w.t.m.cards[c], cost)
	}
	return true
}

// room is what a card may cost at most, where so much more is still to come, if the combination is not to be dearer than
// the limit.
func (w *weighing) room(limit combination, more int64) int64 {
	if !limit.ok {
		return math.MaxInt64 / 2
	}
	m := w.t.m
	most := limit.figure - m.choosingFigure(add(w.cost, more), w.cards)
	if most < 0 {
		return 0
	}
	return most/m.mixingScale + 1
}

func (w *weighing) freight() {
	for s := range w.r.value {
		w.cost = add(w.cost, w.t.m.freight(s, w.r.value[s], w.r.orders[s]))
	}
}

// freight of a supplier, by the value of what is bought from it.
func (m *model) freight(s int, value int64, orders bool) int64 {
	f := m.freights[s]
	if !orders || f.free > 0 && value >= f.free {
		return 0
	}
	return f.amount
}
