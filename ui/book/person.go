package book

import (
	"context"
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// personForm is one customer: what is kept of them, their quotes, and their designs on file.
type personForm struct {
	page    *peoplePage
	object  fyne.CanvasObject
	title   *parts.Text
	form    *form.Form
	save    *parts.Button
	body    *fyne.Container
	quotes  *fyne.Container
	designs *fyne.Container
	was     catalog.Customer
	turn    int
}

var terms = []parts.Option{{Key: catalog.PayOnPickUp, Name: "at pick-up"}, {Key: catalog.PayNetDays, Name: "net days"}, {Key: catalog.PayWithOrder, Name: "purchase order"}}

func newPersonForm(l *peoplePage) *personForm {
	f := &personForm{page: l, form: form.New(), title: parts.NewText("", parts.KeyStyle.Shortened()), quotes: parts.Column(2), designs: parts.Column(2)}
	f.form.OnChanged = func(string) { f.judge() }
	f.save = parts.NewSmallDeed(parts.Filled, "Save", f.keep)
	x := f.form
	person := parts.Fields(140, x.Text("name", "Name", ""), x.Text("contact", "Contact", "whom to ask for"), x.Text("email", "E-mail", ""), x.Text("phone", "Telephone", ""))
	address := x.Text("address", "Address, lines divided by ;", "")
	money := parts.Fields(120, x.Choice("level", "Price level", nil), x.Choice("terms", "Pays", terms), x.Number("net_days", "Net", "days"), x.Text("po_number", "Order number", "standing"))
	tax := parts.Fields(150, x.Text("certificate", "Certificate", "its number"), x.Text("certificate_until", "Valid until", "2027-06-30"))
	head := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, f.title, f.save)
	f.body = parts.Column(12, head, x.Rest(), person, address, money, parts.Column(4, x.Check("tax_exempt", "pays no sales tax"), tax),
		x.Text("notes", "Notes, never printed", ""), f.quotes, f.designs)
	f.body.Hide()
	f.object = container.NewStack(parts.NewSheetGround(), parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, f.body)))
	for _, path := range []string{"name", "contact", "email", "phone", "address", "net_days", "po_number", "certificate", "certificate_until", "notes"} {
		x.Field(path).OnSubmitted = func(string) { f.keep() }
	}
	return f
}

func (f *personForm) clear() { f.body.Hide() }

func (f *personForm) focus() {
	f.body.Show()
	parts.Focus(f.form.Field("name"))
}

// show fills the form with a customer.
func (f *personForm) show(c catalog.Customer) {
	c.Terms = or(c.Terms, catalog.PayOnPickUp)
	f.was = c
	f.body.Show()
	f.title.SetText(or(c.Name, "New customer"))
	x := f.form
	net := ""
	if c.NetDays > 0 {
		net = strconv.Itoa(c.NetDays)
	}
	exempt := ""
	if c.TaxExempt {
		exempt = "yes"
	}
	for path, text := range map[string]string{
		"name": c.Name, "contact": c.Contact, "email": c.Email, "phone": c.Phone, "address": strings.ReplaceAll(c.Address, "\n", "; "),
		"terms": c.Terms, "net_days": net, "po_number": c.PONumber, "tax_exempt": exempt,
		"certificate": c.Certificate, "certificate_until": c.CertificateUntil, "notes": c.Notes,
	} {
		x.Set(path, text)
	}
	f.judge()
	f.readMore()
}

// read is the customer as typed.
func (f *personForm) read() (catalog.Customer, []quote.Problem) {
	r, c := form.Reader{Get: f.form.Get}, f.was
	c.Name, c.Contact, c.Email, c.Phone = r.Text("name"), r.Text("contact"), r.Text("email"), r.Text("phone")
	c.Address = strings.ReplaceAll(strings.ReplaceAll(r.Text("address"), "; ", "\n"), ";", "\n")
	c.Level, c.Terms, c.NetDays, c.PONumber = f.form.Get("level"), f.form.Get("terms"), r.Count("net_days"), r.Text("po_number")
	c.TaxExempt, c.Certificate, c.CertificateUntil = f.form.Get("tax_exempt") != "", r.Text("certificate"), r.Date("certificate_until")
	c.Notes = r.Text("notes")
	return c, append(r.Problems, c.Check()...)
}

func (f *personForm) judge() {
	c, problems := f.read()
	if f.was.ID == 0 && strings.TrimSpace(c.Name) == "" {
		problems = nil // nothing typed yet: nothing wrong yet
	}
	f.form.Show(problems)
	if c != f.was && len(problems) == 0 && c.Name != "" {
		f.save.Enable()
	} else {
		f.save.Disable()
	}
}

