package book_test

import (
	"context"
	"testing"
)

func TestQuote_artworkIsKeptOnFileBeforeItIsFinished(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.wantNot("Artwork on file")
	d.acceptAtOnce()
	d.press("Keep this artwork on file")
	d.want("Kept: Full back", "The artwork is on file for Harbour Rowing Club.")
	d.press("Undo")
	d.want("Keep this artwork on file")
}

func TestDesign_isEditedAndTakenOffTheFile(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.acceptAtOnce()
	d.press("Keep this artwork on file")
	d.place.Escape()
	d.press("Customers")
	d.press("Full back")
	d.want("How it was made", "1 job", "Plastisol sheets")
	d.enter("Sizes, in", "11 x 8.5, wide")
	d.press("Save the design")
	d.want("enter inches")
	d.enter("Sizes, in", "11 x 8.5, 9 × 7")
	d.enter("What worked at the press", "305 °F, medium")
	d.press("Save the design")
	d.want("Full back is kept as typed.", "11 × 8.5, 9 × 7 · white, gold")
	all, err := d.Designs(context.Background(), 1)
	if err != nil || len(all) != 1 || all[0].Settings != "305 °F, medium" || len(all[0].Sizes) != 2 || all[0].Card != "sheets" {
		t.Errorf("kept %+v, %v", all, err)
	}
	d.press("Full back")
	d.press("Take it off the file")
	d.want("Full back is off the file.")
	d.wantNot("Designs on file")
	d.press("Undo")
	d.want("Designs on file")
}
