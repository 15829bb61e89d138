package present

import (
	"regexp"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// guessed are rows of a spreadsheet with what each column holds; -1: there is none.
type guessed struct {
	at   [RosterColumns]int
	head bool // the first row named the columns
	rows [][]string

	names []string // the columns' own names, where there is a head
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
		g.head, g.rows, g.names = true, block[1:], block[0]
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
		if k >= 0 && k < len(row) && !(column == RosterGarment && strings.TrimSpace(row[k]) == "") {
			c.setCell(&d, &p, column, strings.TrimSpace(row[k]))
		}
	}
	return p
}

// columnWords name the columns of the roster in a sentence.
var columnWords = [RosterColumns]string{"garment", "size", "person", "name", "number"}

// words say what was taken from where: "12 rows: size from column 3, name from column 2. Column 4 (e-mail) is not used."
func (g *guessed) words() string {
	var taken, left []string
	wide := len(g.names)
	for _, row := range g.rows {
		wide = max(wide, len(row))
	}
	for column, k := range g.at {
		if k >= 0 {
			taken = append(taken, columnWords[column]+" from column "+g.column(k))
		}
	}
	for k := range wide {
		if !g.taken(k) {
			left = append(left, g.column(k))
		}
	}
	text := figures(len(g.rows), "row") + " taken over: " + list(taken) + "."
	if len(left) > 6 {
		left = append(left[:6:6], figures(len(left)-6, "other"))
	}
	if len(left) > 0 {
		text += " Not used: " + plural(len(left), "column") + " " + list(left) + "."
	}
	return text
}

// column names a column by its place, and by its head where there is one.
func (g *guessed) column(k int) string {
	text := strconv.Itoa(k + 1)
	if k < len(g.names) && strings.TrimSpace(g.names[k]) != "" {
		text += " (" + strings.TrimSpace(g.names[k]) + ")"
	}
	return text
}
