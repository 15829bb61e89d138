package quote

import (
	"cmp"
	"slices"
)

// mostDescended is up to how many combinations the search by bounds is tried before, or in place of, changing a good
// one little by little.
const mostDescended = 1 << 18

// roam looks for a good combination where there are too many to weigh them all: by guesses of what sheets and rolls
// cost it finds likely ones, of which the best few are weighed in earnest.
func (x *search) roam(hint []int, count int) {
	g := newGuesses(x)
	if hint != nil && x.effort <= secondEffort { // a runner-up is found from the best
		x.pick(func(p int) int { return max(0, slices.Index(x.allowed[p], hint[p])) })
		g.note()
	} else {
		for _, pick := range x.seeds() {
			x.pick(pick)
			g.note()
		}
	}
	g.improve()
	x.weighBest(g)
	if count <= mostDescended && x.best.ok {
		x.bounded = true
		if x.descend(0) {
			return
		}
	}
	x.polish(g)
}

// inEarnest is how many guessed combinations are weighed at first.
const inEarnest = 3

func (x *search) weighBest(g *guesses) {
	for i, c := range g.best {
		if i >= inEarnest && x.best.ok {
			return
		}
		copy(x.choice, c.choice)
		x.evaluate()
	}
}

// polish weighs the likeliest single changes of the best combination, for as long as that helps and there are steps.
func (x *search) polish(g *guesses) {
	for improved := x.best.ok; improved && x.effort > 0; {
		improved = false
		for _, c := range g.changes(x.best.choice) {
			if x.effort <= 0 {
				return
			}
			copy(x.choice, c.choice)
			if x.evaluate() {
				improved = true
				break
			}
		}
	}
}

// guesses are combinations by about what they cost.
type guesses struct {
	x    *search
	best []combination // the likeliest, best first
	left int           // that may still be made
}

// mostKept is how many guessed combinations are kept, and likely how many changes of one are weighed.
const (
	mostKept = 8
	likely   = 12
)

func newGuesses(x *search) *guesses { return &guesses{x: x, left: x.effort} }

// guess is about the figure of the present choice.
func (g *guesses) guess() combination {
	g.left--
	return g.x.s.guess(g.x.choice, &g.x.scratch)
}

// note keeps the present choice if it is likely.
func (g *guesses) note() { g.keep(g.guess()) }

func (g *guesses) keep(c combination) {
	at, found := slices.BinarySearchFunc(g.best, c, combination.compare)
	if !c.ok || found || at == mostKept {
		return
	}
	c.choice = slices.Clone(c.choice)
	g.best = slices.Insert(g.best, at, c)
	g.best = g.best[:min(len(g.best), mostKept)]
}

// compare puts the better combination first.
func (a combination) compare(b combination) int {
	return cmp.Or(cmp.Compare(a.figure, b.figure), slices.Compare(a.choice, b.choice))
}

// improve changes the best guessed combination: single placements, all of one card at once, and two placements to one
// card, for as long as that helps.
func (g *guesses) improve() {
	for len(g.best) > 0 && g.left > 0 {
		before := g.best[0].figure
		if g.singles(); g.best[0].figure < before {
			continue
		}
		if g.whole(); g.best[0].figure < before {
			continue
		}
		if g.pairs(); g.best[0].figure >= before {
			return
		}
	}
}

// singles lets each placement in turn choose the card that is best for it.
func (g *guesses) singles() {
	at := slices.Clone(g.best[0].choice)
	for p, cards := range g.x.allowed {
		least := g.best[0]
		for _, c := range cards {
			copy(g.x.choice, at)
			if g.x.choice[p] = c; c == at[p] || g.left <= 0 {
				continue
			}
			n := g.guess()
			g.keep(n)
			if n.ok && n.figure < least.figure {
				least = n
				least.choice = slices.Clone(n.choice)
			}
		}
		copy(at, least.choice)
	}
}

// whole moves all placements from one card to another that takes them.
func (g *guesses) whole() {
	at := slices.Clone(g.best[0].choice)
	cards := len(g.x.s.m.cards)
	for from := range cards {
		if !slices.Contains(at, from) {
			continue
		}
		for to := range cards {
			if to == from || g.left <= 0 {
				continue
			}
			copy(g.x.choice, at)
			for p, c := range at {
				if c == from && slices.Contains(g.x.allowed[p], to) {
					g.x.choice[p] = to
				}
			}
			g.note()
		}
	}
}

// pairs moves two placements to one card.
func (g *guesses) pairs() {
	at := slices.Clone(g.best[0].choice)
	for p := range at {
		for q := p + 1; q < len(at); q++ {
			for _, c := range g.x.allowed[p] {
				if c == at[p] && c == at[q] || g.left <= 0 || !slices.Contains(g.x.allowed[q], c) {
					continue
				}
				copy(g.x.choice, at)
				g.x.choice[p], g.x.choice[q] = c, c
				g.note()
			}
		}
	}
}

// changes are the likeliest changes of one placement of a combination.
func (g *guesses) changes(choice []int) []combination {
	from := guesses{x: g.x}
	for p, cards := range g.x.allowed {
		for _, c := range cards {
			if c != choice[p] {
				copy(g.x.choice, choice)
				g.x.choice[p] = c
				from.left = 1
				from.note()
			}
		}
	}
	return from.best
}
