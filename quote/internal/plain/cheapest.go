package plain

import (
	"strconv"

	"pressworth/quote"
)

// Cheapest is the card of a placement at every quantity from 1 to upto, "" where none serves: first for its own inks,
// then for 1 to 6 inks and for full colour. The placement's own method is left open.
func Cheapest(job quote.Job, id string, upto int, planner func(quote.Job) Planner) map[string][]string {
	kinds := map[string]func(p *quote.Placement){"own": func(*quote.Placement) {}}
	for n := 1; n <= 6; n++ {
		kinds[strconv.Itoa(n)] = func(p *quote.Placement) { p.Inks, p.InkCount, p.FullColor = nil, n, false }
	}
	kinds["full"] = func(p *quote.Placement) { p.Inks, p.InkCount, p.FullColor = nil, 0, true }
	cards := map[string][]string{}
	for name, change := range kinds {
		other := job
		other.Placements = append([]quote.Placement{}, job.Placements...)
		for i := range other.Placements {
			if p := &other.Placements[i]; p.ID == id {
				p.Method = ""
				change(p)
			}
		}
		j := &work{Job: other, planner: planner(other)}
		for q := 1; q <= upto; q++ {
			card := ""
			if p, err := j.at(scaled(other, q), false); err == nil {
				card = p.methods()[id]
			}
			cards[name] = append(cards[name], card)
		}
	}
	return cards
}
