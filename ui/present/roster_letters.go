package present

import (
	"math/big"
	"slices"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// What a placement of names and numbers prints.
const (
	LettersName   = "name"
	LettersNumber = "number"
	LettersFront  = "front number"
	LettersSleeve = "sleeve number"
)

// Letterings are the kinds of names and numbers, in the order they are offered.
func Letterings() []string { return []string{LettersName, LettersNumber, LettersFront, LettersSleeve} }

// positions say where each kind goes: common practice, no source.
var positions = map[string]string{
	LettersName: "back, across the shoulders", LettersNumber: "back, below the name",
	LettersFront: "front, left chest", LettersSleeve: "left sleeve",
}

// Ages of the people on a roster, by which heights differ.
const (
	adult = "adult"
	youth = "youth"
)

// AddLetters puts names or numbers on the job: a row of artwork whose texts come from the roster, or one for adults and one
// for youth where both are in the job. Heights are the shop's. It returns the key of the first row.
func (c *Counter) AddLetters(letters string) (first string) {
	c.edit("", func(d *catalog.Draft) {
		ages := c.ages(*d)
		for _, age := range ages {
			p := c.lettersFor(*d, letters, age)
			if len(ages) > 1 {
				p.Ages, p.Name = age, p.Name+", "+age
			}
			if first == "" {
				first = p.Key
			}
			d.Placements = append(d.Placements, p)
		}
	})
	return first
}

// lettersFor is a row of names or numbers for an age, as high as the shop has it.
func (c *Counter) lettersFor(d catalog.Draft, letters, age string) catalog.DraftPlacement {
	p := catalog.DraftPlacement{
		Key: freshKey("p", placementKeys(d)), Name: strings.ToUpper(letters[:1]) + letters[1:], Personal: true, Letters: letters,
		Inks: "1", On: c.usualGarments(d, letters), Position: positions[letters],
	}
	set := c.book.Lettering
	if len(set.Heights) == 0 {
		set = catalog.DefaultLettering()
	}
	h, ok := set.Height(letters, age)
	if !ok {
		h, _ = catalog.DefaultLettering().Height(letters, age)
	}
	p.Width, p.Height = h.Widest.String(), h.Height.String()
	p.CharWidth = characterWidth(letters, h.Height.Rat())
	return p
}

// characterWidth of block letters: seven tenths of their height, digits six tenths, on quarters of an inch at most: common
// practice, no source; editable.
func characterWidth(letters string, height *big.Rat) string {
	share := big.NewRat(3, 5)
	if letters == LettersName {
		share = big.NewRat(7, 10)
	}
	text := new(big.Rat).Mul(height, share).FloatString(2)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// ages that the job's pieces and its roster are of, adults first; where nobody is known yet, of its garments.
func (c *Counter) ages(d catalog.Draft) []string {
	found := map[string]bool{}
	for _, p := range d.Roster {
		found[c.ageOf(d, p.Garment, p.Size)] = true
	}
	for _, g := range d.Garments {
		for _, s := range g.Sizes {
			if pieces(s.Qty) > 0 {
				found[c.ageOf(d, g.Key, s.Size)] = true
			}
		}
	}
	if len(found) == 0 {
		return []string{adult}
	}
	return slices.DeleteFunc([]string{adult, youth}, func(age string) bool { return !found[age] })
}

// ageOf is for whom a garment is: by its size, or by what it is called.
func (c *Counter) ageOf(d catalog.Draft, key, size string) string {
	if sizes.Child(size) {
		return youth
	}
	if g := garmentAt(&d, key); g != nil {
		style := c.book.Styles[g.StyleID]
		if Matches(style.Category+" "+style.Name+" "+g.Name, youth) {
			return youth
		}
	}
	return adult
}

// SetLettering takes the width of a character and what is charged for each text of a row of names and numbers.
func (c *Counter) SetLettering(key, charWidth, chargeEach string) {
	c.placement("lettering "+key, key, func(p *catalog.DraftPlacement) {
		p.CharWidth, p.ChargeEach = strings.TrimSpace(charWidth), strings.TrimSpace(chargeEach)
	})
}

// ChargeByCharacter says whether the charge of a row of names and numbers is for each character, or for each text.
func (c *Counter) ChargeByCharacter(key string, by bool) {
	c.placement("", key, func(p *catalog.DraftPlacement) {
		if p.ChargeBy = ""; by {
			p.ChargeBy = "character"
		}
	})
}

// ChargeTaxed says whether what is charged for a row of names and numbers bears tax.
func (c *Counter) ChargeTaxed(key string, taxed bool) {
	c.placement("", key, func(p *catalog.DraftPlacement) { p.Untaxed = !taxed })
}

// dressTexts gives every row of names and numbers its texts, in the order of the roster.
func (c *Counter) dressTexts(d *catalog.Draft) {
	for i := range d.Placements {
		p := &d.Placements[i]
		if p.Letters == "" {
			continue
		}
		p.Texts = nil
		for row, person := range d.Roster {
			text := strings.TrimSpace(person.Name)
			if p.Letters != LettersName {
				text = person.Number
			}
			on := person.Garment != "" && (p.On == nil || contains(p.On, person.Garment))
			if text != "" && on && (p.Ages == "" || p.Ages == c.ageOf(*d, person.Garment, person.Size)) {
				p.Texts = append(p.Texts, catalog.DraftText{Garment: person.Garment, Size: person.Size, Text: text, Row: row + 1})
			}
		}
	}
}