// keep saves the customer; what the shop file finds wrong stands beside its field.
func (f *personForm) keep() {
	c, problems := f.read()
	if f.form.Show(problems); len(problems) > 0 || c == f.was {
		return
	}
	was := f.was
	parts.Background(func() func() {
		kept, err := f.page.place.People.SaveCustomer(context.Background(), c)
		return func() {
			var found quote.Problems
			switch {
			case errors.As(err, &found):
				f.form.Show(found)
			case err != nil:
				f.page.place.failed("The customer could not be saved", err)
			default:
				f.page.marked = kept.ID
				f.kept(was, kept)
			}
		}
	})
}

// kept tells that a customer was saved, with the way back where there was one before.
func (f *personForm) kept(was, now catalog.Customer) {
	var back *step
	if was.ID != 0 {
		back = &step{done: was.Name + " is as before.", back: func(ctx context.Context) error {
			_, err := f.page.place.People.SaveCustomer(ctx, was)
			return err
		}}
	}
	f.page.place.act("The customer", now.Name+" saved.", func(context.Context) error { return nil }, back)
}

// readMore reads the levels there are, the customer's quotes and designs.
func (f *personForm) readMore() {
	f.turn++
	turn, c, people := f.turn, f.was, f.page.place.People
	parts.Background(func() func() {
		ctx := context.Background()
		levels, err := people.Levels(ctx)
		var quotes []catalog.QuoteRow
		var designs []catalog.Design
		if err == nil && c.ID != 0 {
			quotes, err = people.Of(ctx, c.ID)
		}
		if err == nil && c.ID != 0 {
			designs, err = people.Designs(ctx, c.ID)
		}
		return func() {
			if turn != f.turn {
				return
			}
			if err != nil {
				f.page.place.failed("The customer's quotes could not be read", err)
			}
			f.offerLevels(levels, c.Level)
			f.showQuotes(quotes)
			f.showDesigns(designs)
			f.body.Refresh()
		}
	})
}

func (f *personForm) offerLevels(levels []string, level string) {
	options := []parts.Option{{Name: "the usual one"}}
	for _, l := range levels {
		options = append(options, parts.Option{Key: l, Name: l})
	}
	f.form.ChoiceAt("level").SetOptions(options)
	f.form.Set("level", level)
	f.judge()
}

// mostOf is how many quotes or designs of a customer are listed.
const mostOf = 6

func (f *personForm) showQuotes(rows []catalog.QuoteRow) {
	f.quotes.Objects = nil
	if len(rows) == 0 {
		return
	}
	f.quotes.Objects = []fyne.CanvasObject{parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()},
		parts.NewText("Quotes", parts.TitleStyle), parts.NewText(strconv.Itoa(len(rows)), parts.MutedStyle))}
	for _, r := range rows[:min(len(rows), mostOf)] {
		open := parts.NewSmallButton(parts.Link, r.Number, func() { f.page.place.openQuote(r.ID) })
		f.quotes.Add(parts.Row(8, []parts.Track{parts.Fixed(92), parts.Fixed(62), parts.Share(1), parts.Fit()}, open,
			parts.NewText(r.State, parts.Style{Color: StateColor(r.State)}), parts.NewText(r.Title, parts.MutedStyle.Shortened()),
			parts.NewText(present.Grouped(r.Total), parts.BodyStyle.Right())))
	}
}

func (f *personForm) showDesigns(all []catalog.Design) {
	f.designs.Objects = nil
	if len(all) == 0 {
		return
	}
	f.designs.Objects = []fyne.CanvasObject{parts.NewText("Designs on file", parts.TitleStyle)}
	for _, d := range all[:min(len(all), mostOf)] {
		f.designs.Add(f.designRow(d))
	}
}

// designRow is a design with its sizes and inks, and whether set-up and art are charged again on a repeat.
func (f *personForm) designRow(d catalog.Design) fyne.CanvasObject {
	words := sizesWords(d.Sizes)
	if inks := or(d.Inks, map[bool]string{true: "full colour"}[d.FullColor]); inks != "" {
		words += " · " + inks
	}
	if d.LastRun != "" {
		words += " · last " + f.page.place.near(d.LastRun)
	}
	again := parts.NewCheck("charge again", func(yes bool) {
		was := d
		d.ChargeAgain = yes
		f.page.place.act("The design could not be changed", d.Name+" changed.", func(ctx context.Context) error {
			_, err := f.page.place.People.SaveDesign(ctx, d)
			return err
		}, &step{done: d.Name + " is as before.", back: func(ctx context.Context) error {
			_, err := f.page.place.People.SaveDesign(ctx, was)
			return err
		}})
	}).Deed()
	again.SetChecked(d.ChargeAgain)
	name := parts.NewSmallButton(parts.Link, d.Name, func() { f.page.place.push(newDesignPage(f.page.place, d)) })
	return parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.Column(0, parts.Row(0, nil, name),
		parts.NewText(words, parts.MutedStyle.Shortened())), again)
}
