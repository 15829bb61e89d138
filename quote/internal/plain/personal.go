package plain

import (
	"math/big"
	"slices"
	"unicode/utf8"

	"pressworth/quote"
)

// lettering is how many texts of one length are on each garment line.
type lettering struct {
	characters int
	on         map[int]int // by garment line
}

func (l lettering) count() (n int) {
	for _, k := range l.on {
		n += k
	}
	return n
}

// lettered are the texts of a placement by length, short ones first. At another total than the job's own there are as many
// in proportion, rounded up; lines without pieces take none.
func (s *state) lettered(p int) []lettering {
	if s.letters == nil {
		s.letters = map[int][]lettering{}
	}
	if known, ok := s.letters[p]; ok {
		return known
	}
	s.letters[p] = s.countLetters(p)
	return s.letters[p]
}

func (s *state) countLetters(p int) []lettering {
	texts := s.Placements[p].Texts
	var lengths []int
	for _, t := range texts {
		if n := utf8.RuneCountInString(t.Text); !slices.Contains(lengths, n) {
			lengths = append(lengths, n)
		}
	}
	slices.Sort(lengths)
	var weights []*big.Rat
	any := false
	for _, n := range lengths {
		for g := range s.Garments {
			w := 0
			for _, t := range texts {
				if utf8.RuneCountInString(t.Text) == n && t.Garment == s.Garments[g].ID && s.pieces(g) > 0 {
					w++
				}
			}
			any = any || w > 0
			weights = append(weights, whole(w))
		}
	}
	if !any {
		return nil
	}
	total := ceil(div(whole(len(texts)*s.all()), whole(s.ownPieces())))
	parts := share(total, weights, 0)
	var all []lettering
	for _, n := range lengths {
		l := lettering{n, map[int]int{}}
		for g := range s.Garments {
			l.on[g] = toInt(parts[0])
			parts = parts[1:]
		}
		if l.count() > 0 {
			all = append(all, l)
		}
	}
	return all
}

// ownPieces is the job's own total.
func (s *state) ownPieces() (n int) {
	for _, line := range quantities(s.Job) {
		for _, q := range line {
			n += q
		}
	}
	return n
}

// allTexts counts the names and numbers of a placement.
func (s *state) allTexts(p int) (n int) {
	for _, l := range s.lettered(p) {
		n += l.count()
	}
	return n
}

// texts counts the names and numbers of a placement on a line.
func (s *state) texts(p, g int) (n int) {
	for _, l := range s.lettered(p) {
		n += l.on[g]
	}
	return n
}

func (s *state) personalItems(p int) []item {
	pl := s.Placements[p]
	var items []item
	for _, l := range s.lettered(p) {
		w := least(pl.Width.Rat(), mul(whole(l.characters), pl.CharWidth.Rat()))
		items = append(items, item{
			Item: Item{
				Placement: p, Characters: l.characters, W: w, H: pl.Height.Rat(), Turn: !pl.NoTurn, Inks: pl.Inks, Count: pl.InkCount,
				Need: l.count(),
			},
			pieces: l.count(), letters: &l,
		})
	}
	return items
}

// textEach is one text on an area or piece card: the break goes by the number of texts of the placement.
func (s *state) textEach(card quote.RateCard, it item) (*big.Rat, bool) {
	n := s.allTexts(it.Placement)
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
		each = mul(whole(it.Characters), each)
	}
	return most(card.MinimumEach.Rat(), each), ok
}

// textCosts are what the texts of one placement come to, length by length: neither spares nor a minimum nor buying up. The
// sum, the setup in it, is rounded once; a length has what the rounded sum grows by with it.
func (s *state) textCosts(card quote.RateCard, items []item) ([]*big.Rat, bool) {
	sum := s.setup(card, items[0].Placement)
	told := zero()
	var costs []*big.Rat
	for _, it := range items {
		each, ok := s.textEach(card, it)
		if !ok {
			return nil, false
		}
		sum = add(sum, mul(whole(it.Need), each))
		costs = append(costs, sub(s.cents(sum), told))
		told = s.cents(sum)
	}
	return costs, true
}

// setup of a placement on an area or piece card.
func (s *state) setup(card quote.RateCard, p int) *big.Rat {
	return add(card.SetupPerDesign.Rat(), mul(card.SetupPerInk.Rat(), whole(s.inks(p))))
}

func (s *state) personalRevenue(p int) *big.Rat {
	pl := s.Placements[p]
	if !pl.Personal {
		return zero()
	}
	n := 0
	for _, l := range s.lettered(p) {
		if pl.ChargeBy == "character" {
			n += l.count() * l.characters
		} else {
			n += l.count()
		}
	}
	return s.cents(mul(whole(n), pl.ChargeEach.Rat()))
}
