package quote

import (
	"fmt"
	"slices"
	"unicode"
	"unicode/utf8"

	"pressworth/quote/money"
)

// maxText is the longest text of names and numbers, in characters.
const maxText = 200

func (c *checker) texts(at string, p Placement) {
	c.notNegative(at+".char_width", p.CharWidth)
	c.charge(at+".charge_each", p.ChargeEach)
	if len(p.Texts) > 0 && p.CharWidth.Sign() == 0 {
		c.say("enter the width of a character", "%s.char_width", at)
	}
	if len(p.Variants) > 0 {
		c.say("names and numbers have one size: leave variants out", "%s.variants", at)
	}
	counted := map[[2]string]int{}
	for i, t := range p.Texts {
		at := fmt.Sprintf("%s.texts[%d]", at, i)
		switch n := utf8.RuneCountInString(t.Text); {
		case n == 0:
			c.say("enter a text", "%s.text", at)
		case n > maxText:
			c.say(fmt.Sprintf("enter at most %d characters", maxText), "%s.text", at)
		case slices.ContainsFunc([]rune(t.Text), unicode.IsControl):
			c.say("has a character that cannot be printed", "%s.text", at)
		}
		key := [2]string{t.Garment, t.Size}
		counted[key]++
		have, known := c.sizeQty(p, t)
		switch {
		case !slices.Contains(garmentIDs(c.job), t.Garment) || !isOn(p.On, t.Garment):
			c.say(fmt.Sprintf("there is no garment %q with this placement", t.Garment), "%s.garment", at)
		case !known:
			c.say(fmt.Sprintf("garment %q does not come in size %q", t.Garment, t.Size), "%s.size", at)
		case counted[key] > have:
			c.say(fmt.Sprintf("more texts than the %d pieces of garment %q in size %q", have, t.Garment, t.Size), "%s", at)
		}
	}
}

func (c *checker) sizeQty(_ Placement, t Text) (int, bool) {
	for _, g := range c.job.Garments {
		for _, s := range g.Sizes {
			if g.ID == t.Garment && s.Size == t.Size {
				return s.Qty, true
			}
		}
	}
	return 0, false
}

// countTexts counts the texts of a placement by line and length. At another quantity than the job's own their number
// scales in proportion, rounded up, shared over what the roster has on lines with pieces.
func (s *state) countTexts(p int) {
	m, pl := s.m, &s.m.placements[p]
	counts := make([]int64, len(pl.items)*len(m.lines))
	for _, t := range pl.Texts {
		n := utf8.RuneCountInString(t.Text)
		for k, i := range pl.items {
			for l := range m.lines {
				if s.lineQty[l] > 0 && m.items[i].characters == n && m.lines[l].ID == t.Garment {
					counts[k*len(m.lines)+l]++
				}
			}
		}
	}
	if sum(counts) == 0 {
		return
	}
	scaled := (len(pl.Texts)*s.pieces + m.pieces - 1) / m.pieces
	for at, n := range money.Share(int64(scaled), counts) {
		s.uses[pl.items[at/len(m.lines)]][at%len(m.lines)] = int(n)
	}
}

// personal prices the texts of one length: by the number of all texts of the placement, bought exactly.
func (t *setting) personal(i int, prices []itemPrice) (found pieceCost) {
	n := t.texts(t.m.items[i].placement)
	for _, p := range prices {
		if p.from <= n {
			found = pieceCost{ok: true, cost: p.each.of(t.need[i]), bought: t.need[i], each: p.each, price: p.price}
		}
	}
	return found
}

// textCost is what the texts of one length cost on an area or piece card. Parts of a cent are added up over the whole
// placement, shorter texts and the setup first, and each length bears what it adds to the rounded sum.
func (t *setting) textCost(c, i int) (int64, bool) {
	placement := t.m.items[i].placement
	before, exact := int64(0), t.m.setupOn(&t.m.cards[c], placement)
	for _, k := range t.m.placements[placement].items {
		if t.need[k] == 0 {
			continue
		}
		p := t.onPiece(c, k)
		if !p.ok {
			return 0, false
		}
		if exact = plus(exact, times(rat(int64(p.bought)), p.each.rat())); k == i {
			return cents(exact) - before, true
		}
		before = cents(exact)
	}
	return 0, true
}

// personalRevenue is what a placement's names and numbers are charged at, all texts together.
func (s *state) personalRevenue(p int) int64 {
	pl := &s.m.placements[p]
	if !pl.Personal {
		return 0
	}
	return mul(int64(s.charged(p)), s.m.minor(pl.ChargeEach))
}

// charged is how many texts of a placement are charged for, or how many characters.
func (s *state) charged(p int) (n int) {
	pl := &s.m.placements[p]
	if pl.ChargeBy != byCharacter {
		return s.texts(p)
	}
	for _, i := range pl.items {
		n += s.need[i] * s.m.items[i].characters
	}
	return n
}

// texts is the number of texts of a placement.
func (s *state) texts(p int) (n int) {
	for _, i := range s.m.placements[p].items {
		n += s.need[i]
	}
	return n
}

// firstText stands for all texts of an item; empty where it is no name or number.
func (it item) firstText() string {
	if len(it.texts) == 0 {
		return ""
	}
	return it.texts[0]
}

// textsInTurn hands out the texts of each item one after the other, so that a layout shows every text once.
type textsInTurn map[int]int

func (x textsInTurn) next(m *model, i int) string {
	of := m.items[i].texts
	if len(of) == 0 {
		return ""
	}
	x[i]++
	return of[(x[i]-1)%len(of)]
}
