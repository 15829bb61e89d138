package book

import (
	"context"
	"errors"
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// finishPage takes down what a job really took: minutes, spoiled pieces, what the suppliers charged; and what of its
// leftovers goes on the shelf.
type finishPage struct {
	*sheetPage
	head    catalog.QuoteHead
	form    *form.Form
	charged []string // suppliers by their keys
	left    []catalog.ShelfItem
	keep    []*parts.Check
}

func newFinishPage(p *Place, h catalog.QuoteHead) *finishPage {
	return &finishPage{sheetPage: newSheetPage(p, "Finish "+h.Number, h.Customer), head: h, form: form.New()}
}

func (f *finishPage) shown() {
	parts.Background(func() func() {
		ctx := context.Background()
		job, result, err := f.place.Ledger.Opened(ctx, f.head.AcceptedID)
		left, failed := f.place.Ledger.Leftovers(ctx, f.head.ID)
		return func() {
			if err == nil {
				err = failed
			}
			if err != nil {
				f.place.failed("What was planned could not be read", err)
			}
			f.left = left
			f.build(job, result)
		}
	})
}

// build makes the form, with what was planned beside each field.
func (f *finishPage) build(job quote.Job, result quote.Result) {
	x := f.form
	plan := plannedWords(job, result)
	time := parts.NewSection("Time", plan, parts.Fields(150, x.Number("set_up_minutes", "Set-up", "min"), x.Number("pressing_minutes", "Pressing", "min"), x.Number("spoiled", "Spoiled", "pieces")))
	bills := parts.NewSection("What suppliers charged", "empty: as planned")
	var fields []fyne.CanvasObject
	f.charged = nil
	for _, s := range planned(job, result) {
		f.charged = append(f.charged, s.key)
		fields = append(fields, x.Number("invoice."+s.key, s.name+", planned "+present.Amount(s.amount), ""))
	}
	if len(fields) > 0 {
		bills.Body.Add(parts.Fields(230, fields...))
	}
	note := parts.NewSection("To remember", "for the next time", x.Text("note", "Note", ""))
	done := parts.NewDeed(parts.Filled, "Finish the job", "", f.finish)
	f.first = x.Field("set_up_minutes")
	page := parts.Column(look.SectionApart, saying(x.Rest(), time, bills, f.leftovers(), note, parts.Row(8, nil, done))...)
	f.fill(parts.Narrow(820, page))
	f.focus()
}

// plannedWords says how many minutes a job was planned to take.
func plannedWords(job quote.Job, result quote.Result) string {
	hours, err := strconv.ParseFloat(result.Hours, 64)
	if err != nil {
		return ""
	}
	setUp, _ := quote.SetUpMinutes(job, result).Float64()
	return fmt.Sprintf("planned: %s of set-up, %s of pressing", minutesWords(setUp), minutesWords(max(60*hours-setUp, 0)))
}

// leftovers are what is left over, each to be put on the shelf or not.
func (f *finishPage) leftovers() fyne.CanvasObject {
	f.keep = nil
	if len(f.left) == 0 {
		return nil
	}
	rows := parts.Column(2)
	for _, x := range f.left {
		c := parts.NewCheck(fmt.Sprintf("%d × %s %s", x.Qty, shelfWhat(x), shelfSize(x)), nil)
		c.SetChecked(true)
		f.keep = append(f.keep, c)
		rows.Add(c)
	}
	return parts.NewSection("Left over", "what is ticked goes on the shelf", rows)
}

// supplierCost is what a job was planned to pay a supplier.
type supplierCost struct {
	key, name string
	amount    money.Amount
}

// planned is what each supplier of a job was to be paid for goods and freight, as the purchases and cost lines say.
func planned(job quote.Job, r quote.Result) []supplierCost {
	var out []supplierCost
	add := func(key string, a money.Amount) {
		if a.Sign() == 0 {
			return
		}
		for i := range out {
			if out[i].key == key {
				out[i].amount = quote.Sum(out[i].amount, a)
				return
			}
		}
		for _, s := range job.Suppliers {
			if s.ID == key {
				out = append(out, supplierCost{key, or(s.Name, key), a})
			}
		}
	}
	for _, b := range r.Purchases.Blanks {
		add(b.Supplier, b.Value)
	}
	for _, t := range r.Purchases.Transfers {
		add(t.Supplier, t.Value)
	}
	for _, l := range r.Cost.Lines {
		if l.Kind == quote.KindFreight {
			add(l.Ref, l.Amount)
		}
	}
	return out
}

func (f *finishPage) read() (catalog.Actuals, []quote.Problem) {
	r := form.Reader{Get: f.form.Get}
	a := catalog.Actuals{
		SetUpMinutes: r.Number("set_up_minutes"), PressingMinutes: r.Number("pressing_minutes"), Spoiled: r.Count("spoiled"),
		Note: r.Text("note"), On: f.place.today(),
	}
	if r.Text("pressing_minutes") == "" {
		r.Say("pressing_minutes", "enter how long pressing took, or 0")
	}
	for _, key := range f.charged {
		if r.Text("invoice."+key) != "" {
			a.Invoices = append(a.Invoices, catalog.Invoice{Supplier: key, Amount: r.Amount("invoice." + key)})
		}
	}
	return a, append(r.Problems, a.Check()...)
}

func (f *finishPage) finish() {
	a, problems := f.read()
	if f.form.Show(problems); len(problems) > 0 {
		return
	}
	id, number := f.head.ID, f.head.Number
	var shelf []catalog.ShelfItem
	for i, c := range f.keep {
		if c.Checked() {
			shelf = append(shelf, f.left[i])
		}
	}
	parts.Background(func() func() {
		err := f.place.close(id, a, shelf)
		return func() {
			var found quote.Problems
			if errors.As(err, &found) {
				f.form.Show(found)
				return
			}
			f.place.failed("The job could not be finished", err)
			if err == nil {
				f.place.pop()
				f.place.finished(id, number, len(shelf))
			}
		}
	})
}

// close finishes a job and puts its leftovers on the shelf.
func (p *Place) close(id int64, a catalog.Actuals, shelf []catalog.ShelfItem) error {
	ctx := context.Background()
	if err := p.Ledger.Finish(ctx, id, a); err != nil {
		return err
	}
	for _, x := range shelf {
		if p.Shelf == nil {
			break
		}
		if _, err := p.Shelf.SaveShelfItem(ctx, x); err != nil {
			return fmt.Errorf("the job is finished, but %s did not get on the shelf: %w", shelfWhat(x), err)
		}
	}
	return nil
}

func (p *Place) finished(id int64, number string, kept int) {
	words := number + " is finished."
	if kept > 0 {
		words += fmt.Sprintf(" %s on the shelf.", or(countOf(kept, "thing"), ""))
	}
	p.act("", words, func(context.Context) error { return nil }, &step{done: number + " is accepted again.", back: func(ctx context.Context) error {
		return p.Ledger.SetState(ctx, id, catalog.Accepted, "taken back")
	}})
}

// wasFinished says what a finished job took.
func (q *quotePage) wasFinished() fyne.CanvasObject {
	a := q.head.Actuals
	s := parts.NewSection("Finished", since(q.place, q.head, catalog.Finished))
	if a != nil {
		pairs := [][2]string{
			{"Set-up", unit(a.SetUpMinutes, "min")}, {"Pressing", unit(a.PressingMinutes, "min")}, {"Spoiled", countOf(a.Spoiled, "piece")}, {"Note", a.Note},
		}
		for _, i := range a.Invoices {
			pairs = append(pairs, [2]string{i.Supplier, present.Amount(i.Amount)})
		}
		s.Body.Add(parts.Column(3, facts(110, pairs)...))
	}
	again := parts.NewSmallDeed(parts.Quiet, "Not finished yet", func() {
		q.place.act("The quote could not be opened again", q.head.Number+" is accepted again.", func(ctx context.Context) error {
			return q.place.Ledger.SetState(ctx, q.id, catalog.Accepted, "not finished yet")
		}, nil)
	})
	q.first = again
	s.Body.Add(parts.Row(8, nil, again))
	return s
}

func unit(n money.Number, word string) string {
	if n.Sign() == 0 {
		return ""
	}
	return n.String() + " " + word
}
