package book

import (
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// sheetPage is a page over the others to read or fill in: a title with a hint, a way back, and sections below.
type sheetPage struct {
	place  *Place
	object fyne.CanvasObject
	title  *parts.Text
	hint   *parts.Text
	right  *fyne.Container // beside the title
	body   *fyne.Container
	back   *parts.Button
	first  fyne.Focusable
}

func newSheetPage(p *Place, title, hint string) *sheetPage {
	s := &sheetPage{
		place: p, title: parts.NewText(title, parts.KeyStyle), hint: parts.NewText(hint, parts.MutedStyle.Shortened()),
		right: container.NewHBox(), body: parts.Column(look.SectionApart),
	}
	s.back = parts.NewSmallButton(parts.Quiet, "Back", p.pop)
	line := parts.Row(10, []parts.Track{parts.Fit(), parts.Fit(), parts.Share(1), parts.Fit()}, s.back, s.title, s.hint, s.right)
	s.object = container.New(pageEdges{}, parts.NewPageScroll(parts.Column(14, line, s.body)))
	return s
}

func (s *sheetPage) content() fyne.CanvasObject { return s.object }
func (s *sheetPage) leaving() bool              { return true }
func (s *sheetPage) shown()                     {}

func (s *sheetPage) focus() {
	if s.first != nil {
		parts.Focus(s.first)
		return
	}
	parts.Focus(s.back)
}

// fill shows sections on the page.
func (s *sheetPage) fill(objects ...fyne.CanvasObject) {
	s.body.Objects = saying(objects...)
	s.body.Refresh()
	s.object.Refresh()
}

// frozenPage is a revision as it was frozen: prices, and every cost with its basis.
type frozenPage struct {
	*sheetPage
	row catalog.RevisionRow
}

func newFrozenPage(p *Place, h catalog.QuoteHead, r catalog.RevisionRow) *frozenPage {
	title := fmt.Sprintf("%s, revision %d", h.Number, r.Number)
	if r.OptionName != "" {
		title += ", " + r.OptionName
	}
	f := &frozenPage{sheetPage: newSheetPage(p, title, "as it was sent "+changed(p, r.MadeAt)), row: r}
	return f
}

func (f *frozenPage) shown() {
	parts.Background(func() func() {
		job, result, err := f.place.Ledger.Opened(context.Background(), f.row.ID)
		return func() {
			if err != nil {
				f.fill(parts.NewBand(parts.Fault, err.Error()+"."))
				if errors.Is(err, catalog.ErrAltered) {
					f.fill(parts.NewBand(parts.Fault, "This revision is not as it was frozen: "+err.Error()+"."))
				}
				return
			}
			f.fill(container.New(mainAndSide{}, parts.Column(look.SectionApart, priceSection(job, result), costSection(job, result)), sealSection(f.row, result)))
		}
	})
}

// sealSection is what a revision came to, and the seal by which it is known.
func sealSection(r catalog.RevisionRow, result quote.Result) fyne.CanvasObject {
	hash := parts.NewParagraph(spaced(r.SHA256), parts.MutedStyle)
	return parts.NewSection("Sealed", "", parts.Column(0, parts.NewText("total with tax", parts.CaptionStyle),
		parts.NewText(present.Amount(result.Price.Total), parts.DisplayStyle)),
		parts.Column(3, facts(96, [][2]string{
			{"Margin", percent(r.Margin)}, {"Hours", r.Hours}, {"Deposit", present.Amount(result.Price.Deposit)},
		})...),
		parts.Column(2, parts.NewText("SHA-256 of the job and its result", parts.CaptionStyle), hash))
}

// spaced breaks a hash into groups of eight, so that it can be read aloud and breaks its lines.
func spaced(hash string) string {
	out := ""
	for i := 0; i < len(hash); i += 8 {
		if i > 0 {
			out += " "
		}
		out += hash[i:min(i+8, len(hash))]
	}
	return out
}

func priceSection(job quote.Job, r quote.Result) fyne.CanvasObject {
	rows := parts.Column(0)
	for _, g := range r.Garments {
		rows.Add(parts.NewBasisRow(parts.BasisText{
			Name: garmentName(job, g.ID), Basis: fmt.Sprintf("%d × %s and what sizes add", g.Pieces, present.Amount(g.UnitPrice)), Amount: present.Amount(g.Goods),
		}))
	}
	for _, x := range r.Price.ExtraLines {
		rows.Add(parts.NewBasisRow(parts.BasisText{Name: x.Name, Basis: x.Basis, Amount: present.Amount(x.Amount)}))
	}
	for _, l := range totalLines(r.Price) {
		rows.Add(parts.NewBasisRow(l))
	}
	return parts.NewSection("Price", "", rows)
}

// totalLines are what makes the total besides goods and extras, without what is nothing.
func totalLines(t quote.Totals) []parts.BasisText {
	var out []parts.BasisText
	add := func(name, key string, amount string, sign int, strong bool) {
		if sign != 0 {
			out = append(out, parts.BasisText{Name: name, Basis: t.Basis[key], Amount: present.Grouped(amount), Strong: strong})
		}
	}
	add("Minimum order", "minimum_order", t.MinimumOrder.String(), t.MinimumOrder.Sign(), false)
	add("Rush", "rush", t.Rush.String(), t.Rush.Sign(), false)
	add("Discount", "discount", t.Discount.String(), t.Discount.Sign(), false)
	add("Art", "art", t.Art.String(), t.Art.Sign(), false)
	add("Delivery", "delivery", t.Delivery.String(), t.Delivery.Sign(), false)
	add("Subtotal", "subtotal", t.Subtotal.String(), 1, true)
	add("Sales tax", "tax", t.Tax.String(), t.Tax.Sign(), false)
	add("Card fee", "card_fee", t.CardFee.String(), t.CardFee.Sign(), false)
	add("Total", "total", t.Total.String(), 1, true)
	return out
}

func costSection(job quote.Job, r quote.Result) fyne.CanvasObject {
	rows := parts.Column(0)
	for _, l := range r.Cost.Lines {
		if l.Amount.Sign() == 0 {
			continue
		}
		c := look.KindOf(l.Kind).Color()
		rows.Add(parts.NewBasisRow(parts.BasisText{Name: costName(job, l), Basis: l.Basis, Amount: present.Amount(l.Amount), Mark: &c}))
	}
	s := parts.NewSection("Cost", "as it was worked out then", rows)
	s.Right.Add(parts.NewText(present.Amount(r.Cost.Total), parts.StrongStyle))
	return s
}

// costName says what a line of cost is, and for which garment, placement or supplier.
func costName(job quote.Job, l quote.CostLine) string {
	name := look.KindOf(l.Kind).Name()
	switch l.Kind {
	case quote.KindSpoilage:
		name = "Spoilage"
	case quote.KindPressWear:
		name = "Press wear"
	case quote.KindDelivery:
		name = "Delivery"
	case quote.KindExtra:
		name = "Extra"
	}
	if ref := refName(job, l.Ref); ref != "" {
		name += ", " + ref
	}
	return name
}

func refName(job quote.Job, id string) string {
	for _, s := range job.Suppliers {
		if s.ID == id {
			return s.Name
		}
	}
	for _, p := range job.Placements {
		if p.ID == id {
			return or(p.Name, id)
		}
	}
	for _, e := range job.Extras {
		if e.ID == id {
			return e.Name
		}
	}
	return garmentName(job, id)
}

func garmentName(job quote.Job, id string) string {
	for _, g := range job.Garments {
		if g.ID != id {
			continue
		}
		if g.Color != "" {
			return or(g.Name, g.Style) + ", " + g.Color
		}
		return or(g.Name, g.Style)
	}
	return id
}
