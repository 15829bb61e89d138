package export

import (
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
