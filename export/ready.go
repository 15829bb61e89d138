package export

import (
	"fmt"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// ReadyText tells the customer that the order can be collected, as plain text for a message; owed is what is still to
// be paid.
func ReadyText(job quote.Job, result quote.Result, owed money.Amount) string {
	p := paperOf(job)
	var b strings.Builder
	who := p.Customer.Contact
	if who == "" {
		who = p.Customer.Name
	}
	if who != "" {
		fmt.Fprintf(&b, "Hello %s,\n\n", who)
	}
	title := "your order"
	if job.Title != "" {
		title += " “" + job.Title + "”"
	}
	fmt.Fprintf(&b, "%s is ready to collect: %d pieces", strings.ToUpper(title[:1])+title[1:], result.Pieces)
	if p.Number != "" {
		fmt.Fprintf(&b, ", number %s", p.Number)
	}
	b.WriteString(".\n")
	if owed.Sign() > 0 {
		fmt.Fprintf(&b, "Still to be paid: %s %s.\n", grouped(owed), job.Currency)
	}
	for _, line := range nonEmpty(p.Shop.Name, strings.ReplaceAll(p.Shop.Address, "\n", ", "), p.Shop.Phone) {
		b.WriteString("\n" + line)
	}
	return b.String() + "\n"
}

// Approval is who approved the artwork of a job, when (2006-01-02) and how; nobody yet where On is empty.
type Approval struct{ Who, How, On string }

// words say it for the ticket.
func (a Approval) words() string {
	if a.On == "" {
		return "The artwork is NOT approved yet. Nothing is to be pressed before somebody has signed the proof."
	}
	return "Artwork approved: " + strings.Join(nonEmpty(day(a.On), a.Who, a.How), ", ") + "."
}

// ApprovedTicket is the press ticket of an accepted job: above everything else it says who approved the artwork, or
// plainly that nobody has.
func (a Pictured) ApprovedTicket(job quote.Job, result quote.Result, approval Approval, date time.Time) ([]byte, error) {
	return a.render(job, "Press ticket "+paperOf(job).Number, footText(job, "Press ticket"), date, func(d *doc) {
		layTicket(d, job, result, approval, date)
	})
}

func (d *doc) approval(a Approval) {
	if a.On == "" {
		d.cautions([]string{a.words()})
		d.gap(6)
		return
	}
	d.line(a.words(), paper.Style{Size: strong.Size, Weight: strong.Weight, Color: accent})
	d.gap(8)
}
