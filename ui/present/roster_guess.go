package present

import (
	"regexp"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// guessed are rows of a spreadsheet with what each column holds; -1: there is none.
type guessed struct {
	at   [RosterColumns]int
	head bool // the first row named the columns
	rows [][]string
}

// headWords name the columns in the heads of lists.
var headWords = [RosterColumns][]string{
	RosterGarment: {"garment", "style", "shirt", "item", "product"},
	RosterSize:    {"size"},
	RosterPerson:  {"person", "player", "member", "who", "first", "full name"},
	RosterName:    {"name", "print", "back", "surname", "last", "text"},
	RosterNumber:  {"number", "no", "no.", "nr", "#", "num"},
}

var isNumber = regexp.MustCompile(`^[0-9]{1,3}$`)

// guessColumns finds out which column is which, by a head if there is one, else by what most cells look like.
func guessColumns(block [][]string) guessed {
	g := guessed{rows: block}
	for i := range g.at {
		g.at[i] = -1
	}
	if len(block) > 0 && g.byHead(block[0]) {
		g.head, g.rows = true, block[1:]
		return g
	}
	g.byContent()
	return g
}

func (g *guessed) byHead(head []string) bool {
	for k, cell := range head {
		cell = strings.ToLower(strings.TrimSpace(cell))
		for column, words := range headWords {
			for _, w := range words {
				if g.at[column] < 0 && (cell == w || strings.HasPrefix(cell, w+" ") || strings.HasSuffix(cell, " "+w)) && !g.taken(k) {
					g.at[column] = k
				}
			}
		}
	}
	return g.at[RosterSize] >= 0 && (g.at[RosterName] >= 0 || g.at[RosterNumber] >= 0 || g.at[RosterPerson] >= 0)
}

func (g *guessed) taken(k int) bool {
	for _, at := range g.at {
		if at == k {
			return true
		}
	}
	return false
}

// byContent takes the column of sizes, the column of numbers, and of the rest the last as the name that is printed, the
// one before it as the person.
func (g *guessed) byContent() {
	for i := range g.at {
		g.at[i] = -1
	}
	wide := 0
	for _, row := range g.rows {
		wide = max(wide, len(row))
	}
	var texts []int
	for k := range wide {
		switch {
		case g.at[RosterSize] < 0 && g.most(k, func(s string) bool { return sizes.Known(sizes.Normal(s)) && !isNumber.MatchString(s) }):
			g.at[RosterSize] = k
		case g.at[RosterNumber] < 0 && g.most(k, isNumber.MatchString):
			g.at[RosterNumber] = k
		case g.most(k, func(s string) bool { return s != "" }):
			texts = append(texts, k)
		}
	}
	if n := len(texts); n > 0 {
		g.at[RosterName] = texts[n-1]
		if n > 1 {
			g.at[RosterPerson] = texts[n-2]
		}
		if n > 2 {
			g.at[RosterGarment] = texts[0]
		}
	}
}

// most says whether at least two thirds of a column's filled cells are of a kind.
func (g *guessed) most(k int, kind func(string) bool) bool {
	n, hits := 0, 0
	for _, row := range g.rows {
		if k < len(row) && strings.TrimSpace(row[k]) != "" {
			n++
			if kind(strings.TrimSpace(row[k])) {
				hits++
			}
		}
	}
	return n > 0 && hits*3 >= n*2
}

// person makes a row of the roster of a row of the spreadsheet.
func (c *Counter) person(d catalog.Draft, g guessed, row []string) catalog.DraftPerson {
	p := catalog.DraftPerson{Garment: c.onlyGarment(d)}
	for column, k := range g.at {
		if k >= 0 && k < len(row) {
			c.setCell(&d, &p, column, strings.TrimSpace(row[k]))
		}
	}
	return p
}
