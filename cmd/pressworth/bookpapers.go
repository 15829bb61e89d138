package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/export"
	"pressworth/quote"
	"pressworth/ui"
	"pressworth/ui/book"
)

// bookPapers writes the documents of the Quote book beside those of the Counter.
type bookPapers struct {
	desk   bookDesk
	papers papers
}

// agreed is the job of a quote as its papers want it: as accepted, else as sent last, else as it stands.
func (b bookPapers) agreed(ctx context.Context, h catalog.QuoteHead) (quote.Job, quote.Result, error) {
	switch {
	case h.AcceptedID != 0 && (h.State == catalog.Accepted || h.State == catalog.Finished):
		return b.desk.Opened(ctx, h.AcceptedID)
	case len(h.Revisions) > 0:
		return b.desk.Opened(ctx, h.Revisions[0].ID)
	}
	return b.desk.Standing(ctx, h.ID)
}

// Write writes a document of a quote.
func (b bookPapers) Write(ctx context.Context, id int64, p book.Paper, spoiled []book.Spoiled) (string, error) {
	h, err := b.desk.Quote(ctx, id)
	if err != nil {
		return "", err
	}
	job, result, err := b.agreed(ctx, h)
	if err != nil {
		return "", err
	}
	offers, err := b.offers(ctx, h)
	if err != nil {
		return "", err
	}
	several := len(offers) > 1 && (p == book.QuotePaper || p == book.EmailPaper)
	if !several && !slices.Contains(bookedPapers, p) {
		return b.papers.Write(ui.Paper(p), job, result)
	}
	pictures := pictured(job)
	if err := b.papers.head(pictures); err != nil {
		return "", err
	}
	today := time.Now()
	switch p {
	case book.QuotePaper, book.EmailPaper:
		return b.options(h, p, offers, pictures)
	case book.ConfirmPaper:
		data, err := pictures.ConfirmationOf(job, result, b.agreement(ctx, h, today), today)
		return b.file("order-confirmation-", h.Number, ".pdf", data, err)
	case book.InvoicePaper:
		data, err := pictures.InvoiceOf(job, result, b.agreement(ctx, h, today), today)
		return b.file("invoice-", h.Number, ".pdf", data, err)
	case book.ReceiptPaper:
		data, err := pictures.Receipt(job, result, paidOf(h.Account), today)
		return b.file("receipt-", h.Number, ".pdf", data, err)
	case book.ReprintPaper:
		data, err := pictures.Reprint(job, result, spoiledOf(result, spoiled), approvalOf(h.Steps), today)
		return b.file("reprint-ticket-", h.Number, ".pdf", data, err)
	}
	data, err := pictures.ApprovedTicket(job, result, approvalOf(h.Steps), today)
	return b.file("press-ticket-", h.Number, ".pdf", data, err)
}

// bookedPapers say more than their job does: what the quote book knows of it.
var bookedPapers = []book.Paper{book.ConfirmPaper, book.InvoicePaper, book.ReceiptPaper, book.ReprintPaper, book.TicketPaper}

// agreement is what the book knows of an order: its number, what came in, and by when an invoice of a day is to be paid.
func (b bookPapers) agreement(ctx context.Context, h catalog.QuoteHead, today time.Time) export.Agreed {
	g := export.Agreed{Order: h.PONumber, Paid: paidOf(h.Account)}
	c, err := b.desk.Customer(ctx, h.CustomerID)
	if err != nil { // a quote without a customer on file
		return g
	}
	if g.Order == "" {
		g.Order = c.PONumber
	}
	invoiced := today.Format(time.DateOnly)
	if due := c.DueOn(invoiced); due != invoiced {
		g.Due = due
	}
	return g
}

// offers are the options of a quote that waits for its answer, as they were sent last; none where it has no options, or
// where one of them was accepted.
func (b bookPapers) offers(ctx context.Context, h catalog.QuoteHead) ([]export.Offer, error) {
	var offers []export.Offer
	if h.State == catalog.Accepted || h.State == catalog.Finished {
		return nil, nil
	}
	for _, r := range h.Revisions {
		if r.Number != h.Revisions[0].Number || r.Option == 0 {
			continue
		}
		job, result, err := b.desk.Opened(ctx, r.ID)
		if err != nil {
			return nil, err
		}
		offers = append(offers, export.Offer{Name: r.OptionName, Job: job, Result: result})
	}
	return offers, nil
}

// options writes the quote, or the message it is attached to, with all its options.
func (b bookPapers) options(h catalog.QuoteHead, p book.Paper, offers []export.Offer, pictures export.Pictured) (string, error) {
	if p == book.EmailPaper {
		words, err := b.papers.words()
		if err != nil {
			return "", err
		}
		data, err := pictures.EmailOptions(words, offers, time.Now())
		return b.file("e-mail-", h.Number, ".eml", data, err)
	}
	data, err := pictures.QuoteOptions(offers, time.Now())
	return b.file("quote-", h.Number, ".pdf", data, err)
}

func (b bookPapers) file(what, number, ending string, data []byte, err error) (string, error) {
	if err != nil {
		return "", err
	}
	return writeFile(b.papers.folder, export.File{Name: what + export.SafeName(number, "job") + ending, Data: data})
}

