package store

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"strings"

	"pressworth/catalog"
)

// staged is a price file in memory, by style, as compact as a large one needs: every text is held once and named by its
// number.
type staged struct {
	texts   texts
	attrs   []attrs
	attrAt  map[attrs]int32
	styles  []stagedStyle
	styleAt map[string]int32 // by the number in small letters
	sales   map[cellAt]sale
	rows    int

	breaks map[breaksKey]int32
	last   [4]remembered // colour, hex, shade and size of the row before
}

// breaksKey is a row's prices as numbers, so that most need not be written out.
type breaksKey struct {
	piece, dozen, lot catalog.Myriad
	lotQty            int
}

type remembered struct {
	text string
	id   int32
}

// id is the number of a text that is mostly the same as in the row before.
func (s *staged) id(slot int, text string) int32 {
	l := &s.last[slot]
	if l.text != text {
		l.id = s.texts.id(text)
		l.text = s.texts.all[l.id]
	}
	return l.id
}

func (s *staged) price(r catalog.PriceRow) int32 {
	key := breaksKey{r.Piece, r.Dozen, r.Case, r.CaseQty}
	id, ok := s.breaks[key]
	if !ok {
		id = s.texts.id(r.Breaks())
		s.breaks[key] = id
	}
	return id
}

// attrs is what a row says about its style, as numbers of texts.
type attrs struct{ name, mill, category, fabric, weight, heat int32 }

type stagedStyle struct {
	number string
	key    string // the number in small letters, by which styles are told apart and sorted
	attrs  int32
	cells  []stagedCell
}

// stagedCell is one size in one colour.
type stagedCell struct {
	color, hex, shade, size, price int32
	line                           int32
}

type cellAt struct{ style, cell int32 }

type sale struct {
	price int32
	until int32
}

// texts holds every text once.
type texts struct {
	all  []string
	sums []uint64
	at   map[string]int32
}

func (t *texts) id(s string) int32 {
	if id, ok := t.at[s]; ok {
		return id
	}
	s = strings.Clone(s) // not a piece of a whole row
	sum := sha256.Sum256([]byte(s))
	id := int32(len(t.all))
	t.all, t.sums, t.at[s] = append(t.all, s), append(t.sums, binary.LittleEndian.Uint64(sum[:])), id
	return id
}

func newStaged() *staged {
	s := &staged{
		texts: texts{at: make(map[string]int32)}, attrAt: make(map[attrs]int32), styleAt: make(map[string]int32), sales: make(map[cellAt]sale),
		breaks: make(map[breaksKey]int32),
	}
	s.texts.id("") // number 0, which is what is remembered before the first row
	return s
}

// maxCells is more sizes in colours than any garment comes in.
const maxCells = 5000

// add takes a row; a second row for the same size in the same colour is refused unless it says the same.
func (s *staged) add(r catalog.PriceRow) (refused *catalog.Refused) {
	s.rows++
	at := s.style(r)
	style := &s.styles[at]
	c := stagedCell{
		color: s.id(0, r.Color), hex: s.id(1, r.Hex), shade: s.id(2, r.Shade), size: s.id(3, r.Size), price: s.price(r),
		line: int32(r.Line),
	}
	for _, old := range style.cells {
		if old.color == c.color && old.size == c.size {
			if old.price == c.price {
				return nil
			}
			return &catalog.Refused{Line: r.Line, Field: "price", Reason: fmt.Sprintf("%s %s %s stands on line %d with another price, %s",
				r.Style, r.Color, r.Size, old.line, s.texts.all[old.price])}
		}
	}
	if len(style.cells) == maxCells {
		return &catalog.Refused{Line: r.Line, Field: "style", Reason: fmt.Sprintf("%s has more than %d sizes and colours: is this the style's column?", r.Style, maxCells)}
	}
	if r.Sale > 0 {
		s.sales[cellAt{at, int32(len(style.cells))}] = sale{s.texts.id(r.Sale.String()), s.texts.id(r.SaleUntil)}
	}
	style.cells = append(style.cells, c)
	return nil
}

func (s *staged) style(r catalog.PriceRow) int32 {
	key := small(r.Style)
	if at, ok := s.styleAt[key]; ok {
		return at
	}
	key = strings.Clone(key)
	number := key
	if key != r.Style {
		number = strings.Clone(r.Style)
	}
	a := attrs{s.texts.id(r.Name), s.texts.id(r.Mill), s.texts.id(r.Category), s.texts.id(r.Fabric), s.texts.id(r.Weight), s.texts.id(r.HeatLimit)}
	id, ok := s.attrAt[a]
	if !ok {
		id = int32(len(s.attrs))
		s.attrs, s.attrAt[a] = append(s.attrs, a), id
	}
	at := int32(len(s.styles))
	s.styles, s.styleAt[key] = append(s.styles, stagedStyle{number: number, key: key, attrs: id}), at
	return at
}

// small writes a style number in small letters, as the file of the shop compares them: ASCII only.
func small(s string) string {
	for i := range len(s) {
		if s[i] >= 'A' && s[i] <= 'Z' {
			b := []byte(s)
			for ; i < len(b); i++ {
				if b[i] >= 'A' && b[i] <= 'Z' {
					b[i] += 'a' - 'A'
				}
			}
			return string(b)
		}
	}
	return s
}

// said is all that the file says about a style as one number, never 0.
func (s *staged) said(at int32) int64 {
	style := s.styles[at]
	h := uint64(14695981039346656037)
	mix := func(text int32) {
		h ^= s.texts.sums[text]
		h *= 1099511628211
		h ^= h >> 29
	}
	a := s.attrs[style.attrs]
	for _, text := range []int32{a.name, a.mill, a.category, a.fabric, a.weight, a.heat} {
		mix(text)
	}
	for i, c := range style.cells {
		for _, text := range [...]int32{c.color, c.hex, c.shade, c.size, c.price} {
			mix(text)
		}
		if x, ok := s.sales[cellAt{at, int32(i)}]; ok {
			mix(x.price)
			mix(x.until)
		}
	}
	if h == 0 {
		h = 1
	}
	return int64(h)
}

// spokenNumbers is how many style numbers of a list are learnt as words. All are found by their beginning.
const spokenNumbers = 5000

// spoken are the texts that styles are found by, each once. Of the numbers only those with a word in them count.
func (s *staged) spoken(styles []int32) []string {
	var out []string
	numbers := 0
	seen := make([]bool, len(s.texts.all))
	say := func(ids ...int32) {
		for _, id := range ids {
			if !seen[id] {
				seen[id] = true
				out = append(out, s.texts.all[id])
			}
		}
	}
	for _, at := range styles {
		x := s.styles[at]
		a := s.attrs[x.attrs]
		say(a.name, a.category, a.mill)
		for _, c := range x.cells {
			say(c.color)
		}
		if hasLetters(x.number) && numbers < spokenNumbers {
			numbers++
			out = append(out, x.number)
		}
	}
	return out
}

// hasLetters tells whether four letters stand together in a style's number.
func hasLetters(number string) bool {
	run := 0
	for i := range len(number) {
		if c := number[i] | 0x20; c >= 'a' && c <= 'z' || number[i] >= 0x80 {
			run++
		} else if number[i] != '-' && number[i] != '/' && number[i] != '.' {
			run = 0
		}
		if run >= 4 {
			return true
		}
	}
	return false
}
