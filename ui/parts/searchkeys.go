package parts

import "fyne.io/fyne/v2"

// SearchWith joins a box to the table that it searches: the arrows move the mark while the focus stays in the box,
// and a letter typed over the table goes into the box. Esc empties the box, which cleared is told of; in an empty box Esc
// goes on to the window, and without cleared always.
func SearchWith(search *Field, table *Table, cleared func()) {
	search.OnKey = func(e *fyne.KeyEvent) bool {
		switch e.Name {
		case fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyPageUp:
			table.TypedKey(e)
			return true
		case fyne.KeyEscape:
			if cleared == nil || search.Text() == "" {
				return false
			}
			search.SetText("")
			cleared()
			return true
		}
		return false
	}
	table.OnRune = func(r rune) {
		Focus(search)
		search.TypedRune(r)
	}
}
