package export

import (
	"fmt"
	"time"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Payment is money that came in. The number of a card is never kept, and never printed.
type Payment struct {
	Date   string // 2006-01-02
	Way    string // cash, card, transfer ...
	Amount money.Amount
}

// Paid is what has been paid on a job and what is still open, as the quote book has added it up.
type Paid struct {
	Payments []Payment
	Together money.Amount
	Open     money.Amount
}

// Receipt says what was paid, as a PDF.
func (a Pictured) Receipt(job quote.Job, result quote.Result, paid Paid, date time.Time) ([]byte, error) {
	return a.render(job, "Receipt "+paperOf(job).Number, footText(job, "Receipt"), date, func(d *doc) {
		d.letterhead(job, "Receipt", [2]string{"number", paperOf(job).Number}, [2]string{"date", day(date.Format(time.DateOnly))})
		d.addressee(job)
		d.paragraph(d.left, d.right-d.left, "Received with thanks:", body)
		d.gap(4)
		t := d.table(columnSpec{title: "date", width: 110}, columnSpec{title: "paid by", share: 1}, columnSpec{title: "amount in " + job.Currency, width: 90, right: true})
		for _, p := range paid.Payments {
			t.row([]string{day(p.Date), p.Way, grouped(p.Amount)}, plain(3, body))
		}
		t.end()
		d.sums(result, []sumRow{
			{name: "Order with tax", amount: grouped(result.Price.Total)},
			{name: "Paid", amount: grouped(paid.Together), big: true},
			{name: "Still open", amount: grouped(paid.Open), light: true},
		})
	})
}

// Spoiled is a number of pieces that have to be pressed again.
type Spoiled struct {
	Garment string // id of the garment line
	Size    string
	Qty     int
}

// Reprint is a press ticket for spoiled pieces only, as a PDF. The result may be the job's own: its counts are not shown.
func Reprint(job quote.Job, result quote.Result, spoiled []Spoiled, date time.Time) ([]byte, error) {
	again, err := onlySpoiled(result, spoiled)
	if err != nil {
		return nil, err
	}
	return render(job, "Reprint ticket "+paperOf(job).Number, footText(job, "Reprint ticket"), date, func(d *doc) {
		d.letterhead(job, "Reprint ticket", [2]string{"number", paperOf(job).Number}, [2]string{"printed", day(date.Format(time.DateOnly))},
			[2]string{"needed by", day(paperOf(job).NeededBy)})
		d.addressee(job)
		d.cautions(pressCautions(job))
		d.counts(job, again)
		d.pressings(job, again)
	})
}

// onlySpoiled is a result that has the spoiled pieces and no others, for what a ticket shows.
func onlySpoiled(result quote.Result, spoiled []Spoiled) (quote.Result, error) {
	again := result
	again.Garments = nil
	for _, l := range result.Garments {
		line := quote.GarmentLine{ID: l.ID, Group: l.Group}
		for _, s := range spoiled {
			if s.Garment == l.ID && s.Qty > 0 {
				line.Sizes = append(line.Sizes, quote.SizePrice{Size: s.Size, Qty: s.Qty})
				line.Pieces += s.Qty
			}
		}
		if line.Pieces > 0 {
			again.Garments = append(again.Garments, line)
		}
	}
	if len(again.Garments) == 0 {
		return again, fmt.Errorf("reprint ticket: none of the spoiled pieces belongs to this job")
	}
	return again, nil
}
