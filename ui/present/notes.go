package present

import (
	"fmt"
	"slices"
	"time"

	"pressworth/quote"
	"pressworth/quote/money"
)

// notes are what the shop should know about the job: the engine's warnings, then prices that have grown old.
func (c *Counter) notes(differs []string) []Note {
	var out []Note
	for _, w := range c.result.Warnings {
		out = append(out, Note{Text: w.Text, Path: w.Path, Warning: true})
	}
	if n := c.oldest(); c.book.Shop.StaleDays > 0 && n > c.book.Shop.StaleDays {
		out = append(out, Note{Text: fmt.Sprintf("Blank prices are %d days old (limit %d).", n, c.book.Shop.StaleDays), Warning: true})
	}
	out = append(append(out, c.oldCards()...), c.smallOrders()...)
	for _, text := range append(c.coarse(), c.fits()...) {
		out = append(out, Note{Text: text, Warning: true})
	}
	for _, text := range differs {
		out = append(out, Note{Text: text + ".", Warning: true})
	}
	for _, text := range c.cautions() {
		out = append(out, Note{Text: text})
	}
	for _, cliff := range c.ladderCliffs() {
		out = append(out, Note{Text: cliff})
	}
	if c.result.Heuristic {
		out = append(out, Note{Text: "There are very many combinations of methods; a good one was chosen, not proved the cheapest."})
	}
	return out
}

// oldest is the age in days of the oldest blank prices in the job, on the day of the quote.
func (c *Counter) oldest() int {
	on, err := time.Parse(iso, c.draft.QuotedOn)
	if err != nil {
		return 0
	}
	most := 0
	for _, g := range c.job.Garments {
		if since, err := time.Parse(iso, g.Info.PricedOn); err == nil {
			most = max(most, int(on.Sub(since).Hours()/24))
		}
	}
	return most
}

// smallOrders names the suppliers that take no order as small as what this job buys from them.
func (c *Counter) smallOrders() (out []Note) {
	for _, s := range c.book.Suppliers {
		var bought []money.Amount
		for _, b := range c.result.Purchases.Blanks {
			if b.Supplier == s.Key {
				bought = append(bought, b.Value)
			}
		}
		for _, t := range c.result.Purchases.Transfers {
			if t.Supplier == s.Key {
				bought = append(bought, t.Value)
			}
		}
		if value := quote.Sum(bought...); len(bought) > 0 && value.Cmp(s.MinimumOrder) < 0 {
			out = append(out, Note{Text: fmt.Sprintf("%s takes orders from %s on; this job buys %s there.", s.Name, Amount(s.MinimumOrder), Amount(value)), Warning: true})
		}
	}
	return out
}

// oldCards names the cards in use whose prices are older than the shop allows.
func (c *Counter) oldCards() (out []Note) {
	for _, card := range c.job.RateCards {
		days := c.book.Shop.Stale(card.Info.PricedOn, c.draft.QuotedOn)
		if days > 0 && slices.ContainsFunc(c.result.Methods, func(m quote.Method) bool { return m.Card == card.ID }) {
			out = append(out, Note{Text: fmt.Sprintf("Prices of %s are %d days old (limit %d).", card.Name, days, c.book.Shop.StaleDays), Warning: true})
		}
	}
	return out
}

// cautions are what the catalog says to mind about the garments on the job.
func (c *Counter) cautions() []string {
	var out []string
	for _, g := range c.draft.Garments {
		s, ok := c.book.Styles[g.StyleID]
		if ok && s.Caution != "" {
			if text := s.Number + ": " + s.Caution; !contains(out, text) {
				out = append(out, text)
			}
		}
	}
	return out
}

func (c *Counter) ladderCliffs() []string {
	var out []string
	for _, cl := range c.result.Cliffs {
		out = append(out, fmt.Sprintf("%d pieces cost %s less in all than %d.", cl.To, Amount(cl.Saves), cl.From))
	}
	return out
}