func paidOf(a catalog.Account) export.Paid {
	p := export.Paid{Together: a.Paid, Open: a.Balance}
	for _, x := range a.Payments {
		p.Payments = append(p.Payments, export.Payment{Date: x.On, Way: x.Way, Amount: x.Amount})
	}
	return p
}

func approvalOf(steps []catalog.Step) export.Approval {
	s, ok := catalog.Taken(steps, catalog.ArtApproved)
	if !ok {
		return export.Approval{}
	}
	return export.Approval{Who: s.Who, How: s.How, On: s.On}
}

// spoiledOf finds the garment line of each spoiled size: the first one that comes in that size.
func spoiledOf(r quote.Result, all []book.Spoiled) []export.Spoiled {
	var out []export.Spoiled
	for _, s := range all {
		for _, g := range r.Garments {
			if has(g, s.Size) && (s.Garment == "" || s.Garment == g.ID) {
				out = append(out, export.Spoiled{Garment: g.ID, Size: s.Size, Qty: s.Qty, Row: s.Row})
				break
			}
		}
	}
	return out
}

func has(g quote.GarmentLine, size string) bool {
	for _, s := range g.Sizes {
		if s.Size == size && s.Qty > 0 {
			return true
		}
	}
	return false
}

// Text is a quote as plain text for a message.
func (b bookPapers) Text(ctx context.Context, id int64) (string, error) {
	h, err := b.desk.Quote(ctx, id)
	if err != nil {
		return "", err
	}
	if offers, err := b.offers(ctx, h); err != nil || len(offers) > 1 {
		return export.TextOptions(offers, time.Now()), err
	}
	job, result, err := b.agreed(ctx, h)
	return b.papers.Text(job, result), err
}

// ReadyText tells the customer that an order can be collected.
func (b bookPapers) ReadyText(ctx context.Context, id int64) (string, error) {
	h, err := b.desk.Quote(ctx, id)
	if err != nil {
		return "", err
	}
	job, result, err := b.agreed(ctx, h)
	return export.ReadyText(job, result, h.Account.Balance), err
}

// OpenFile hands a file to the system's viewer or mail program.
func (b bookPapers) OpenFile(path string) error { return b.papers.Open(path) }

// BuyingList writes what is still to be ordered from a supplier over all accepted quotes.
func (b bookPapers) BuyingList(ctx context.Context, supplier string) (string, error) {
	rows, err := b.desk.PurchaseList(ctx, false)
	if err != nil {
		return "", err
	}
	shop, err := b.desk.Shop(ctx)
	if err != nil {
		return "", err
	}
	name := supplier
	var lines []export.Bought
	for _, r := range rows {
		if r.Supplier != supplier || r.Open() == 0 {
			continue
		}
		name = r.SupplierName
		lines = append(lines, boughtOf(r))
	}
	if len(lines) == 0 {
		return "", fmt.Errorf("everything from %s is ordered", name)
	}
	today := time.Now()
	pictures := export.Pictured{}
	if err := b.papers.head(pictures); err != nil {
		return "", err
	}
	data, err := pictures.BuyingList(quote.Paper{Shop: shop.Letterhead, Demo: shop.Demo}, name, lines, today)
	return b.file("order-", supplier+"-"+today.Format(time.DateOnly), ".pdf", data, err)
}

func boughtOf(r catalog.PurchaseRow) export.Bought {
	var numbers []string
	for _, q := range r.Quotes {
		numbers = append(numbers, q.Number)
	}
	x := export.Bought{What: strings.TrimSpace(r.Style + " " + r.Name), Detail: r.Color, Size: r.Size, Qty: r.Open(), For: strings.Join(numbers, ", ")}
	if r.Kind == catalog.ShelfTransfer {
		x.What, x.Detail = r.What, r.CardName
	}
	return x
}

// Bookkeeping writes what was accepted between two days and what was paid for it, as a table.
func (b bookPapers) Bookkeeping(ctx context.Context, from, to string) (string, error) {
	all, err := b.desk.Outcomes(ctx, from, to)
	if err != nil {
		return "", err
	}
	var jobs []export.Booked
	currency := ""
	for _, o := range all {
		if o.State != catalog.Accepted && o.State != catalog.Finished || o.RevisionID == 0 {
			continue
		}
		job, result, err := b.desk.Opened(ctx, o.RevisionID)
		if err != nil {
			return "", err
		}
		account, err := b.desk.Account(ctx, o.ID)
		if err != nil {
			return "", err
		}
		currency = job.Currency
		jobs = append(jobs, b.booked(ctx, o, result, account))
	}
	data, err := export.Bookkeeping(jobs, currency)
	return b.file("bookkeeping-", from+"-"+to, ".csv", data, err)
}

func (b bookPapers) booked(ctx context.Context, o catalog.Outcome, r quote.Result, a catalog.Account) export.Booked {
	paid := paidOf(a)
	x := export.Booked{
		Number: o.Number, On: o.Decided, Customer: o.Customer, Title: o.Title, Subtotal: r.Price.Subtotal.String(), Tax: r.Price.Tax.String(),
		CardFee: r.Price.CardFee.String(), Total: r.Price.Total.String(), Paid: a.Paid.String(), Owed: a.Balance.String(), Payments: paid.Payments,
	}
	if c, err := b.desk.Customer(ctx, o.CustomerID); err == nil && c.TaxExempt {
		x.Exempt = c.Certificate
	}
	return x
}
