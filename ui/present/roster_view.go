package present

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
)

// Roster is the list of names and numbers as it is shown.
type Roster struct {
	Rows       []RosterRow
	Summary    string   // "12 people, 12 names, 11 numbers"
	Differs    []string // where roster and size run disagree
	Remarks    []string // doubled numbers, names that are narrowed
	Season     []string // against the last season's list, where there is one
	SeasonOf   string   // which that is
	Missing    []string // kinds of names and numbers that no placement prints yet
	HasNames   bool     // a placement prints the names
	HasNumbers bool
	Mend       []int // rows with a problem
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
	r := Roster{Rows: make([]RosterRow, len(d.Roster)), SeasonOf: c.lastOf}
	for _, kind := range Letterings() {
		has := slices.ContainsFunc(d.Placements, func(p catalog.DraftPlacement) bool { return p.Letters == kind })
		switch {
		case !has:
			r.Missing = append(r.Missing, kind)
		case kind == LettersName:
			r.HasNames = true
		default:
			r.HasNumbers = true
		}
	}
	look := c.rosterLook(r)
	printed, numbered := 0, 0
	for i, p := range d.Roster {
		r.Rows[i] = look.row(p)
		if r.Rows[i].Problem() != "" {
			r.Mend = append(r.Mend, i)
		}
		if strings.TrimSpace(p.Name) != "" {
			printed++
		}
		if p.Number != "" {
			numbered++
		}
	}
	r.Summary = peopleWords(len(d.Roster)) + ", " + figures(printed, "name") + ", " + figures(numbered, "number")
	if n := len(r.Mend); n > 0 {
		r.Summary += fmt.Sprintf(", %d to mend", n)
	}
	r.Differs = c.rosterDiffers(look.names)
	r.Remarks = append(c.narrowed(), smallLetters(d.Roster)...)
	r.Season = c.seasonWords()
	return r
}

func peopleWords(n int) string {
	if n == 1 {
		return "1 person"
	}
	return Grouped(strconv.Itoa(n)) + " people"
}

// rosterLook is what every row is looked at with.
type rosterLook struct {
	c       *Counter
	names   map[string]string // of garment lines, by key
	numbers map[[2]string]int // how many wear a number, by style
	left    map[[2]string]int // pieces of the size run not given to anybody yet, by garment and size
	run     map[[2]string]int // pieces of the size run
	prints  Roster
}

func (c *Counter) rosterLook(r Roster) *rosterLook {
	l := &rosterLook{c: c, names: map[string]string{}, numbers: map[[2]string]int{}, left: map[[2]string]int{}, run: map[[2]string]int{}, prints: r}
	for i, g := range c.draft.Garments {
		l.names[g.Key] = c.lineName(i)
		for _, s := range g.Sizes {
			l.run[[2]string{g.Key, s.Size}] = pieces(s.Qty)
			l.left[[2]string{g.Key, s.Size}] = pieces(s.Qty)
		}
	}
	for _, p := range c.draft.Roster {
		if p.Number != "" {
			l.numbers[[2]string{c.styleOf(p.Garment), p.Number}]++
		}
	}
	return l
}

// styleOf is what numbers must not double within: all colours of one style.
func (c *Counter) styleOf(key string) string {
	if g := garmentAt(&c.draft, key); g != nil && g.StyleID != 0 {
		return fmt.Sprint(g.StyleID)
	}
	return key
}

func (l *rosterLook) row(p catalog.DraftPerson) RosterRow {
	name := l.names[p.Garment]
	row := RosterRow{Cells: [RosterColumns]string{name, p.Size, p.Person, p.Name, p.Number}}
	if name == "" {
		row.Cells[RosterGarment] = p.Garment
	}
	row.Problems = [RosterColumns]string{
		RosterGarment: l.garment(p), RosterPerson: control(p.Person), RosterName: l.name(p.Name), RosterNumber: l.number(p),
	}
	if name != "" {
		row.Problems[RosterSize] = l.size(p)
	}
	return row
}

func (l *rosterLook) garment(p catalog.DraftPerson) string {
	switch {
	case p.Garment == "":
		return "which garment?"
	case l.names[p.Garment] == "":
		return "which garment? It is none of this job"
	}
	return ""
}

func (l *rosterLook) size(p catalog.DraftPerson) string {
	key := [2]string{p.Garment, p.Size}
	run, known := l.run[key]
	if !known {
		return "which size? " + l.names[p.Garment] + " has no such size"
	}
	if l.left[key]--; l.left[key] < 0 {
		return fmt.Sprintf("more people than pieces: the size run has %d in %s", run, p.Size)
	}
	return ""
}

func (l *rosterLook) name(text string) string {
	if l.prints.HasNames && strings.TrimSpace(text) == "" {
		return "no name: nothing is printed"
	}
	return unprintable(text)
}

func (l *rosterLook) number(p catalog.DraftPerson) string {
	if text := unprintable(p.Number); text != "" {
		return text
	}
	if n := l.numbers[[2]string{l.c.styleOf(p.Garment), p.Number}]; p.Number != "" && n > 1 {
		return fmt.Sprintf("number %s is given to %s", p.Number, number(n))
	}
	if l.prints.HasNumbers && p.Number == "" {
		return "no number: nothing is printed"
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
