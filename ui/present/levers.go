package present

import (
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Levers are what a tenth less and a tenth more of one thing would do to the price, the strongest first. They are worked
// out in the background, and only while somebody looks.
type Levers struct {
	Open    bool
	Seeking bool
	Rows    []LeverRow
}

// LeverRow is one thing that can change.
type LeverRow struct {
	Name string
	Less string // change of the price at a tenth less, with its sign
	More string
	Down float64 // the same for drawing, as part of the strongest: −1 to 1
	Up   float64
}

var leverNames = map[string]string{
	quote.LeverWage: "wage", quote.LeverBlanks: "blanks", quote.LeverTransfers: "transfers",
	quote.LeverMinutes: "minutes at the press", quote.LeverSpoilage: "spares and spoilage", quote.LeverMargin: "target margin",
}

// OpenLevers shows or hides what would change the price most.
func (c *Counter) OpenLevers(open bool) {
	c.later.levers = open
	if open && c.current && !c.later.running {
		c.work()
	}
	c.show()
}

// seekLevers works them out off the window's goroutine.
func (c *Counter) seekLevers() {
	c.later.running = true
	seq, job, find := c.later.seq, c.job, c.engine.Levers
	c.shop.Background(func() func() {
		found, err := find(job)
		return func() {
			c.later.running = false
			if seq == c.later.seq {
				c.later.pulled, c.later.pulledFor = found, seq
				if err != nil {
					c.later.pulled = nil
				}
				c.show()
			}
			c.again(seq, false)
		}
	})
}

func (c *Counter) leversView() Levers {
	l := Levers{Open: c.later.levers, Seeking: c.later.pulledFor != c.later.seq}
	if !l.Open || len(c.later.pulled) == 0 {
		return l
	}
	widest := money.Amount{}
	for _, p := range c.later.pulled {
		for _, a := range []money.Amount{p.Less, p.More} {
			if a.Sign() < 0 {
				a = quote.Less(money.Amount{}, a)
			}
			if a.Cmp(widest) > 0 {
				widest = a
			}
		}
	}
	for _, p := range c.later.pulled {
		l.Rows = append(l.Rows, LeverRow{
			Name: leverNames[p.Name], Less: signed(p.Less), More: signed(p.More),
			Down: part(p.Less, widest), Up: part(p.More, widest),
		})
	}
	return l
}

func signed(a money.Amount) string {
	s := Amount(a)
	if a.Sign() > 0 && !strings.HasPrefix(s, "−") {
		return "+" + s
	}
	return s
}

// part is fraction with its sign.
func part(a, all money.Amount) float64 {
	if a.Sign() < 0 {
		return -fraction(quote.Less(money.Amount{}, a), all)
	}
	return fraction(a, all)
}
