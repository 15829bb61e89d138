package book_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/ui/book/booktest"
	"pressworth/ui/parts"
)

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

func TestQuote_declinedSaysWhyAndOpensAgain(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Send")
	d.press("Freeze and send")
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
	d.press("Freeze and send")
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
	d.press("Freeze and send")
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
	d.acceptAtOnce()
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

func TestQuote_optionsAreRenamedAndRemovedWithAWayBack(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.enter("name of another, like with back print", "with back print")
	d.key(fyne.KeyReturn)
	d.enter("name, like with back print", "front only")
	d.key(fyne.KeyReturn)
	d.want("“as quoted” is “front only” now.")
	d.place.Undo()
	d.want("as quoted")
	d.press("Remove")
	d.want("“as quoted” is no longer offered.")
	d.press("Undo")
	d.want("“as quoted” is offered again.", "with back print")
	d.enter("name, like with back print", "")
	d.key(fyne.KeyReturn)
	if f := d.field("name, like with back print"); !f.Wrong() {
		t.Error("an option without a name is taken")
	}
}

func TestQuote_whatIsFrozenForGoodIsAskedForTwice(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.want("can never be changed or taken away")
	d.press("Send")
	d.want("Send the quote", "Freeze and send")
	if len(d.Written) > 0 {
		t.Errorf("written %q after one press", d.Written)
	}
	d.press("Freeze and send")
	d.want("Waiting for an answer")
}
