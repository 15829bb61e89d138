package quote_test

import (
	"testing"

	"pressworth/quote"
)

// NIST SP 811, appendix B.8 (second hand): an inch is 25.4 mm and a square inch 6.4516 cm², both exactly. A print that is
// given in millimetres costs what the same print costs in inches, to the last place of the rate.
func TestArea_nist811(t *testing.T) {
	film := card(quote.RateCard{ID: "film", Kind: quote.AreaCard, Rates: []quote.Break{{From: 1, Each: usd("123.45")}}})
	for _, c := range []struct{ unit, w, h, want string }{
		{"in", "1", "1", "123.45"},
		{"mm", "25.4", "25.4", "123.45"},
		{"mm", "645.16", "1", "123.45"},
		{"mm", "254", "127", "6172.50"},
		{"mm", "25.4", "25.39", "123.40"}, // 123.45 × 25.39 / 25.4 = 123.4014
	} {
		r := priced(t, pieces(1, "0", film, func(j *quote.Job) {
			j.Unit, j.Placements[0].Width, j.Placements[0].Height = c.unit, num(c.w), num(c.h)
		}))
		same(t, c.w+" × "+c.h+" "+c.unit, costLine(r, quote.KindTransfers), c.want)
	}
}
