package gang

import (
	"fmt"
	"slices"

	"pressworth/quote/nest"
)

// Sheets plans the items of one job on one sheet card. What it has found out about which copies fit on a sheet depends
// on their geometry alone and is kept, so that other quantities of the same items are planned faster; what was asked
// before never changes an answer. It is not safe for use by several goroutines at once.
type Sheets struct {
	card   SheetCard
	items  []Item
	inks   *palette
	shapes []int   // by item: the number of its shape
	forms  []shape // by number
	fits   map[string]nest.Verdict
	runs   map[string]run
	splits map[string]*split

	hasty bool    // the packer is asked for quick answers
	draft *Sheets // the same card and items, asked so

	counts []int // of the question at hand: copies by shape
	used   []int // and the shapes that have copies
	buf    []byte
}

// most entries that a memo keeps; a fuller one is emptied, which costs time and changes nothing.
const memory = 1 << 16

// NewSheets prepares planning of items on a card. A size that is no sheet, with an edge that leaves nothing of it, say,
// takes no item.
func NewSheets(card SheetCard, items []Item) *Sheets {
	card.Sizes = slices.Clone(card.Sizes)
	for i, sz := range card.Sizes {
		if !sound(sheetOf(sz)) {
			card.Sizes[i].Prices = nil
		}
	}
	s := &Sheets{
		card: card, items: items, inks: newPalette(items),
		fits: map[string]nest.Verdict{}, runs: map[string]run{}, splits: map[string]*split{},
	}
	of := map[shape]int{}
	for _, it := range items {
		k := number(of, shapeOf(it))
		if k == len(s.forms) {
			s.forms = append(s.forms, shapeOf(it))
		}
		s.shapes = append(s.shapes, k)
	}
	s.counts = make([]int, len(s.forms))
	return s
}

// quickly is the same card and items with a memory of its own, where the packer gives quick answers: for trying many
// splits, of which the best is then looked at in earnest.
func (s *Sheets) quickly() *Sheets {
	if s.draft == nil {
		q := *s
		q.hasty, q.buf, q.used = true, nil, nil
		q.fits, q.runs, q.splits = map[string]nest.Verdict{}, map[string]run{}, map[string]*split{}
		q.counts = make([]int, len(s.forms))
		s.draft = &q
	}
	return s.draft
}

// Serves says whether one copy of an item can be had on this card at all: a size it fits, an ink row for it, and no
// more inks than the card takes.
func (s *Sheets) Serves(item int) bool {
	_, ok := s.Alone(item, 1)
	return ok
}

// Alone is what an item costs in a run of its own: setup, minimum and buying up included. It is false where the card
// cannot print it.
func (s *Sheets) Alone(item, need int) (Price, bool) {
	return s.Cost([]int{item}, []int{need})
}

// Cost is the cost of the cheapest plan for need[k] copies of items[k], items ascending; items without need take no
// part. It is false where the card cannot print them. It equals the cost of Plan.
func (s *Sheets) Cost(items []int, need []int) (Price, bool) {
	sp := s.split(items, need)
	return sp.cost, sp.ok
}

// Plan is the cheapest plan for need[k] copies of items[k], with its layouts and its bound.
func (s *Sheets) Plan(items []int, need []int) (Plan, error) {
	sp := s.split(items, need)
	if !sp.ok {
		return Plan{}, s.refusal(items, need)
	}
	return s.planOf(sp), nil
}

// planOf lays the runs of a split.
func (s *Sheets) planOf(sp *split) Plan {
	p := Plan{Cost: sp.cost, Bound: sp.bound, Heuristic: sp.heuristic}
	var all group
	for k, r := range sp.runs {
		p.Runs = append(p.Runs, s.laid(sp.groups[k], r))
		all = all.with(sp.groups[k])
	}
	if sp.heuristic {
		p.Bound = s.boundMany(all, sp.cost)
	}
	return p
}

// refusal says why nothing can be planned.
func (s *Sheets) refusal(items, need []int) error {
	g, err := wanted(s.items, items, need)
	if err != nil {
		return err
	}
	for _, i := range g.items {
		if !s.Serves(i) {
			return fmt.Errorf("item %d: no sheet of this card takes it", i)
		}
	}
	return fmt.Errorf("the cost is larger than can be reckoned with")
}

// split is the cheapest split of the items into runs.
func (s *Sheets) split(items, need []int) *split {
	g, err := wanted(s.items, items, need)
	if err != nil {
		return &split{}
	}
	s.buf = g.key(s.buf[:0])
	if sp, ok := s.splits[string(s.buf)]; ok {
		return sp
	}
	key := string(s.buf)
	var sp *split
	if len(g.items) <= Exact {
		sp = s.exact(g)
	} else {
		sp = s.merged(g)
	}
	if len(s.splits) >= memory {
		clear(s.splits)
	}
	s.splits[key] = sp
	return sp
}
