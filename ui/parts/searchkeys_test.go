package parts

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestSearchWith_arrowsMoveTheMarkAndEscEmptiesOnce(t *testing.T) {
	test.NewTempApp(t)
	search, table := NewField(""), NewTable([]TableColumn{{Title: "name", Share: 1}})
	table.Len = func() int { return 5 }
	table.Row = func(int) []TableCell { return []TableCell{{Text: "a row"}} }
	w := test.NewTempWindow(t, Column(0, search, table))
	w.Resize(fyne.NewSize(300, 300))
	cleared := 0
	SearchWith(search, table, func() { cleared++ })
	table.Select(0)
	press := func(name fyne.KeyName) bool { return search.OnKey(&fyne.KeyEvent{Name: name}) }
	for _, name := range []fyne.KeyName{fyne.KeyDown, fyne.KeyDown, fyne.KeyUp} {
		if !press(name) {
			t.Errorf("%s was not used", name)
		}
	}
	if table.Selected() != 1 {
		t.Errorf("down, down, up: got row %d, want 1", table.Selected())
	}
	if press(fyne.KeyLeft) {
		t.Error("an arrow to the left was taken from the box")
	}
	table.OnRune('x')
	if search.Text() != "x" {
		t.Errorf("a letter typed over the table: got %q in the box, want x", search.Text())
	}
	if !press(fyne.KeyEscape) || search.Text() != "" || cleared != 1 {
		t.Errorf("first Esc: left %q, told %d times", search.Text(), cleared)
	}
	if press(fyne.KeyEscape) || cleared != 1 {
		t.Errorf("Esc in an empty box was used, or told %d times", cleared)
	}
	SearchWith(search, table, nil)
	search.SetText("x")
	if press(fyne.KeyEscape) || search.Text() != "x" {
		t.Errorf("Esc without anybody to tell was used, left %q", search.Text())
	}
}
