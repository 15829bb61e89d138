package plain

import (
	"math/big"
	"unicode/utf8"

	"pressworth/quote"
)

// texts counts the names and numbers of a placement on a line.
func (s *state) texts(p, g int) int {
	n := 0
	for _, t := range s.Placements[p].Texts {
		if t.Garment == s.Garments[g].ID {
			n++
		}
	}
	return n
}

func (s *state) personalItems(p int) []item {
	pl := s.Placements[p]
	var items []item
	for i := range pl.Texts {
		t := &pl.Texts[i]
		w := least(pl.Width.Rat(), mul(characters(t), pl.CharWidth.Rat()))
		items = append(items, item{
			Item: Item{Placement: p, W: w, H: pl.Height.Rat(), Turn: !pl.NoTurn, Inks: pl.Inks, Count: pl.InkCount, Need: 1},
			uses: func(string) bool { return true }, pieces: 1, text: t,
		})
	}
	return items
}

func characters(t *quote.Text) *big.Rat { return whole(utf8.RuneCountInString(t.Text)) }

// textItem is one text on an area or piece card: neither spares nor a minimum nor buying up; the break goes by the number
// of texts.
func (s *state) textItem(card quote.RateCard, it item) (*big.Rat, bool) {
	n := len(s.Placements[it.Placement].Texts)
	if card.Kind == quote.AreaCard {
		b, ok := inForce(card.Rates, n)
		return most(card.MinimumEach.Rat(), s.cents(mul(s.squareInches(it), b.Each.Rat()))), ok
	}
	breaks, ok := s.pieceRow(card, it)
	if !ok {
		return nil, false
	}
	b, ok := inForce(breaks, n)
	each := b.Each.Rat()
	if card.By == "character" {
		each = mul(characters(it.text), each)
	}
	return most(card.MinimumEach.Rat(), each), ok
}

func (s *state) personalRevenue(p int) *big.Rat {
	pl := s.Placements[p]
	if !pl.Personal {
		return zero()
	}
	return s.cents(mul(whole(len(pl.Texts)), pl.ChargeEach.Rat()))
}
