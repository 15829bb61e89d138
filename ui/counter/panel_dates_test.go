package counter

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
	"pressworth/ui/present"
)

func TestDates_showALineAndARowForEachOrder(t *testing.T) {
	app := test.NewApp()
	t.Cleanup(app.Quit)
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	d := newDates()
	v := present.Dates{Line: "Ready by Fri 11 Dec, needed by Fri 18 Dec", Basis: "goods taken in Wed 9 Dec", Rows: []present.DateRow{
		{Name: "Blanks from Northgate Blanks", When: "order by Mon 14 Dec 15:00", Basis: "to be taken in by Wed 16 Dec"},
		{Name: "Sheets", When: "order by Wed 9 Dec 12:00", Late: true},
	}}
	d.set(v)
	if d.line.Text() != v.Line || len(d.rows.Objects) != 2 {
		t.Errorf("line %q and %d rows, want %q and 2", d.line.Text(), len(d.rows.Objects), v.Line)
	}
	first := d.rows.Objects[0]
	d.set(v)
	if d.rows.Objects[0] != first {
		t.Error("the rows were made anew though nothing changed")
	}
	v.Rows = v.Rows[:1]
	d.set(v)
	if len(d.rows.Objects) != 1 {
		t.Errorf("%d rows, want the one that is left", len(d.rows.Objects))
	}
}
