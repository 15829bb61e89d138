package quote

import (
	"fmt"
	"math/big"
	"slices"

	"pressworth/quote/money"
)

// MaxPieces is the largest job the engine takes.
const MaxPieces = 100_000

// checker gathers every problem of a job, each under the path of its field.
type checker struct {
	job      *Job
	places   int
	large    bool // what is looked for are amounts too large to be worked out
	problems Problems
}

// check returns all problems that can be seen without working the job out.
func check(job *Job) Problems {
	c := &checker{job: job}
	c.all()
	return c.problems
}

func (c *checker) all() {
	c.head()
	c.suppliers()
	c.garments()
	c.placements()
	c.extras()
	c.rateCards()
	c.shop()
	c.pricing()
	c.ladder()
}

func (c *checker) say(problem, path string, args ...any) {
	c.problems = append(c.problems, Problem{Path: fmt.Sprintf(path, args...), Problem: problem})
}

// signed is an amount or a number.
type signed interface {
	Sign() int
	Rat() *big.Rat
}

// tooLarge names the fields whose values are too large to be worked out together; all of them where none stands out.
func (c *checker) tooLarge() Problems {
	c.large = true
	c.all()
	if len(c.problems) == 0 {
		c.say(tooLargeText, "garments")
	}
	return c.problems
}

// largeFrom is what stands out among amounts, lengths and times.
var largeFrom = rat(1_000_000_000)

func (c *checker) notNegative(path string, x signed) {
	if c.large && x.Rat().Cmp(largeFrom) >= 0 {
		c.say(tooLargeText, "%s", path)
	}
	if x.Sign() < 0 {
		c.say("enter 0 or more", "%s", path)
	}
}

func (c *checker) positive(path string, x signed) {
	if x.Sign() > 0 {
		c.notNegative(path, x)
	}
	if x.Sign() <= 0 {
		c.say("enter more than 0", "%s", path)
	}
}

func (c *checker) count(path string, n int) {
	if n < 0 {
		c.say("enter 0 or more", "%s", path)
	}
	if n > MaxPieces {
		c.say(fmt.Sprintf("enter at most %d", MaxPieces), "%s", path)
	}
}

// charge checks an amount that must be whole minor units.
func (c *checker) charge(path string, a money.Amount) {
	c.notNegative(path, a)
	if _, ok := a.Minor(c.places); !ok {
		c.say(fmt.Sprintf("enter at most %d places", c.places), "%s", path)
	}
}

// percentBelow checks a percentage from 0 to below a limit, or up to and with it where withLimit is set.
func (c *checker) percentBelow(path string, p money.Number, limit int64, withLimit bool) {
	c.notNegative(path, p)
	switch d := p.Cmp(money.Int(limit)); {
	case d == 0 && !withLimit, d > 0 && !withLimit:
		c.say(fmt.Sprintf("enter less than %d", limit), "%s", path)
	case d > 0:
		c.say(fmt.Sprintf("enter at most %d", limit), "%s", path)
	}
}

func (c *checker) oneOf(path, value string, names ...string) {
	if !slices.Contains(names, value) {
		c.say(fmt.Sprintf("%q is not known: use one of %q", value, names), "%s", path)
	}
}

func (c *checker) breaks(path string, bs []Break) {
	if len(bs) == 0 {
		c.say("enter a price", "%s", path)
	}
	for i, b := range bs {
		at := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case b.From < 1:
			c.say("enter 1 or more", "%s.from", at)
		case i > 0 && b.From <= bs[i-1].From:
			c.say("breaks are out of order: each starts at more than the one before", "%s.from", at)
		}
		c.notNegative(at+".each", b.Each)
	}
}

// ids checks that each id is given and given once.
func (c *checker) ids(list string, ids []string) {
	seen := map[string]bool{}
	for i, id := range ids {
		switch {
		case id == "":
			c.say("enter an id", "%s[%d].id", list, i)
		case seen[id]:
			c.say(fmt.Sprintf("%q is used twice: give each its own id", id), "%s[%d].id", list, i)
		}
		seen[id] = true
	}
}

func idsOf[T any](xs []T, id func(T) string) []string {
	ids := make([]string, len(xs))
	for i, x := range xs {
		ids[i] = id(x)
	}
	return ids
}

func (c *checker) known(path, id, what string, ids []string) {
	if !slices.Contains(ids, id) {
		c.say(fmt.Sprintf("there is no %s %q in this job", what, id), "%s", path)
	}
}

func (c *checker) head() {
	var ok bool
	if c.places, ok = money.Places(c.job.Currency); !ok {
		c.places = 2
		c.say(fmt.Sprintf("%q is not a currency: use an ISO 4217 code like USD", c.job.Currency), "currency")
	}
	c.oneOf("unit", c.job.Unit, "", "in", "mm")
}

func (c *checker) suppliers() {
	c.ids("suppliers", supplierIDs(c.job))
	for i, s := range c.job.Suppliers {
		at := fmt.Sprintf("suppliers[%d]", i)
		c.notNegative(at+".freight", s.Freight)
		c.notNegative(at+".free_from", s.FreeFrom)
		if s.SharePercent != nil {
			c.percentBelow(at+".share_percent", *s.SharePercent, 100, true)
		}
	}
}

func (c *checker) extras() {
	c.ids("extras", idsOf(c.job.Extras, func(e Extra) string { return e.ID }))
	for i, e := range c.job.Extras {
		at := fmt.Sprintf("extras[%d]", i)
		c.notNegative(at+".cost", e.Cost)
		c.notNegative(at+".seconds", e.Seconds)
		c.charge(at+".charge", e.Charge)
		c.on(at, e.On)
	}
}

func (c *checker) on(at string, on []string) {
	for i, id := range on {
		c.known(fmt.Sprintf("%s.on[%d]", at, i), id, "garment", garmentIDs(c.job))
	}
}

func (c *checker) ladder() {
	for i, q := range c.job.Ladder {
		if q < 1 || q > MaxPieces {
			c.say(fmt.Sprintf("enter 1 to %d pieces", MaxPieces), "ladder[%d]", i)
		}
	}
}

func garmentIDs(j *Job) []string { return idsOf(j.Garments, func(g Garment) string { return g.ID }) }

func supplierIDs(j *Job) []string { return idsOf(j.Suppliers, func(s Supplier) string { return s.ID }) }

func cardIDs(j *Job) []string { return idsOf(j.RateCards, func(c RateCard) string { return c.ID }) }
