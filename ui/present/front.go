package present

import (
	"time"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Front is what the customer may see: prices, total, deposit, the ladder, the garments. Nothing of what the job costs,
// how it is made, or what it leaves is in it.
type Front struct {
	Empty   bool // there is nothing to show yet
	Shop    string
	Title   string
	Prices  []FrontPrice // the first is shown large
	Lines   []FrontLine
	Total   string
	Deposit string // empty: none
	More    []FrontStep
	Date    string
	Valid   string
	Demo    bool
	Drawn   []FrontDrawing
	Caption string
}

// FrontPrice is a price each.
type FrontPrice struct{ Name, Amount string }

// FrontLine is a line of what the customer pays.
type FrontLine struct{ Name, Amount string }

// FrontStep is what another quantity would cost each.
type FrontStep struct {
	Pieces string
	Amount string
	Noun   string
	Less   string // "3.00 less each", or "as quoted"
	Own    bool
}

// Front is the customer's side of the last good figures.
func (c *Counter) Front() Front {
	f := Front{Empty: !c.priced, Shop: c.book.Shop.Letterhead.Name, Title: c.frontTitle(), Demo: c.book.Shop.Demo}
	if !c.priced {
		return f
	}
	f.Prices = c.frontPrices()
	f.Lines = c.frontLines()
	f.Total = Amount(c.result.Price.Total)
	if c.result.Price.Deposit.Sign() > 0 {
		f.Deposit = Amount(c.result.Price.Deposit)
	}
	f.More = c.frontSteps()
	f.Date, f.Valid = c.frontDates()
	f.Drawn, f.Caption = c.frontDrawings()
	return f
}

func (c *Counter) frontTitle() string {
	if c.draft.Title != "" {
		return c.draft.Title
	}
	return c.draft.Customer.Name
}

// frontPrices are the price each of every group, each followed by its sizes with a price of their own.
func (c *Counter) frontPrices() []FrontPrice {
	var out []FrontPrice
	for _, g := range c.result.Groups {
		if g.Pieces == 0 {
			continue
		}
		name := lower(c.groupName(g))
		if len(out) == 0 {
			name += ", each"
		}
		out = append(out, FrontPrice{name, Amount(g.UnitPrice)})
		for _, s := range c.dearer(g) {
			out = append(out, FrontPrice{s.Size, Amount(s.UnitPrice)})
		}
	}
	return out
}

func (c *Counter) frontLines() []FrontLine {
	t := c.result.Price
	var out []FrontLine
	add := func(name string, a money.Amount, sign string) {
		if a.Sign() != 0 {
			out = append(out, FrontLine{name, sign + Amount(a)})
		}
	}
	add(c.whatPieces(), t.Goods, "")
	add("Rush", t.Rush, "")
	add("Discount", t.Discount, "−")
	add("To the minimum order", t.MinimumOrder, "")
	for _, e := range t.ExtraLines {
		add(e.Name, e.Amount, "")
	}
	add("Artwork", t.Art, "")
	add("Delivery", t.Delivery, "")
	add(c.taxName(), t.Tax, "")
	add("Paying by card", t.CardFee, "")
	return out
}

func (c *Counter) taxName() string { return "Sales tax " + c.job.Pricing.Tax.Percent.String() + " %" }

// whatPieces counts what is sold: "36 long sleeves, 10 caps".
func (c *Counter) whatPieces() string {
	text := ""
	seen := map[string]int{}
	var nouns []string
	for _, g := range c.result.Groups {
		if g.Pieces > 0 {
			noun := c.groupNoun(g)
			if seen[noun] == 0 {
				nouns = append(nouns, noun)
			}
			seen[noun] += g.Pieces
		}
	}
	for i, n := range nouns {
		if i > 0 {
			text += ", "
		}
		text += figures(seen[n], n)
	}
	return text
}

// frontSteps are the job's own quantity and the ladder's larger ones, for the group most pieces are of.
func (c *Counter) frontSteps() []FrontStep {
	g := c.mainGroup()
	noun := c.groupNoun(g)
	out := []FrontStep{{Pieces: figures(c.result.Pieces, "piece"), Amount: Amount(g.UnitPrice), Noun: "a " + noun, Less: "as quoted", Own: true}}
	for _, s := range c.result.Ladder {
		u, ok := unit(g, rung{units: s.Units})
		if s.Unserved || !ok || s.Pieces <= c.result.Pieces || !worth(s.Pieces, c.result.Pieces) {
			continue
		}
		step := FrontStep{Pieces: figures(s.Pieces, "piece"), Amount: Amount(u), Noun: "a " + noun, Less: "the same each"}
		if less := quote.Less(g.UnitPrice, u); less.Sign() > 0 {
			step.Less = Amount(less) + " less each"
		}
		if u.Cmp(g.UnitPrice) <= 0 && len(out) < 4 {
			out = append(out, step)
		}
	}
	if len(out) == 1 {
		return nil
	}
	return out
}

// worth says whether a larger quantity is more than a tenth above the job's own.
func worth(q, own int) bool { return 10*(q-own) > own }

func (c *Counter) mainGroup() quote.Group {
	var most quote.Group
	for _, g := range c.result.Groups {
		if g.Pieces > most.Pieces {
			most = g
		}
	}
	return most
}

// frontDates says by when the goods are needed, and how long the prices hold.
func (c *Counter) frontDates() (date, valid string) {
	date = c.frontDate()
	if on, err := time.Parse(iso, c.draft.QuotedOn); err == nil && c.book.Shop.ValidDays > 0 {
		valid = "valid until " + on.AddDate(0, 0, c.book.Shop.ValidDays).Format("2 January 2006")
	}
	return date, valid
}
