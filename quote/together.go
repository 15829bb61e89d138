package quote

import (
	"fmt"
	"strconv"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

// Shared is a group of jobs that would save something by riding on one another's sheets.
type Shared struct {
	Card     string         // id of the sheet card, in the first of the jobs
	Jobs     []int          // indices, ascending
	Separate money.Amount   // what their own plans on the card cost
	Together money.Amount   // what one plan for all of them costs
	Saves    money.Amount   // the difference
	Parts    []money.Amount // of Together, by Jobs: in proportion to their own plans, so that no job pays more
	Sheets   int            // bought for all of them
}

// Together finds which of several jobs could share sheets: placements that each job makes on the same sheet card (same
// sizes and prices), what that saves over separate sheets, and how the cost of the shared ones is split. The jobs'
// own prices stay as they are. Jobs that cannot be worked out, or are in another currency or unit than the first, take
// no part. The error, if any, is Problems.
func Together(jobs []Job) (shared []Shared, err error) {
	merged, results := mergeJobs(jobs)
	if len(merged.Garments) == 0 {
		return nil, nil
	}
	err = NewMemory().served(merged, func(m *model) Problems {
		shared = (&togetherness{m: m, results: results}).find()
		return nil
	})
	return shared, err
}

// mergeJobs makes one job of all, every id marked with its job's index, so that their lengths and prices come in one
// scale. The results are by job, those of jobs that take no part without plans.
func mergeJobs(jobs []Job) (merged Job, results []Result) {
	first := true
	results = make([]Result, len(jobs))
	for j, job := range jobs {
		r, err := Price(job)
		if err != nil {
			continue
		}
		if first {
			merged, first = job, false
			merged.Garments, merged.Placements, merged.RateCards, merged.Suppliers, merged.Extras, merged.Frozen = nil, nil, nil, nil, nil, nil
			merged.Ladder = nil
		} else if job.Currency != merged.Currency || job.Unit != merged.Unit {
			continue
		}
		results[j] = r
		mark := func(id string) string { return strconv.Itoa(j) + " " + id }
		for _, g := range job.Garments {
			g.ID, g.Group, g.Supplier = mark(g.ID), "", ""
			merged.Garments = append(merged.Garments, g)
		}
		for _, p := range job.Placements {
			p.ID, p.Method = mark(p.ID), ""
			p.On = markedOn(job, p.On, mark)
			p.Texts = nil
			merged.Placements = append(merged.Placements, p)
		}
		for _, c := range job.RateCards {
			c.ID, c.Supplier = mark(c.ID), ""
			merged.RateCards = append(merged.RateCards, c)
		}
	}
	return merged, results
}

// markedOn are the marked ids of the garments that a placement is on.
func markedOn(job Job, on []string, mark func(string) string) []string {
	out := []string{}
	for _, id := range garmentIDs(&job) {
		if isOn(on, id) {
			out = append(out, mark(id))
		}
	}
	return out
}

// togetherness looks for shared sheets in a merged job.
type togetherness struct {
	m       *model
	results []Result // by job
}

// find goes through the sheet cards of the jobs, those with the same terms together.
func (t *togetherness) find() (out []Shared) {
	cards := map[string]string{} // terms: the id of the first card that has them
	var order []string
	needs := map[string]map[int][]gang.Need{} // by terms and job
	for j := range t.results {
		for _, n := range t.needsOf(j) {
			if needs[n.terms] == nil {
				needs[n.terms], cards[n.terms] = map[int][]gang.Need{}, n.card
				order = append(order, n.terms)
			}
			needs[n.terms][j] = append(needs[n.terms][j], n.need)
		}
	}
	for _, terms := range order {
		if len(needs[terms]) > 1 {
			out = append(out, t.share(cards[terms], needs[terms])...)
		}
	}
	return out
}

// termedNeed is a need of one item on a card with its terms.
type termedNeed struct {
	terms, card string
	need        gang.Need
}

// needsOf are the copies that a job has printed on sheet cards, by its own methods.
func (t *togetherness) needsOf(j int) (out []termedNeed) {
	r := t.results[j]
	for _, p := range r.Plans {
		c := t.cardOf(j, p.Card)
		if c < 0 || t.m.cards[c].sheets == nil {
			continue
		}
		for _, n := range r.needs(p) {
			item := t.m.itemOf(strconv.Itoa(j)+" "+n.placement, n.variant, "")
			if item >= 0 {
				out = append(out, termedNeed{fmt.Sprint(t.m.cards[c].sheetOf), p.Card, gang.Need{Item: item, Copies: n.copies}})
			}
		}
	}
	return out
}

func (t *togetherness) cardOf(j int, id string) int {
	for c := range t.m.cards {
		if t.m.cards[c].ID == strconv.Itoa(j)+" "+id {
			return c
		}
	}
	return -1
}

// copiesOf is a number of copies of a placement at one of its sizes.
type copiesOf struct {
	placement string
	variant   int
	copies    int
}

// needs are the copies that a plan prints, less those left over.
func (r Result) needs(p Plan) (out []copiesOf) {
	add := func(placement string, variant, copies int) {
		for i := range out {
			if out[i].placement == placement && out[i].variant == variant {
				out[i].copies += copies
				return
			}
		}
		out = append(out, copiesOf{placement, variant, copies})
	}
	for _, run := range p.Runs {
		for _, x := range run.Pieces {
			add(x.Placement, x.Variant, run.Sheets)
		}
	}
	for _, l := range r.Leftovers {
		for i := range out {
			if out[i].placement == l.Placement && out[i].variant == l.Variant {
				out[i].copies -= l.Copies
			}
		}
	}
	return out
}

// share asks the planner what the jobs save on one card.
func (t *togetherness) share(card string, needs map[int][]gang.Need) (out []Shared) {
	var index []int
	var of [][]gang.Need
	for j := range t.results {
		if n := needs[j]; len(n) > 0 {
			index, of = append(index, j), append(of, n)
		}
	}
	planner := t.m.cards[t.cardOf(index[0], card)].sheets
	s, err := planner.Together(of)
	if err != nil {
		return nil
	}
	for _, g := range s.Groups {
		x := Shared{
			Card: card, Together: t.amount(g.Plan.Cost), Saves: t.amount(g.Saves), Separate: t.amount(g.Plan.Cost + g.Saves),
		}
		for k, j := range g.Jobs {
			x.Jobs, x.Parts = append(x.Jobs, index[j]), append(x.Parts, t.amount(g.Parts[k]))
		}
		for _, r := range g.Plan.Runs {
			x.Sheets += r.Sheets
		}
		out = append(out, x)
	}
	return out
}

// amount is an amount of the planner's.
func (t *togetherness) amount(p gang.Price) money.Amount { return t.m.amount(t.m.roundPrice(p)) }
