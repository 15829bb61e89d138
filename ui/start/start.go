// Package start is the guided start of a shop of one's own: five questions, each with a usable answer in it already.
//
// Not in this package: the shop file, which is handed in as File; all that the Shop place can set beyond the five.
package start

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// File is what the start asks of the shop file.
type File interface {
	Shop(ctx context.Context) (catalog.Shop, error)
	SaveShop(ctx context.Context, s catalog.Shop) error
}

// Guide is the page.
type Guide struct {
	file  File
	form  *form.Form
	fault *parts.Band
	save  *parts.Button
	shop  catalog.Shop
	done  func()
}

// New makes the page for a new shop; done is called when it was answered or skipped.
func New(f File, done func()) *Guide {
	g := &Guide{file: f, form: form.New(), fault: parts.NewBand(parts.Fault, ""), done: done}
	g.save = parts.NewDeed(parts.Filled, "Begin", "", g.keep)
	g.form.OnChanged = func(string) { g.judge() }
	return g
}

// readable is how wide the page is at most, at 100 %.
const readable = 760

// question is a section of the page, its fields on a grid of three.
func question(number, words, why string, objects ...fyne.CanvasObject) fyne.CanvasObject {
	for len(objects) < 3 {
		objects = append(objects, container.NewWithoutLayout())
	}
	s := parts.NewSection(number+" · "+words, "", append([]fyne.CanvasObject{parts.NewParagraph(why, parts.MutedStyle)}, parts.Fields(150, objects...))...)
	return s
}

// Content is the page. It reads the shop, whose rates are the answers to begin with.
func (g *Guide) Content() fyne.CanvasObject {
	f := g.form
	page := parts.Column(look.SectionApart,
		parts.Column(4, parts.NewText("Your shop", parts.KeyStyle),
			parts.NewParagraph("Five questions, then the counter. Every answer can be changed later under Shop; what stands here already is common practice, not a measurement of yours.", parts.MutedStyle)),
		question("1", "Who are you?", "Printed at the top of every quote.",
			f.Text("name", "Name of the shop", ""), f.Text("email", "E-mail", ""), f.Text("phone", "Telephone", "")),
		question("2", "What does an hour at the press cost?", "What you pay a person, or would have to pay somebody in your place; burden is payroll tax and insurance on top.",
			f.Number("wage", "Wage", "an hour"), f.Number("burden", "Burden", "%")),
		question("3", "What must be paid whether you press or not?", "Rent, power, software, insurance; spread over the hours a month that you really press.",
			f.Number("overhead", "Overhead", "a month"), f.Number("hours", "Pressing hours", "a month")),
		question("4", "What should be left?", "The part of the price that is left after all costs. Other levels for clubs or resale are set under Shop.",
			f.Number("percent", "Margin", "%")),
		question("5", "What is the sales tax where you sell?", "Tax law is local: ask whoever does your books what is taxed and what is not.",
			f.Number("tax", "Sales tax", "%")),
		f.Rest(), g.fault,
		parts.Row(8, []parts.Track{parts.Fit(), parts.Fit(), parts.Share(1)}, g.save, parts.NewButton(parts.Quiet, "Skip", "", g.done), parts.NewText("a name is enough to begin", parts.MutedStyle.Shortened())))
	g.read()
	return parts.PageInset(parts.NewPageScroll(parts.Narrow(readable, page)))
}

// Focus goes to the first question.
func (g *Guide) Focus() { parts.Focus(g.form.Field("name")) }

func (g *Guide) read() {
	parts.Background(func() func() {
		s, err := g.file.Shop(context.Background())
		return func() {
			if err != nil {
				g.fault.SetText("The shop could not be read: " + err.Error())
				return
			}
			g.show(s)
		}
	})
}

func (g *Guide) show(s catalog.Shop) {
	g.shop = s
	texts := map[string]string{
		"name": s.Letterhead.Name, "email": s.Letterhead.Email, "phone": s.Letterhead.Phone,
		"wage": s.Rates.WagePerHour.String(), "burden": s.Rates.BurdenPercent.String(),
		"overhead": s.Rates.OverheadPerMonth.String(), "hours": s.Rates.ProductiveHoursPerMonth.String(),
	}
	if len(s.Levels) > 0 {
		texts["percent"], texts["tax"] = s.Levels[0].Pricing.Percent.String(), s.Levels[0].Pricing.Tax.Percent.String()
	}
	for path, text := range texts {
		g.form.Set(path, text)
	}
	_, r := g.answers() // what is still missing is said once something has been typed
	g.enable(len(r.Problems) == 0)
}

// answers reads the five answers into the shop, and says by path what is wrong.
func (g *Guide) answers() (catalog.Shop, *form.Reader) {
	r := &form.Reader{Get: g.form.Get}
	s := g.shop
	s.Letterhead.Name, s.Letterhead.Email, s.Letterhead.Phone = r.Need("name", "the shop a name"), r.Text("email"), r.Text("phone")
	s.Rates.WagePerHour, s.Rates.BurdenPercent = r.Amount("wage"), r.Number("burden")
	s.Rates.OverheadPerMonth, s.Rates.ProductiveHoursPerMonth = r.Amount("overhead"), r.Number("hours")
	if s.Rates.OverheadPerMonth.Sign() > 0 && s.Rates.ProductiveHoursPerMonth.Sign() == 0 && len(r.Problems) == 0 {
		r.Say("hours", "enter the hours a month that overhead is spread over")
	}
	margin, tax := r.Percent("percent", 100), r.Percent("tax", 100)
	levels := make([]catalog.Level, len(s.Levels))
	copy(levels, s.Levels)
	for i := range levels {
		levels[i].Pricing.Tax.Percent = tax
	}
	if len(levels) > 0 {
		levels[0].Pricing.Basis, levels[0].Pricing.Percent = "margin", margin
	}
	s.Levels = levels
	return s, r
}

func (g *Guide) judge() {
	_, r := g.answers()
	g.form.Show(r.Problems)
	g.enable(len(r.Problems) == 0)
}

func (g *Guide) enable(begin bool) {
	if begin {
		g.save.Enable()
	} else {
		g.save.Disable()
	}
}

func (g *Guide) keep() {
	s, r := g.answers()
	if len(r.Problems) > 0 {
		return
	}
	parts.Background(func() func() {
		err := g.file.SaveShop(context.Background(), s)
		return func() {
			if err != nil {
				g.fault.SetText("The answers could not be saved: " + err.Error())
				return
			}
			g.done()
		}
	})
}
