package present

import (
	"slices"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// Columns of the roster.
const (
	RosterGarment = iota
	RosterSize
	RosterPerson
	RosterName
	RosterNumber
	RosterColumns
)

// SetRoster takes what was typed into one cell; a row past the last is a new one.
func (c *Counter) SetRoster(row, column int, text string) {
	c.editRoster("roster "+quantity(row+1)+quantity(column+1), func(d *catalog.Draft) {
		for len(d.Roster) <= row {
			d.Roster = append(d.Roster, catalog.DraftPerson{Garment: c.onlyGarment(*d)})
		}
		c.setCell(d, &d.Roster[row], column, text)
	})
}

// RemovePerson takes a row off the roster.
func (c *Counter) RemovePerson(row int) {
	c.editRoster("", func(d *catalog.Draft) {
		if row < len(d.Roster) {
			d.Roster = slices.Delete(d.Roster, row, row+1)
		}
	})
}

// PasteRoster puts rows of a spreadsheet into the roster, from a cell on, and says what was taken from which column. Rows
// with a head, or pasted into the first cell of an empty roster, have their columns guessed.
func (c *Counter) PasteRoster(row, column int, block [][]string) (said string) {
	guess := guessColumns(block)
	c.editRoster("", func(d *catalog.Draft) {
		if guess.head || len(d.Roster) == 0 || column == 0 && row >= len(d.Roster) {
			for _, line := range guess.rows {
				d.Roster = append(d.Roster, c.person(*d, guess, line))
			}
			said = guess.words()
			return
		}
		for i, line := range block {
			for len(d.Roster) <= row+i {
				d.Roster = append(d.Roster, catalog.DraftPerson{Garment: c.onlyGarment(*d)})
			}
			for k, text := range line {
				if column+k < RosterColumns {
					c.setCell(d, &d.Roster[row+i], column+k, strings.TrimSpace(text))
				}
			}
		}
	})
	return said
}

// SortRoster orders the roster by garment and size, everybody keeping their name and number.
func (c *Counter) SortRoster() {
	c.editRoster("", func(d *catalog.Draft) {
		order := map[string]int{}
		for i, g := range d.Garments {
			order[g.Key] = i
		}
		slices.SortStableFunc(d.Roster, func(a, b catalog.DraftPerson) int {
			if x := order[a.Garment] - order[b.Garment]; x != 0 {
				return x
			}
			switch {
			case sizes.Less(a.Size, b.Size):
				return -1
			case sizes.Less(b.Size, a.Size):
				return 1
			}
			return 0
		})
	})
}

// CapitalRoster writes every name in capitals, accents kept.
func (c *Counter) CapitalRoster() {
	c.edit("", func(d *catalog.Draft) {
		for i := range d.Roster {
			d.Roster[i].Name = strings.ToUpper(d.Roster[i].Name)
		}
	})
}

func (c *Counter) setCell(d *catalog.Draft, p *catalog.DraftPerson, column int, text string) {
	switch column {
	case RosterGarment:
		p.Garment = c.garmentKey(*d, text)
	case RosterSize:
		p.Size = c.sizeOn(*d, p.Garment, text)
	case RosterPerson:
		p.Person = text
	case RosterName:
		p.Name = text
	case RosterNumber:
		p.Number = strings.TrimSpace(text)
	}
}

// onlyGarment is the garment a new row is on where the job has one only.
func (c *Counter) onlyGarment(d catalog.Draft) string {
	if len(d.Garments) == 1 {
		return d.Garments[0].Key
	}
	if n := len(d.Roster); n > 0 {
		return d.Roster[n-1].Garment
	}
	return ""
}

// garmentKey finds the line a text means: by key, or by words of its style and colour. What is not found stays as typed.
func (c *Counter) garmentKey(d catalog.Draft, text string) string {
	found := ""
	for i, g := range d.Garments {
		if g.Key == text || strings.EqualFold(c.lineName(i), text) {
			return g.Key
		}
		name := strings.NewReplacer(",", " ", "-", " ").Replace(c.lineName(i) + " " + c.book.Styles[g.StyleID].Number)
		if text != "" && Matches(name, strings.NewReplacer(",", " ", "-", " ").Replace(text)) {
			if found != "" {
				return text
			}
			found = g.Key
		}
	}
	if found == "" {
		return text
	}
	return found
}

// sizeOn is a size in the spelling its garment has.
func (c *Counter) sizeOn(d catalog.Draft, garment, text string) string {
	if g := garmentAt(&d, garment); g != nil {
		for _, s := range g.Sizes {
			if sizes.Normal(s.Size) == sizes.Normal(text) {
				return s.Size
			}
		}
	}
	return strings.ToUpper(strings.TrimSpace(text))
}

// countRoster counts the people by garment and size.
func countRoster(d catalog.Draft) map[string]map[string]int {
	out := map[string]map[string]int{}
	for _, p := range d.Roster {
		if p.Garment == "" || p.Size == "" {
			continue
		}
		if out[p.Garment] == nil {
			out[p.Garment] = map[string]int{}
		}
		out[p.Garment][p.Size]++
	}
	return out
}
