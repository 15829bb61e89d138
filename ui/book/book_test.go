package book_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/ui/book"
	"pressworth/ui/book/booktest"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// desk is the Quote book in a window, read and pressed as a person does.
type desk struct {
	*testing.T
	*booktest.Book
	place *book.Place
	win   fyne.Window
}

func open(t *testing.T) *desk {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	d := &desk{T: t, Book: booktest.New()}
	d.place = d.Place()
	d.win = test.NewWindow(parts.NewLayered(d.place.Content()))
	d.win.Resize(fyne.NewSize(1400, 900))
	d.place.Shown()
	d.place.Focus()
	return d
}

// walk visits what is to be seen.
func walk(o fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	if o == nil || !o.Visible() {
		return
	}
	visit(o)
	switch o := o.(type) {
	case *fyne.Container:
		for _, child := range o.Objects {
			walk(child, visit)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			walk(child, visit)
		}
	}
}

// says is all text that is drawn.
func (d *desk) says() string {
	var out []string
	walk(d.win.Content(), func(o fyne.CanvasObject) {
		if line, ok := o.(*canvas.Text); ok && line.Text != "" {
			out = append(out, line.Text)
		}
	})
	return strings.Join(out, "\n")
}

func (d *desk) want(words ...string) {
	d.Helper()
	said := d.says()
	for _, w := range words {
		if !strings.Contains(said, w) {
			d.Errorf("%q is not to be seen in:\n%s", w, said)
		}
	}
}

func (d *desk) wantNot(words ...string) {
	d.Helper()
	said := d.says()
	for _, w := range words {
		if strings.Contains(said, w) {
			d.Errorf("%q is to be seen in:\n%s", w, said)
		}
	}
}

// press presses the n-th thing to press that is called so, the first one where none is said.
func (d *desk) press(word string, n ...int) {
	d.Helper()
	var found []fyne.Tappable
	walk(d.win.Content(), func(o fyne.CanvasObject) {
		if b, ok := o.(interface{ Text() string }); ok && b.Text() == word {
			if t, ok := o.(fyne.Tappable); ok {
				found = append(found, t)
			}
		}
	})
	at := 0
	if len(n) > 0 {
		at = n[0]
	}
	if at >= len(found) {
		d.Fatalf("nothing called %q (%d) to press in:\n%s", word, at, d.says())
	}
	found[at].Tapped(&fyne.PointEvent{})
}

// field is the field with a caption, or with a hint.
func (d *desk) field(name string) *parts.Field {
	d.Helper()
	var found *parts.Field
	after := false
	walk(d.win.Content(), func(o fyne.CanvasObject) {
		if t, ok := o.(*parts.Text); ok && t.Text() == name {
			after = true
		}
		if f, ok := o.(*parts.Field); ok && found == nil && (after || f.Hint == name) {
			found = f
		}
	})
	if found == nil {
		d.Fatalf("no field called %q in:\n%s", name, d.says())
	}
	return found
}

// enter types into a field over what stands there.
func (d *desk) enter(name, text string) {
	d.Helper()
	f := d.field(name)
	parts.Focus(f)
	f.SelectAll()
	if text == "" {
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	}
	test.Type(f, text)
}

