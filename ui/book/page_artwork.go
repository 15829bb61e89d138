package book

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

// onFile is the artwork of an accepted quote that is kept for the next time, or the way to keep it now: it is kept by
// itself once the job is finished.
func (q *quotePage) onFile() fyne.CanvasObject {
	if q.place.People == nil || !q.agreed() || q.head.CustomerID == 0 {
		return nil
	}
	s := parts.NewSection("Artwork on file", "on a repeat its set-up, digitizing and art cost nothing")
	var names []string
	for _, d := range q.designs {
		if d.LastQuote == q.head.Number {
			names = append(names, d.Name)
		}
	}
	if len(names) > 0 {
		s.Body.Add(parts.NewText("Kept: "+strings.Join(names, ", "), parts.Style{Cut: true}))
		return s
	}
	s.Body.Add(parts.NewText("It is kept when the job is finished, or now.", parts.MutedStyle.Shortened()))
	s.Right.Add(parts.NewSmallDeed(parts.Quiet, "Keep this artwork on file", q.keepArtwork))
	return s
}

func (q *quotePage) keepArtwork() {
	id := q.id
	q.place.undoable("The artwork could not be kept", "The artwork is on file for "+or(q.head.Customer, "the customer")+".", "The file is as it was.", func(ctx context.Context) (Back, error) {
		_, back, err := q.place.People.KeepArtwork(ctx, id)
		return back, err
	})
}

// readDesigns reads what is on file for the quote's customer.
func (q *quotePage) readDesigns(customer int64) ([]catalog.Design, error) {
	if q.place.People == nil || customer == 0 {
		return nil, nil
	}
	return q.place.People.Designs(context.Background(), customer)
}
