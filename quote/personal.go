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

// countTexts counts the texts of a placement by line and length; at another quantity than the job's own their number
// scales in proportion, rounded up, shared over what the roster has.
func (s *state) countTexts(p int) {
	m, pl := s.m, &s.m.placements[p]
	total := len(pl.Texts)
	if total == 0 {
		return
	}
	counts := make([]int64, len(pl.items)*len(m.lines))
	for _, t := range pl.Texts {
		n := utf8.RuneCountInString(t.Text)
		for k, i := range pl.items {
			for l := range m.lines {
				if m.items[i].characters == n && m.lines[l].ID == t.Garment {
					counts[k*len(m.lines)+l]++
				}
			}
		}
	}
	scaled := (total*s.pieces + m.pieces - 1) / m.pieces
	for at, n := range money.Share(int64(scaled), counts) {
		s.uses[pl.items[at/len(m.lines)]][at%len(m.lines)] = int(n)
	}
}
