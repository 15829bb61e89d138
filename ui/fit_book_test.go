package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"

	"pressworth/ui/book"
	"pressworth/ui/parts/partstest"
)

// press presses the first thing to press in the window that is called so.
func (d *desk) press(t *testing.T, word string) {
	t.Helper()
	found := partstest.Pressables(d.win.Content(), word)
	if len(found) == 0 {
		t.Fatalf("nothing called %q to press", word)
	}
	found[0].Tapped(&fyne.PointEvent{})
}

// bookWay leads through every page of the Quote book: what is pressed, and "Esc" for the way back.
var bookWay = []string{
	"Open", "Send", "Freeze and send", "Compare", "Esc", "Reprice", "Esc", "Offer another", "Send again", "Freeze and send", "Esc", "Open", "Accept", "Done", "Record deposit", "Esc",
	"To buy", "All ordered", "Count in", "Take in", "Customers", "New customer", "Shelf", "Put something on it", "Quotes",
	"Bookkeeping", "Esc", "Open", "Done", "Done", "Done", "Done", "Done", "Record payment", "Finish the job", "Esc", "Esc",
}

func TestFit_noWordIsClippedOrCoveredInTheQuoteBook(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1600, Height: 1000}} {
		for _, percent := range []int{100, 130} {
			d := open(t, 0, nil)
			d.SetTextSize(percent)
			d.Go(2)
			place := d.places[bookPlace].(*book.Place)
			for i, step := range bookWay {
				if step == "Esc" {
					place.Escape()
				} else {
					d.press(t, step)
				}
				d.check(t, size, fmt.Sprintf("the quote book after %q (%d) at %.0f × %.0f, text %d %%", step, i, size.Width, size.Height, percent))
			}
		}
	}
}

func TestWindow_writtenQuoteCanBeMarkedAsSent(t *testing.T) {
	d := open(t, 0, nil)
	d.deps.Presenter.SetTitle("Regatta shirts")
	var state string
	d.places[bookPlace].(*book.Place).OnState = func(_ int64, now string) { state = now }
	d.Write(CostPaper)
	if d.shows("Mark as sent") {
		t.Error("a cost sheet can be marked as sent")
	}
	d.Write(QuotePaper)
	d.press(t, "Mark as sent")
	if d.Notice() != "Sent by PDF as revision 1: its prices are frozen." || state != "sent" {
		t.Errorf("said %q, state %q", d.Notice(), state)
	}
}
