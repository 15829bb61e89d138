package present

import (
	"slices"
	"strconv"

	"pressworth/catalog"
)

// PastRosters is what a Shop may know beside: the rosters of a customer's earlier quotes, the latest first.
type PastRosters interface {
	PastRosters(customer catalog.DraftCustomer, but int64) []catalog.PastRoster
}

// EarlierRosters are those of the customer's other quotes.
func (c *Counter) EarlierRosters() []catalog.PastRoster {
	known, ok := c.shop.(PastRosters)
	if !ok || c.draft.Customer.Name == "" {
		return nil
	}
	return known.PastRosters(c.draft.Customer, c.draft.ID)
}

// CompareWith holds the roster against that of an earlier quote.
func (c *Counter) CompareWith(r catalog.PastRoster) {
	c.last, c.lastOf = r.People, "quote "+r.Number
	c.show()
}

// CompareWithFile holds the roster against a list from a file.
func (c *Counter) CompareWithFile(name string, rows [][]string) {
	guess := guessColumns(rows)
	c.last, c.lastOf = nil, name
	for _, row := range guess.rows {
		c.last = append(c.last, c.person(c.draft, guess, row))
	}
	c.show()
}

// CompareNoMore puts the last season's list away.
func (c *Counter) CompareNoMore() {
	c.last, c.lastOf = nil, ""
	c.show()
}

// TakeLastRoster puts everybody of the last season's list on the roster who is not there yet; on garments of this job where
// they were on others.
func (c *Counter) TakeLastRoster() {
	gone := catalog.Compare(c.last, c.draft.Roster).Gone
	c.editRoster("", func(d *catalog.Draft) {
		for _, p := range gone {
			if garmentAt(d, p.Garment) == nil {
				p.Garment = c.onlyGarment(*d)
			}
			p.Size = c.sizeOn(*d, p.Garment, p.Size)
			d.Roster = append(d.Roster, p)
		}
	})
}

// seasonWords say what is different from the last season's list.
func (c *Counter) seasonWords() []string {
	if c.lastOf == "" {
		return nil
	}
	s := catalog.Compare(c.last, c.draft.Roster)
	var out []string
	say := func(head string, words []string) {
		if len(words) > 0 {
			out = append(out, head+": "+list(atMost(12, words))+".")
		}
	}
	say("New", people(s.New))
	say("Size changed", changes(s.Resized))
	say("Number changed", changes(s.Numbered))
	say("Not on the list any more", people(s.Gone))
	say("Numbers free again", spans(s.Left))
	say("All free numbers", spans(s.Free))
	return out
}

func people(of []catalog.DraftPerson) (words []string) {
	for _, p := range of {
		words = append(words, catalog.Who(p))
	}
	return words
}

func changes(of []catalog.Change) (words []string) {
	for _, x := range of {
		words = append(words, x.Who+" "+known(x.Was)+" → "+known(x.Now))
	}
	return words
}

func known(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// atMost keeps a list to n words and says how many more there are.
func atMost(n int, words []string) []string {
	if len(words) <= n {
		return words
	}
	return append(slices.Clone(words[:n]), figures(len(words)-n, "other"))
}

// spans writes numbers in their order, neighbours as one: 3, 7–9.
func spans(of []int) (words []string) {
	for i := 0; i < len(of); i++ {
		from := of[i]
		for i+1 < len(of) && of[i+1] == of[i]+1 {
			i++
		}
		text := strconv.Itoa(from)
		if of[i] > from {
			text += "–" + strconv.Itoa(of[i])
		}
		words = append(words, text)
	}
	return words
}
