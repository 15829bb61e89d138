package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
)

// Offer is one of several jobs that a quote holds side by side, under the name the customer chooses it by.
type Offer struct {
	Name   string
	Job    quote.Job
	Result quote.Result
}

// QuoteOptions is a quote with its options: all of them side by side on the first page, then each on a page of its own.
func (a Pictured) QuoteOptions(offers []Offer, date time.Time) ([]byte, error) {
	if len(offers) == 0 {
		return nil, fmt.Errorf("quote: there is no option to print")
	}
	first := offers[0].Job
	return a.render(first, "Quote "+paperOf(first).Number, footText(first, "Quote"), date, func(d *doc) { layOptions(d, offers, date) })
}

func layOptions(d *doc, offers []Offer, date time.Time) {
	first := offers[0].Job
	d.letterhead(first, "Quote", validity(first, date)...)
	d.addressee(first)
	d.heading(fmt.Sprintf("%d options to choose from", len(offers)))
	d.sideBySide(offers)
	for _, o := range offers {
		d.newPage()
		d.heading(o.Name)
		if vs := d.views(o.Job, o.Result, true); len(vs) > 0 {
			d.pictures(vs, 124)
			d.artwork(o.Job, o.Result)
		}
		d.prices(o.Job, o.Result)
		d.sumsAndMore(o.Job, o.Result)
	}
	d.small(first)
}

// sideBySide compares the options: what they are made of and what they come to.
func (d *doc) sideBySide(offers []Offer) {
	t := d.table(columnSpec{title: "option", share: 3}, columnSpec{title: "garments", share: 4}, columnSpec{title: "printed", share: 4},
		columnSpec{title: "pieces", width: 42, right: true}, columnSpec{title: "total in " + offers[0].Job.Currency, width: 88, right: true})
	for _, o := range offers {
		t.row([]string{o.Name, garmentWords(o), printWords(o), fmt.Sprint(o.Result.Pieces), grouped(o.Result.Price.Total)},
			[]paper.Style{strong, body, body, body, strong})
	}
	t.end()
}

// garmentWords names the garments of an option, each once.
func garmentWords(o Offer) string {
	var words []string
	for _, l := range o.Result.Garments {
		if w := named(garmentOf(o.Job, l.ID)); l.Pieces > 0 && !slices.Contains(words, w) {
			words = append(words, w)
		}
	}
	return strings.Join(words, "; ")
}

// printWords names what is printed, each placement once.
func printWords(o Offer) string {
	var words []string
	for _, m := range o.Result.Methods {
		if w := lower(placementOf(o.Job, m.Placement).Name); !slices.Contains(words, w) {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

// TextOptions is a quote with its options in plain words, one after the other.
func TextOptions(offers []Offer, date time.Time) string {
	var all []string
	for _, o := range offers {
		all = append(all, strings.ToUpper(o.Name)+"\n"+Text(o.Job, o.Result, date))
	}
	return strings.Join(all, "\n")
}

// EmailOptions is an unsent message with the quote and all its options attached as one PDF.
func (a Pictured) EmailOptions(l Letter, offers []Offer, date time.Time) ([]byte, error) {
	pdf, err := a.QuoteOptions(offers, date)
	if err != nil {
		return nil, err
	}
	return compose(offers[0].Job, l.filled(offers, date), TextOptions(offers, date), pdf, date), nil
}
