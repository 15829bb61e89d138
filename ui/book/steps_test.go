package book_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
)

// The whole way of a quote through the window: sent, accepted, ordered, pressed, collected, paid, finished.
func TestQuote_goesFromDraftToFinished(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.press("Send")
	d.press("Freeze and send")
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
	d.acceptAtOnce()
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
	d.acceptAtOnce()
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
	d.acceptAtOnce()
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

func TestReprint_isWrittenPieceByPiece(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.acceptAtOnce()
	d.press("Piece by piece")
	d.want("Press again, 2026-0001", "how many of each size")
	d.press("Write the reprint ticket")
	d.want("enter how many of a size")
	d.enter("S", "9999")
	d.press("Write the reprint ticket")
	d.want("there are ")
	d.enter("S", "2")
	d.press("Write the reprint ticket")
	if !slices.Contains(d.Written, "Reprint ticket of 1 S×2") {
		t.Errorf("written %q", d.Written)
	}
}
