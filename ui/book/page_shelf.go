package book

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

// fromShelf is what lies on the shelf and could be used for the quote; once it is accepted it can be taken, and so much
// less is bought.
func (q *quotePage) fromShelf() fyne.CanvasObject {
	if len(q.offers) == 0 || q.head.State == catalog.Declined || q.head.State == catalog.Finished {
		return nil
	}
	rows := parts.Column(4)
	for _, o := range q.offers {
		words := parts.NewText(o.Text, parts.Style{Cut: true})
		if q.head.State != catalog.Accepted {
			rows.Add(parts.Row(8, []parts.Track{parts.Share(1)}, words))
			continue
		}
		take := parts.NewSmallDeed(parts.Quiet, fmt.Sprintf("Use %d", o.Use), func() { q.useFromShelf(o) })
		rows.Add(parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, words, take))
	}
	hint := "what is used is not bought"
	if q.head.State != catalog.Accepted {
		hint = "can be used once the quote is accepted"
	}
	return parts.NewSection("On the shelf", hint, rows)
}

func (q *quotePage) useFromShelf(o catalog.ShelfOffer) {
	id := q.id
	q.place.undoable("It could not be taken from the shelf", fmt.Sprintf("%d taken from the shelf; so many fewer are bought.", o.Use), "It lies on the shelf again, and is bought as before.",
		func(ctx context.Context) (Back, error) { return q.place.Shelf.UseFromShelf(ctx, o.Item.ID, id, o.Use) })
}

// readOffers finds what the shelf has for the quote.
func (q *quotePage) readOffers(d catalog.Draft) ([]catalog.ShelfOffer, error) {
	if q.place.Shelf == nil {
		return nil, nil
	}
	return q.place.Shelf.ShelfOffers(context.Background(), d)
}
