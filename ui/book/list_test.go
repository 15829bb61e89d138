package book_test

import (
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
)

func TestList_searchAndStateNarrowIt(t *testing.T) {
	d := open(t)
	d.want("3 quotes", "2026-0001", "Café Amaryllis", "Ivo Castellane")
	d.enter("Search by any word, number, date or amount", "harb")
	d.want("1 quote", "1,261.38")
	d.wantNot("Ivo Castellane")
	d.press("sent")
	d.want("No quote found.")
	d.enter("Search by any word, number, date or amount", "2026-12-20")
	d.press("all")
	d.want("1 quote", "Ivo Castellane")
}

func TestList_titlesOfColumnsSortAndTurnRound(t *testing.T) {
	d := open(t)
	table := d.table()
	for _, want := range []string{"128.82 1,261.38 1,400.76", "1,400.76 1,261.38 128.82", "128.82 1,400.76 1,261.38"} {
		table.OnHead(5)
		var got []string
		for i := range table.Len() {
			got = append(got, table.Row(i)[5].Text)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("by total: got %s, want %s", strings.Join(got, " "), want)
		}
	}
}

func TestList_whatCannotBeReadIsSaid(t *testing.T) {
	d := open(t)
	d.Fails = errors.New("the file is locked")
	d.place.Shown()
	d.want("the file is locked")
}

func TestList_openQuotesThatCouldShareSheetsAreSaid(t *testing.T) {
	d := open(t)
	d.press("Share sheets")
	d.want("saves", "Plastisol sheets", "2026-0001", "2026-0002")
	d.press("Back to the quote")
	d.want("total with tax")
}

// However many quotes there are, only those in sight are read, and every one can be scrolled to, marked and opened.
func TestList_twentyThousandQuotesAreReadAPageAtATime(t *testing.T) {
	d := open(t, func(d *desk) { d.Many(20_000) })
	d.want("20,003 quotes")
	table := d.table()
	table.Select(table.Len() - 1)
	d.want("2026-0001")
	table.Select(10_000)
	if got := table.Row(10_000)[1].Text; got == "" || got == "…" {
		t.Errorf("row 10,000 is %q", got)
	}
	number := table.Row(10_000)[1].Text
	d.key(fyne.KeyReturn)
	d.want(number, "Send the quote")
	d.place.Escape()
	if got := d.table().Selected(); got != 10_000 {
		t.Errorf("after Esc row %d is marked, want 10000", got)
	}
	if d.Read > 30*parts.SightPage {
		t.Errorf("%d rows were read", d.Read)
	}
}
