package catalog

import (
	"bytes"
	"encoding/json"
	"fmt"
	"time"

	"pressworth/quote/money"
)

// PastQuote is a quote of the demo shop with what has happened to it. Days are 2006-01-02, empty where that has not
// happened.
type PastQuote struct {
	Draft    Draft
	Customer Customer // as the shop keeps them
	SentHow  string   // sent on the day it was quoted
	Accepted string
	PONumber string
	Goods    string // how far the purchases are: ordered or received; empty: open
	Steps    []Step
	Payments []PastPayment
	Actuals  *Actuals // finished
	Declined string
	Why      string
}

// PastPayment is the deposit or the balance, paid on a day.
type PastPayment struct {
	On, Way string
	Deposit bool // else the balance
}

// DemoBook is what the demo shop's quote book tells of the last weeks.
type DemoBook struct {
	Quotes []PastQuote
	Shelf  []ShelfItem
}

// ReadDemoBook reads it, its days counted back from the given one (2006-01-02), for a demo shop that has been read.
func ReadDemoBook(data []byte, day string, demo Demo) (DemoBook, error) {
	today, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return DemoBook{}, fmt.Errorf("demo day: %w", err)
	}
	var file struct {
		Quotes []pastQuote `json:"quotes"`
		Shelf  []struct {
			Kind     string `json:"kind"`
			Qty      int    `json:"qty"`
			Ago      int    `json:"ago"`
			Supplier string `json:"supplier"`
			Style    string `json:"style"`
			Color    string `json:"color"`
			Size     string `json:"size"`
			Note     string `json:"note"`
		} `json:"shelf"`
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&file); err != nil {
		return DemoBook{}, fmt.Errorf("demo book: %w", err)
	}
	r := demoReader{today: today}
	var b DemoBook
	for _, x := range file.Quotes {
		b.Quotes = append(b.Quotes, x.quote(r, demo))
	}
	for _, x := range file.Shelf {
		b.Shelf = append(b.Shelf, ShelfItem{
			Kind: x.Kind, Qty: x.Qty, On: r.ago(x.Ago), Supplier: x.Supplier, Style: x.Style, Color: x.Color, Size: x.Size, Note: x.Note,
		})
	}
	return b, nil
}

type pastQuote struct {
	demoDraft
	QuotedAgo   int    `json:"quoted_ago"`
	SentHow     string `json:"sent_how"`
	AcceptedAgo int    `json:"accepted_ago"`
	PONumber    string `json:"po_number"`
	Goods       string `json:"goods"`
	DeclinedAgo int    `json:"declined_ago"`
	Why         string `json:"why"`
	Terms       string `json:"terms"`
	NetDays     int    `json:"net_days"`
	Certificate string `json:"certificate"`
	Steps       []struct {
		Name string `json:"name"`
		Ago  int    `json:"ago"`
		Who  string `json:"who"`
		How  string `json:"how"`
	} `json:"steps"`
	Payments []struct {
		Ago  int    `json:"ago"`
		Way  string `json:"way"`
		What string `json:"what"`
	} `json:"payments"`
	Finished *struct {
		Ago      int          `json:"ago"`
		SetUp    money.Number `json:"set_up"`
		Pressing money.Number `json:"pressing"`
		Spoiled  int          `json:"spoiled"`
		Note     string       `json:"note"`
	} `json:"finished"`
}

func (x pastQuote) quote(r demoReader, demo Demo) PastQuote {
	q := PastQuote{Draft: x.draft(demo), SentHow: x.SentHow, PONumber: x.PONumber, Goods: x.Goods, Why: x.Why}
	q.Draft.QuotedOn, q.Draft.NeededBy = r.ago(x.QuotedAgo), r.ago(-x.NeededIn)
	q.Draft.TaxExempt = x.Certificate != ""
	c := q.Draft.Customer
	q.Customer = Customer{
		Name: c.Name, Contact: c.Contact, Email: c.Email, Phone: c.Phone, Address: c.Address, Level: x.Level,
		Terms: x.Terms, NetDays: x.NetDays, TaxExempt: x.Certificate != "", Certificate: x.Certificate,
	}
	if x.AcceptedAgo > 0 {
		q.Accepted = r.ago(x.AcceptedAgo)
	}
	if x.DeclinedAgo > 0 {
		q.Declined = r.ago(x.DeclinedAgo)
	}
	for _, s := range x.Steps {
		q.Steps = append(q.Steps, Step{Name: s.Name, On: r.ago(s.Ago), Who: s.Who, How: s.How})
	}
	for _, p := range x.Payments {
		q.Payments = append(q.Payments, PastPayment{On: r.ago(p.Ago), Way: p.Way, Deposit: p.What == "deposit"})
	}
	if f := x.Finished; f != nil {
		q.Actuals = &Actuals{SetUpMinutes: f.SetUp, PressingMinutes: f.Pressing, Spoiled: f.Spoiled, Note: f.Note, On: r.ago(f.Ago)}
	}
	return q
}
