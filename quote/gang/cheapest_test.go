package gang

import (
	"testing"

	"pgregory.net/rapid"
)

func TestCover_cheapestIsTheFirstOfItsBaskets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card := RollCard{W: 22, Gap: 1}
		for range rapid.IntRange(1, 5).Draw(t, "lengths") {
			card.Lengths = append(card.Lengths, RollLength{
				rapid.Int64Range(3, 60).Draw(t, "length"), rapid.Int64Range(0, 90).Draw(t, "each"),
			})
		}
		st := newStock(card)
		var blanks []blank
		var need []int
		for range rapid.IntRange(1, 4).Draw(t, "blanks") {
			w, h := rapid.Int64Range(1, 22).Draw(t, "w"), rapid.Int64Range(1, 40).Draw(t, "h")
			blanks = append(blanks, blank{w, h, rapid.Bool().Draw(t, "turn")})
			need = append(need, rapid.IntRange(1, 30).Draw(t, "need"))
		}
		c := newCover(st, st.measure(blanks), need)
		bs := c.baskets()
		_, want, ok := bs.next()
		if !ok {
			want = bs.least()
		}
		if got := c.cheapest(); got != want && (ok || got < want) {
			t.Fatalf("%d × %v on %+v: the cheapest basket costs %d, the first %d", need, blanks, card, got, want)
		}
	})
}
