package present

// shortSpan is the most quantities a span has that is one of many changes in a row.
const shortSpan = 3

// calm puts stretches where the cards change at almost every quantity into one span that names them: where two cost
// almost the same, a speckled band would say nothing. The span is drawn as the card that has most of its quantities.
func calm(spans []BandSpan) []BandSpan {
	var out []BandSpan
	for i := 0; i < len(spans); i++ {
		end := i
		for end < len(spans) && spans[end].To-spans[end].From < shortSpan {
			end++
		}
		if end-i < 3 {
			out = append(out, spans[i])
			continue
		}
		out = append(out, together(spans[i:end]))
		i = end - 1
	}
	return out
}

// together is one span of several.
func together(spans []BandSpan) BandSpan {
	count := map[string]int{}
	most := spans[0]
	var names []string
	for _, s := range spans {
		if s.Card == "" {
			s.Card = "no card"
		}
		if count[s.Card] == 0 {
			names = append(names, lower(s.Card))
		}
		if count[s.Card] += s.To - s.From + 1; count[s.Card] > count[most.Card] {
			most = s
		}
	}
	most.From, most.To = spans[0].From, spans[len(spans)-1].To
	most.Card = names[0]
	for _, n := range names[1:] {
		most.Card += " or " + n
	}
	return most
}
