package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/ui/book"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/parts/partstest"
)

// unopened writes documents and opens none of them.
type unopened struct{ bookPapers }

func (unopened) OpenFile(string) error { return nil }

// bookWindow is the Quote book over a demo shop in a file, in a window of the toolkit's test driver.
type bookWindow struct {
	*testing.T
	place  *book.Place
	win    fyne.Window
	shop   *store.Store
	folder string
}

func openBook(t *testing.T) *bookWindow {
	t.Helper()
	shop := draftsOnly(t)
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	b := &bookWindow{T: t, shop: shop, folder: filepath.Join(t.TempDir(), "documents")}
	files := papers{folder: b.folder}
	b.place = quoteBook(shop, files)
	b.place.Papers = unopened{bookPapers{bookDesk{shop}, files}}
	b.place.OnOpen, b.place.OnCopy = func(catalog.Draft) {}, func(catalog.Draft) {}
	b.win = test.NewWindow(parts.NewLayered(b.place.Content()))
	b.win.Resize(fyne.NewSize(1400, 900))
	b.place.Shown()
	b.place.Focus()
	return b
}

func (b *bookWindow) says() string { return strings.Join(partstest.Texts(b.win.Content()), "\n") }

func (b *bookWindow) want(words ...string) {
	b.Helper()
	said := b.says()
	for _, w := range words {
		if !strings.Contains(said, w) {
			b.Fatalf("%q is not to be seen in:\n%s", w, said)
		}
	}
}

func (b *bookWindow) press(word string) {
	b.Helper()
	found := partstest.Pressables(b.win.Content(), word)
	if len(found) == 0 {
		b.Fatalf("nothing called %q to press in:\n%s", word, b.says())
	}
	found[0].Tapped(&fyne.PointEvent{})
}

func (b *bookWindow) enter(caption, text string) {
	b.Helper()
	found := partstest.Field(b.win.Content(), caption)
	if found == nil {
		b.Fatalf("no field called %q in:\n%s", caption, b.says())
	}
	parts.Focus(found)
	found.SelectAll()
	test.Type(found, text)
}

func (b *bookWindow) open(words string) {
	b.Helper()
	b.enter("Search by any word, number, date or amount", words)
	b.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// written is the content of the one document whose name begins so.
func (b *bookWindow) written(name string) []byte {
	b.Helper()
	found, err := filepath.Glob(filepath.Join(b.folder, name+"*"))
	if err != nil || len(found) != 1 {
		b.Fatalf("%s: %d files, %v", name, len(found), err)
	}
	data, err := os.ReadFile(found[0])
	if err != nil {
		b.Fatal(err)
	}
	return data
}

// The whole way in the real shop file: sent, accepted, approved, ordered, taken in, pressed, collected, paid, finished.
func TestBook_aQuoteGoesFromDraftToFinishedInTheShopFile(t *testing.T) {
	b := openBook(t)
	b.open("regatta")
	b.press("Send")
	b.press("Freeze and send")
	b.want("Waiting for an answer", "as frozen")
	b.press("Accepted")
	b.want("From yes to collected", "not approved yet")
	b.enter("approved by", "Tamsin Vale")
	b.press("Done")
	b.want("Tamsin Vale, by e-mail")
	for _, paper := range []string{
		"Proof", "Order confirmation", "Invoice", "Receipt", "Quote PDF", "E-mail", "Press ticket", "Sheet layouts", "Purchase list", "Packing list", "Cost sheet",
	} {
		b.press(paper)
		b.want(paper + " written to")
	}
	b.enter("like S2 L1", "M2")
	b.press("Reprint ticket")
	for _, name := range []string{"receipt", "reprint-ticket", "press-ticket"} {
		if data := b.written(name); !bytes.HasPrefix(data, []byte("%PDF-")) {
			t.Errorf("%s is no PDF: %.20q", name, data)
		}
	}
	b.place.Escape()
	b.press("To buy")
	b.want("Northgate Blanks", "to order")
	for range 2 {
		b.press("All ordered")
	}
	for range 2 {
		b.press("All is here")
	}
	b.want("Nothing is to be bought")
	b.press("Quotes")
	b.open("regatta")
	for !strings.Contains(b.says(), "All is handed over.") {
		b.press("Done")
	}
	b.press("Record deposit")
	b.press("Record payment")
	b.want("paid in full")
	b.press("Finish the job")
	b.enter("Set-up", "20")
	b.enter("Pressing", "95")
	b.press("Finish the job")
	b.want("Finished", "95 min")
	rows, err := b.shop.Quotes(t.Context(), store.QuoteFilter{State: catalog.Finished})
	if err != nil || len(rows) != 1 || rows[0].Paid != "1261.38" {
		t.Fatalf("finished quotes: %+v, %v", rows, err)
	}
	day := time.Now().Format(time.DateOnly)
	if _, err := b.place.Papers.Bookkeeping(context.Background(), day, day); err != nil {
		t.Fatal(err)
	}
	if table := string(b.written("bookkeeping")); strings.Count(table, "payment,") != 2 || !strings.Contains(table, "1261.38") {
		t.Errorf("bookkeeping says:\n%s", table)
	}
}

// Options are frozen together, written into one PDF, and one of them is accepted.
func TestBook_optionsAreSentTogether(t *testing.T) {
	b := openBook(t)
	b.open("regatta")
	b.enter("name of another, like with back print", "second")
	b.press("Offer another")
	b.press("Send")
	b.press("Freeze and send")
	b.want("Accept the option that the customer wants")
	if pdf := b.written("quote-"); !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		t.Errorf("no PDF: %.20q", pdf)
	}
	b.press("Accept")
	b.want("From yes to collected", "accepted")
	b.place.Undo()
	b.want("Waiting for an answer")
}

// What is wrong with a draft keeps it from being sent, and says so.
func TestBook_aDraftThatCannotBePricedIsNotSent(t *testing.T) {
	shop := draftsOnly(t)
	d, err := shop.SaveDraft(t.Context(), catalog.Draft{Title: "nothing in it", QuotedOn: "2026-12-02"}, nil)
	if err != nil {
		t.Fatal(err)
	}
	desk := bookDesk{shop}
	if _, err := desk.Send(t.Context(), d.ID, "PDF"); err == nil {
		t.Error("a quote of nothing was sent")
	}
	if h, err := desk.Quote(t.Context(), d.ID); err != nil || h.State != catalog.Drafted || len(h.Revisions) > 0 {
		t.Errorf("state %s, %d revisions, %v", h.State, len(h.Revisions), err)
	}
}
