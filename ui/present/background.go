package present

import "pressworth/quote"

// minUpto is how far the bands reach at least.
const minUpto = 150

// later is the work that follows a key in the background: the whole result, where the key had only its first stage, and
// the bands of the cheapest cards. One run at a time; what comes back counts only while its number is the last one
// asked for, so that nothing stale is ever shown.
type later struct {
	placement string // whose bands are looked at; empty: the first
	seq       int    // of the job as it stands
	running   bool
	done      int // the number of the job whose bands are shown

	bands quote.CheapestFromTo
	upto  int
	have  bool

	levers    bool // are looked at
	pulled    []quote.Lever
	pulledFor int // the number of the job they belong to
}

// LookAt chooses the placement whose bands are shown.
func (c *Counter) LookAt(placement string) {
	c.later.placement = placement
	c.later.have = false
	c.follow()
	c.show()
}

// follow asks for what follows a key. What was going on for the key before is given up, and the new work begins when the
// typist rests: it would share the processor with the keys.
func (c *Counter) follow() {
	c.later.seq++
	if c.later.running {
		if c.engine.Stop != nil {
			c.engine.Stop()
		}
		return
	}
	if c.current {
		c.rest()
	}
}

// rest begins the work after a pause in which no key came.
func (c *Counter) rest() {
	c.later.running = true
	seq := c.later.seq
	c.shop.Pause(func() {
		c.later.running = false
		c.again(seq, false)
	})
}

// work does it off the window's goroutine: first the whole result, then the bands, which take longest,
// and what would change the price most, where that is looked at.
func (c *Counter) work() {
	switch {
	case c.provisional:
		c.seekWhole()
	case c.later.done != c.later.seq && c.engine.Cheapest != nil && c.lookedAt() != "":
		c.seekBands()
	case c.later.levers && c.later.pulledFor != c.later.seq && c.engine.Levers != nil:
		c.seekLevers()
	}
}

func (c *Counter) seekWhole() {
	c.later.running = true
	seq, job, whole := c.later.seq, c.job, c.engine.Whole
	c.shop.Background(func() func() {
		r, err := whole(job)
		return func() {
			c.later.running = false
			if seq == c.later.seq && err == nil {
				c.result, c.provisional = r, false
				c.show()
			}
			c.again(seq, err != nil)
		}
	})
}

func (c *Counter) seekBands() {
	placement := c.lookedAt()
	c.later.running = true
	seq, job, cheapest := c.later.seq, c.job, c.engine.Cheapest
	upto := min(max(minUpto, c.result.Pieces*3/2), quote.MostCheapest)
	c.shop.Background(func() func() {
		found, err := cheapest(job, placement, upto)
		return func() {
			c.later.running = false
			if seq == c.later.seq {
				c.later.bands, c.later.upto, c.later.have, c.later.done = found, upto, err == nil, seq
				c.show()
			}
			c.again(seq, false)
		}
	})
}

// again goes on after a piece of work for the job of a number: with the next piece, unless that one could not be done;
// from the start and after a rest, where the job has changed since.
func (c *Counter) again(seq int, failed bool) {
	switch {
	case !c.current:
	case seq != c.later.seq:
		c.rest()
	case !failed:
		c.work()
	}
}

// lookedAt is the placement whose bands are wanted: the one chosen, or the first that takes part.
func (c *Counter) lookedAt() string {
	for _, m := range c.result.Methods {
		if m.Placement == c.later.placement {
			return m.Placement
		}
	}
	if len(c.result.Methods) > 0 {
		return c.result.Methods[0].Placement
	}
	return ""
}
