package export

import (
	"image"
	"time"

	"pressworth/quote"
)

// Pictured makes the documents that draw garments with the real pictures of the artwork, by placement id; a placement without one has a plain
// emblem in its inks. Under LogoKey it holds the picture of the letterhead. Reading the pictures is the caller's: this
// package opens no file.
type Pictured map[string]image.Image

// Quote is the customer's quote as a PDF. It shows prices and nothing of what stands behind them.
func (a Pictured) Quote(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.render(job, "Quote "+paperOf(job).Number, footText(job, "Quote"), date, func(d *doc) { layQuote(d, job, result, date) })
}

// Proof is what the customer approves before anything is bought: drawing, spelling, inks, inches, sizes and counts, and
// a place to sign.
func (a Pictured) Proof(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.render(job, "Proof "+paperOf(job).Number, footText(job, "Proof"), date, func(d *doc) { layProof(d, job, result, date) })
}

// Ticket is the press ticket as a PDF: what goes where, how hot, in which order, with boxes to tick. It says that nobody
// has approved the artwork.
func (a Pictured) Ticket(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.ApprovedTicket(job, result, Approval{}, date)
}

// Documents makes every document of a priced job, dated date.
func (a Pictured) Documents(job quote.Job, result quote.Result, date time.Time) ([]File, error) {
	var m making
	n := SafeName(paperOf(job).Number, "job")
	m.pdf("quote-"+n+".pdf", a.Quote, job, result, date)
	m.pdf("cost-sheet-"+n+".pdf", CostSheet, job, result, date)
	m.add("cost-sheet-" + n + ".csv")(CostCSV(job, result))
	m.pdf("proof-"+n+".pdf", a.Proof, job, result, date)
	m.pdf("packing-list-"+n+".pdf", a.PackingList, job, result, date)
	if len(roster(job)) > 0 {
		m.pdf("bag-list-"+n+".pdf", BagList, job, result, date)
		m.pdf("labels-"+n+".pdf", Labels, job, result, date)
	}
	m.pdf("press-ticket-"+n+".pdf", a.Ticket, job, result, date)
	m.pdf("purchases-"+n+".pdf", Purchases, job, result, date)
	m.add("purchases-" + n + ".csv")(PurchasesCSV(job, result))
	if ls := layouts(job, result); len(ls) > 0 {
		m.pdf("layouts-"+n+".pdf", Layouts, job, result, date)
		for _, l := range ls {
			m.add("layout-"+n+"-"+SafeName(l.name, "sheet")+".svg")(l.svg(), nil)
		}
	}
	m.pdf("e-mail-"+n+".eml", a.Email, job, result, date)
	m.add("quote-"+n+".txt")([]byte(Text(job, result, date)), nil)
	return m.files, m.err
}
