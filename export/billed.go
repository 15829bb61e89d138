package export

import (
	"time"

	"pressworth/quote"
)

// Agreed is what the quote book knows about an order beside its job.
type Agreed struct {
	Order string // the customer's own order number, or empty
	Due   string // day by which an invoice is to be paid, 2006-01-02, or empty
	Paid  Paid   // what came in; without payments the deposit is asked for
}

// Confirmation says what was ordered and agreed, as a PDF.
func (a Pictured) Confirmation(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.ConfirmationOf(job, result, Agreed{}, date)
}

// ConfirmationOf is Confirmation with what the quote book knows.
func (a Pictured) ConfirmationOf(job quote.Job, result quote.Result, g Agreed, date time.Time) ([]byte, error) {
	return a.render(job, "Order confirmation "+paperOf(job).Number, footText(job, "Order confirmation"), date, func(d *doc) {
		d.letterhead(job, "Order confirmation", [2]string{"number", paperOf(job).Number}, [2]string{"your order", g.Order},
			[2]string{"date", day(date.Format(time.DateOnly))}, [2]string{"needed by", day(paperOf(job).NeededBy)})
		d.addressee(job)
		d.paragraph(d.left, d.right-d.left, "Thank you for your order. This is what we will make:", body)
		d.gap(6)
		d.printed(job, result)
		d.prices(job, result)
		d.sums(result, g.rows(job, result))
		d.small(job)
	})
}

// Invoice is the bill, as a PDF.
func (a Pictured) Invoice(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.InvoiceOf(job, result, Agreed{}, date)
}

// InvoiceOf is Invoice with what the quote book knows: the customer's order number, what came in, and when the rest is
// due.
func (a Pictured) InvoiceOf(job quote.Job, result quote.Result, g Agreed, date time.Time) ([]byte, error) {
	return a.render(job, "Invoice "+paperOf(job).Number, footText(job, "Invoice"), date, func(d *doc) { layInvoice(d, job, result, g, date) })
}

func layInvoice(d *doc, job quote.Job, result quote.Result, g Agreed, date time.Time) {
	d.letterhead(job, "Invoice", [2]string{"number", paperOf(job).Number}, [2]string{"your order", g.Order},
		[2]string{"date", day(date.Format(time.DateOnly))}, [2]string{"to be paid by", day(g.Due)})
	d.addressee(job)
	d.prices(job, result)
	d.sums(result, g.rows(job, result))
	if t := paperOf(job).Terms; t != "" {
		d.heading("Terms")
		d.paragraph(d.left, d.right-d.left, t, body)
	}
}

// rows are the sums of an order; what came in and what is open stand in the place of the deposit that was asked for.
func (g Agreed) rows(job quote.Job, result quote.Result) []sumRow {
	rows := totalRows(job, result)
	if len(g.Paid.Payments) == 0 {
		return rows
	}
	for i, r := range rows {
		if r.big {
			rows = rows[:i+1]
			break
		}
	}
	for _, p := range g.Paid.Payments {
		rows = append(rows, sumRow{name: "Paid " + day(p.Date) + ", " + p.Way, amount: "−" + grouped(p.Amount), light: true})
	}
	return append(rows, sumRow{name: "Still to be paid", amount: grouped(g.Paid.Open)})
}
