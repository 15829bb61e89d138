package export

import (
	"fmt"
	"time"

	"pressworth/quote"
)

// Bought is one line of a purchase list over several quotes: a thing, in a size where it has one, and how many.
type Bought struct {
	What, Detail, Size string
	Qty                int
	For                string // the quotes that need it
}

// BuyingList is what is to be ordered from one supplier over several quotes, as a PDF under the shop's letterhead. Of the
// paper only the shop and whether it is the demo's are looked at.
func (a Pictured) BuyingList(shop quote.Paper, supplier string, lines []Bought, date time.Time) ([]byte, error) {
	job := quote.Job{Title: supplier, Paper: &quote.Paper{Shop: shop.Shop, Demo: shop.Demo}}
	return a.render(job, "Order to "+supplier, footText(job, "Order"), date, func(d *doc) {
		d.letterhead(job, "Order", [2]string{"to", supplier}, [2]string{"date", day(date.Format(time.DateOnly))})
		d.bought(lines)
	})
}

func (d *doc) bought(lines []Bought) {
	t := d.table(columnSpec{title: "what", share: 4}, columnSpec{title: "colour or card", share: 3}, columnSpec{title: "size", width: 70},
		columnSpec{title: "pieces", width: 44, right: true}, columnSpec{title: "for", share: 3})
	sum := 0
	for _, l := range lines {
		t.row([]string{l.What, l.Detail, l.Size, fmt.Sprint(l.Qty), l.For}, plain(5, body))
		sum += l.Qty
	}
	t.end()
	d.gap(6)
	d.line(fmt.Sprintf("%d pieces altogether", sum), strong)
}

// Booked is one accepted job for the shop's bookkeeping; amounts are the customer's, with the currency's places.
type Booked struct {
	Number, On, Customer, Title               string // On is 2006-01-02
	Subtotal, Tax, CardFee, Total, Paid, Owed string
	Exempt                                    string // number of an exemption certificate, or empty
	Payments                                  []Payment
}

// Bookkeeping is what was sold and what came in, as a table (RFC 4180): a row an order, and below it a row a payment.
func Bookkeeping(jobs []Booked, currency string) ([]byte, error) {
	rows := [][]string{{"kind", "number", "date", "customer", "what", "net", "tax", "card fee", "total", "paid", "owed", "exempt certificate", "currency"}}
	for _, j := range jobs {
		rows = append(rows, []string{"order", j.Number, j.On, j.Customer, j.Title, j.Subtotal, j.Tax, j.CardFee, j.Total, j.Paid, j.Owed, j.Exempt, currency})
		for _, p := range j.Payments {
			rows = append(rows, []string{"payment", j.Number, p.Date, j.Customer, p.Way, "", "", "", "", p.Amount.String(), "", "", currency})
		}
	}
	return table4180(rows)
}
