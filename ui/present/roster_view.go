package present

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"

	"pressworth/catalog"
)

// Roster is the list of names and numbers as it is shown.
type Roster struct {
	Rows       []RosterRow
	Summary    string   // "12 people, 12 names, 11 numbers"
	Differs    []string // where roster and size run disagree
	Remarks    []string // doubled numbers, names that are narrowed
	HasNames   bool     // a placement prints the names
	HasNumbers bool
}

// RosterRow is one person.
type RosterRow struct {
	Cells    [RosterColumns]string
	Problems [RosterColumns]string
}

// Problem is the first problem of the row.
func (r RosterRow) Problem() string {
	for _, p := range r.Problems {
		if p != "" {
			return p
		}
	}
	return ""
}

func (c *Counter) roster() Roster {
	d := c.draft
	r := Roster{Rows: make([]RosterRow, len(d.Roster))}
	for _, p := range d.Placements {
		r.HasNames = r.HasNames || p.Letters == LettersName
		r.HasNumbers = r.HasNumbers || p.Letters == LettersNumber
	}
	if len(d.Roster) == 0 {
		return r
	}
	names := map[string]string{}
	for i, g := range d.Garments {
		names[g.Key] = c.lineName(i)
	}
	numbers := map[[2]string]int{}
	for _, p := range d.Roster {
		if p.Number != "" {
			numbers[[2]string{c.styleOf(p.Garment), p.Number}]++
		}
	}
	printed, numbered := 0, 0
	for i, p := range d.Roster {
		r.Rows[i] = c.rosterRow(p, names, numbers, r)
		if strings.TrimSpace(p.Name) != "" {
			printed++
		}
		if p.Number != "" {
			numbered++
		}
	}
	people := fmt.Sprintf("%d people", len(d.Roster))
	if len(d.Roster) == 1 {
		people = "1 person"
	}
	r.Summary = people + ", " + figures(printed, "name") + ", " + figures(numbered, "number")
	r.Differs = c.rosterDiffers(names)
	r.Remarks = c.narrowed()
	return r
}

// styleOf is what numbers must not double within: all colours of one style.
func (c *Counter) styleOf(key string) string {
	if g := garmentAt(&c.draft, key); g != nil && g.StyleID != 0 {
		return fmt.Sprint(g.StyleID)
	}
	return key
}

func (c *Counter) rosterRow(p catalog.DraftPerson, names map[string]string, numbers map[[2]string]int, r Roster) RosterRow {
	row := RosterRow{Cells: [RosterColumns]string{names[p.Garment], p.Size, p.Person, p.Name, p.Number}}
	if names[p.Garment] == "" {
		row.Cells[RosterGarment] = p.Garment
		row.Problems[RosterGarment] = "which garment? It is none of this job"
		if p.Garment == "" {
			row.Problems[RosterGarment] = "which garment?"
		}
	} else if !c.hasSizeOn(p.Garment, p.Size) {
		row.Problems[RosterSize] = "which size? " + names[p.Garment] + " has no such size"
	}
	if text := unprintable(p.Name); text != "" {
		row.Problems[RosterName] = text
	} else if r.HasNames && strings.TrimSpace(p.Name) == "" {
		row.Problems[RosterName] = "no name: nothing is printed"
	}
	if text := unprintable(p.Number); text != "" {
		row.Problems[RosterNumber] = text
	} else if n := numbers[[2]string{c.styleOf(p.Garment), p.Number}]; p.Number != "" && n > 1 {
		row.Problems[RosterNumber] = fmt.Sprintf("number %s is given to %s", p.Number, number(n))
	} else if r.HasNumbers && p.Number == "" {
		row.Problems[RosterNumber] = "no number: nothing is printed"
	}
	return row
}

func (c *Counter) hasSizeOn(key, size string) bool {
	g := garmentAt(&c.draft, key)
	if g == nil {
		return false
	}
	for _, s := range g.Sizes {
		if s.Size == size {
			return true
		}
	}
	return false
}

// unprintable says which character the lettering cannot take: control characters, and scripts written from right to left,
// which the lettering would set the wrong way round.
func unprintable(text string) string {
	for _, r := range text {
		switch {
		case unicode.IsControl(r), r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return "a character here cannot be printed: type it again"
		case unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana):
			return "written from right to left: order this name as artwork"
		}
	}
	if utf8.RuneCountInString(text) > 200 {
		return "too long: at most 200 characters"
	}
	return ""
}

// rosterDiffers says where the size run and the roster disagree.
func (c *Counter) rosterDiffers(names map[string]string) []string {
	var out []string
	counted := countRoster(c.draft)
	for _, g := range c.draft.Garments {
		if counted[g.Key] == nil {
			continue
		}
		for _, s := range g.Sizes {
			have, want := pieces(s.Qty), counted[g.Key][s.Size]
			if have != want {
				out = append(out, fmt.Sprintf("%s %s: %d in the size run, %d on the roster", names[g.Key], s.Size, have, want))
			}
		}
	}
	return out
}

// narrowed names the texts that are wider than their placement allows: they are printed narrower.
func (c *Counter) narrowed() []string {
	var out []string
	for _, p := range c.draft.Placements {
		width, ok1 := new(big.Rat).SetString(p.Width)
		char, ok2 := new(big.Rat).SetString(p.CharWidth)
		if p.Letters == "" || !ok1 || !ok2 || char.Sign() <= 0 {
			continue
		}
		q := new(big.Rat).Quo(width, char)
		room := new(big.Int).Quo(q.Num(), q.Denom()).Int64()
		var wide []string
		for _, t := range p.Texts {
			if int64(utf8.RuneCountInString(t.Text)) > room && !contains(wide, t.Text) {
				wide = append(wide, t.Text)
			}
		}
		if n := len(wide); n > 4 {
			wide = append(wide[:4:4], figures(n-4, "other"))
		}
		if len(wide) > 0 {
			out = append(out, fmt.Sprintf("Narrowed to fit %s in: %s.", p.Width, list(wide)))
		}
	}
	return out
}