func (d *desk) key(name fyne.KeyName) {
	d.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

// openFirst opens the page of the quote that words find.
func (d *desk) openFirst(words string) {
	d.Helper()
	d.enter("Search by any word, number, date or amount", words)
	d.key(fyne.KeyReturn)
}

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
	var table *parts.Table
	walk(d.win.Content(), func(o fyne.CanvasObject) {
		if x, ok := o.(*parts.Table); ok && table == nil {
			table = x
		}
	})
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

func TestQuote_enterOpensItsPageAndEscGoesBack(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.want("Send the quote", "Open on the counter", "needed by")
	if !d.place.Escape() {
		t.Fatal("Esc was not used")
	}
	d.want("1 quote")
	if d.place.Escape() {
		t.Error("Esc was used on the list")
	}
}

func TestQuote_sameAgainTakesANumberOfPieces(t *testing.T) {
	d := open(t)
	var copied catalog.Draft
	d.place.OnCopy = func(c catalog.Draft) { copied = c }
	d.openFirst("harb")
	f := d.field("46")
	parts.Focus(f)
	test.Type(f, "60")
	d.key(fyne.KeyReturn)
	if copied.Title != "Regatta for 60" || copied.ID != 0 {
		t.Errorf("got the draft %d %q, want a new one for 60", copied.ID, copied.Title)
	}
}

// The whole way of a quote through the window: sent, accepted, ordered, pressed, collected, paid, finished.
func TestQuote_goesFromDraftToFinished(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Send")
	d.want("Waiting for an answer", "2026-0001 is sent by PDF as revision 1.", "as frozen")
	if !slices.Contains(d.Written, "Quote PDF of 1") || len(d.Shown) != 1 {
		t.Fatalf("written %q, shown %q: want the quote as PDF", d.Written, d.Shown)
	}
	d.press("Accepted")
	d.want("From yes to collected", "The artwork is not approved yet", "deposit still due")
	d.enter("approved by", "Ines Halvorsen")
	d.press("Done")
	d.want("Ines Halvorsen, by e-mail")
	d.wantNot("The artwork is not approved yet")
	d.press("Record deposit")
	d.wantNot("deposit still due")
	d.place.Escape()

	d.press("To buy")
	d.want("Northgate Blanks", "to order", "for 2026-0001")
	d.press("All ordered")
	d.want("on the way")
	d.press("Quotes")
	d.openFirst("harb")
	for range catalog.Steps[1:] {
		d.press("Done")
	}
	d.press("Ready to collect, as text")
	if got := fyne.CurrentApp().Clipboard().Content(); got != "Your order is ready to collect" {
		t.Errorf("clipboard: got %q", got)
	}
	d.press("Record payment")
	d.want("paid in full", "All is handed over.")
	d.press("Finish the job")
	d.want("planned", "Left over", "2 × Full back 11 × 8.5")
	d.enter("Set-up", "20")
	d.enter("Pressing", "95")
	d.enter("Spoiled", "1")
	d.press("Finish the job")
	d.want("Finished", "95 min", "1 piece", "1 thing on the shelf")
	d.place.Undo()
	d.want("All is handed over.")
}

func TestQuote_everyStepCanBeTakenBack(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Accepted on the spot")
	d.want("From yes to collected")
	d.press("Done")
	d.press("Take back")
	d.want("artwork approved is open again")
	d.place.Undo()
	d.wantNot("The artwork is not approved yet")
	d.place.Undo()
	d.want("The artwork is not approved yet")
	d.place.Undo()
	d.want("Waiting for an answer")
}

func TestQuote_stepTakesADayAsItIsSaid(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Accepted on the spot")
	for typed, want := range map[string]string{"yesterday": "Tue 1 Dec", "mon": "Mon 30 Nov", "2026-11-27": "Fri 27 Nov"} {
		d.enter("today", typed)
		d.key(fyne.KeyReturn)
		d.want("artwork approved on " + want)
		d.press("Take back")
	}
	d.enter("today", "soon")
	d.key(fyne.KeyReturn)
	d.want("enter a day like today")
}

func TestQuote_paymentAboveTheBalanceIsRefusedBesideItsField(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Accepted on the spot")
	d.enter("Amount", "9999")
	d.press("Record deposit")
	d.want("more than is owed: enter 1261.38 or less")
	d.enter("Amount", "100")
	d.enter("Note", "4111 1111 1111 1111")
	d.press("Record deposit")
	d.want("looks like a card number")
	d.enter("Note", "")
	d.enter("Day", "yesterday")
	d.press("Record deposit")
	d.want("Tue 1 Dec · cash, deposit", "1,161.38")
	d.press("Take back")
	d.wantNot("Tue 1 Dec · cash")
}

func TestQuote_declinedSaysWhyAndOpensAgain(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Send")
	d.enter("why, if they said", "too late for them")
	d.press("Declined")
	d.want("too late for them", "2026-0001 is declined.")
	d.press("Open it again")
	d.want("Waiting for an answer")
}

func TestQuote_optionsStandSideBySideAndOneIsAccepted(t *testing.T) {
	d := open(t)
	var edited catalog.Draft
	d.place.OnOpen = func(c catalog.Draft) { edited = c }
	d.openFirst("harb")
	d.enter("name of another, like with back print", "with back print")
	d.key(fyne.KeyReturn)
	if edited.Option != 2 {
		t.Errorf("the option that opens is %d, want 2", edited.Option)
	}
	d.want("as quoted", "with back print")
	d.press("Send")
	d.want("Accept the option that the customer wants")
	d.press("Accept", 1)
	d.want("is accepted with “with back print”")
}

func TestQuote_alteredRevisionIsSaid(t *testing.T) {
	d := open(t)
	d.AddRevision(2, catalog.RevisionRow{ID: booktest.Altered, Number: 1, Total: "1400.76", MadeAt: "2026-11-30T10:00:00Z", SentHow: "PDF"})
	d.openFirst("amaryllis")
	d.want("altered", "does not match its SHA-256", "altered or damaged outside the program")
}

func TestQuote_comparesAndReprices(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Send")
	d.press("Compare")
	d.want("The two say the same, to the cent.")
	d.place.Escape()
	d.press("Reprice")
	d.want("then", "today", "dearer", "Pressing time", "Total cost")
	d.place.Escape()
	d.want("Waiting for an answer")
}

func TestQuote_reprintTicketWantsSizesWithCounts(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Accepted on the spot")
	d.enter("like S2 L1", "many")
	d.press("Reprint ticket")
	if len(d.Written) > 0 {
		t.Errorf("written %q for no count", d.Written)
	}
	d.enter("like S2 L1", "S2 2XL 1")
	d.press("Reprint ticket")
	if !slices.Contains(d.Written, "Reprint ticket of 1 S×22XL×1") {
		t.Errorf("written %q", d.Written)
	}
}

func TestBookkeeping_writesWhatIsBetweenTwoDays(t *testing.T) {
	d := open(t)
	d.press("Bookkeeping")
	d.enter("up to", "2026-11-30")
	d.press("Write CSV")
	d.want("on or after the first one")
	d.enter("up to", "2026-12-15")
	d.press("Write CSV")
	if !slices.Contains(d.Written, "bookkeeping 2026-12-01 2026-12-15") {
		t.Errorf("written %q", d.Written)
	}
	d.want("/papers/bookkeeping")
}
