package catalog

import (
	"fmt"
	"net/mail"
	"strings"
	"time"

	"pressworth/quote"
)

// When a customer pays.
const (
	PayOnPickUp  = "pick-up" // when the goods are handed over
	PayNetDays   = "net"     // so many days after the invoice
	PayWithOrder = "po"      // against the customer's purchase order, so many days after the invoice
)

// Customer is somebody the shop quotes for, as the shop keeps them.
type Customer struct {
	ID      int64 // 0: not kept yet
	Name    string
	Contact string // the person to ask for
	Email   string
	Phone   string
	Address string // lines divided by \n
	Level   string // price level's name; empty: the shop's first

	Terms    string // PayOnPickUp, PayNetDays or PayWithOrder; empty: pick-up
	NetDays  int    // for net and purchase order
	PONumber string // standing purchase order number, if any

	TaxExempt        bool
	Certificate      string // number of the exemption certificate
	CertificateUntil string // 2006-01-02: its last day; empty: without end

	Notes string // never printed
}

// maxNetDays is longer than anybody waits for money; a larger figure is a slip of the hand.
const maxNetDays = 365

// Check gives all that is wrong with a customer's fields, by their names in JSON style.
func (c Customer) Check() []quote.Problem {
	var e entries
	e.line("name", c.Name, true)
	e.line("contact", c.Contact, false)
	e.line("phone", c.Phone, false)
	e.line("po_number", c.PONumber, false)
	e.line("certificate", c.Certificate, false)
	e.date("certificate_until", c.CertificateUntil)
	if e.line("email", c.Email, false); strings.TrimSpace(c.Email) != "" {
		if _, err := mail.ParseAddress(c.Email); err != nil {
			e.say("email", "enter an e-mail address, like name@place.example")
		}
	}
	switch c.Terms {
	case "", PayOnPickUp, PayNetDays, PayWithOrder:
	default:
		e.say("terms", "choose pick-up, net days or purchase order")
	}
	if c.NetDays < 0 || c.NetDays > maxNetDays {
		e.say("net_days", fmt.Sprintf("enter 0 to %d days", maxNetDays))
	}
	if c.TaxExempt && strings.TrimSpace(c.Certificate) == "" {
		e.say("certificate", "enter the number of the exemption certificate")
	}
	return e.problems
}

// ExemptOn tells whether the customer pays no tax on a day: exempt, and the certificate has not run out.
func (c Customer) ExemptOn(day string) bool {
	return c.TaxExempt && (c.CertificateUntil == "" || day <= c.CertificateUntil)
}

// ForDraft is the customer as a draft names one.
func (c Customer) ForDraft() DraftCustomer {
	return DraftCustomer{ID: c.ID, Name: c.Name, Contact: c.Contact, Email: c.Email, Phone: c.Phone, Address: c.Address}
}

// TermsInWords says when the customer pays, like "net 30 days".
func (c Customer) TermsInWords() string {
	words := map[string]string{
		PayNetDays:   fmt.Sprintf("net %d days", c.NetDays),
		PayWithOrder: fmt.Sprintf("purchase order %s, net %d days", c.PONumber, c.NetDays),
	}[c.Terms]
	if words == "" {
		return "at pick-up"
	}
	return strings.ReplaceAll(words, "order ,", "order,")
}

// DueOn is the day by which money for an invoice of the given day is expected (both 2006-01-02).
func (c Customer) DueOn(invoiced string) string {
	day, err := time.Parse(time.DateOnly, invoiced)
	if err != nil || c.Terms == "" || c.Terms == PayOnPickUp {
		return invoiced
	}
	return day.AddDate(0, 0, c.NetDays).Format(time.DateOnly)
}

// line checks a field that must stand on one line: a line break in a name or a subject would let a text pass for
// another header of an e-mail.
func (e *entries) line(path, text string, needed bool) {
	if strings.ContainsAny(text, "\r\n\x00") {
		e.say(path, "must stand on one line")
	}
	if needed && strings.TrimSpace(text) == "" {
		e.say(path, "must not be empty")
	}
}
