package blanks

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/calendar"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// supplierPage edits the suppliers of blanks and transfers in place of the list.
type supplierPage struct {
	place  *Place
	object fyne.CanvasObject
	chips  *fyne.Container
	form   *form.Form
	fault  *parts.Band
	save   *parts.Button

	all     []catalog.Supplier
	was     catalog.Supplier // the one that is shown; ID 0: a new one
	changed bool
}

func newSupplierPage(p *Place) *supplierPage {
	h := &supplierPage{place: p, chips: parts.Flow(6), form: form.New(), fault: parts.NewBand(parts.Fault, "")}
	h.save = parts.NewDeed(parts.Filled, "Save supplier", "", h.keep)
	h.form.OnChanged = func(string) {
		h.changed = true
		h.judge()
	}
	f := h.form
	section := parts.NewSection("Suppliers", "whom blanks and transfers are bought from", h.chips, h.fault, f.Rest(),
		parts.Fields(190, f.Text("name", "Name", "like Northgate Blanks"), f.Text("contact", "Contact", "person, telephone, e-mail")),
		parts.Fields(150, f.Number("freight", "Freight an order", ""), f.Number("free_from", "Free from", "0: never"),
			f.Number("share_percent", "Of the freight, a job carries", "%"), f.Number("minimum_order", "Order at least", "")),
		parts.Fields(150, f.Number("transit_days", "Days on the way", "working days"), f.Text("cut_off", "Order by", "like 14:00"),
			f.Text("closed", "Closed on, divided by commas", "24 dec, 4 thu nov +1")),
		parts.Flow(16, f.Check("federal", "closed on US federal holidays"), f.Check("saturday_stays", "one on a Saturday is not moved to Friday"),
			f.Check("saturday", "works on Saturdays")),
		f.Text("notes", "Notes", ""))
	section.Right.Add(parts.NewButton(parts.Quiet, "Back to the blanks", "Esc", p.closeSuppliers))
	section.Right.Add(h.save)
	h.object = parts.PageInset(parts.NewPageScroll(parts.Column(look.SectionApart, section)))
	return h
}

// open reads the suppliers and shows one, the first at first.
func (h *supplierPage) open(id int64) {
	parts.Background(func() func() {
		all, err := h.place.Keeper.Suppliers(context.Background())
		return func() {
			if err != nil {
				h.fault.SetText("The suppliers could not be read: " + err.Error())
				return
			}
			h.all = all
			at := slices.IndexFunc(all, func(s catalog.Supplier) bool { return s.ID == id })
			if len(all) > 0 {
				h.show(all[max(at, 0)])
			} else {
				h.fresh()
			}
		}
	})
}

// show fills the form with a supplier.
func (h *supplierPage) show(s catalog.Supplier) {
	h.was, h.changed = s, s.ID == 0
	h.fault.SetText("")
	h.chips.Objects = nil
	for _, x := range h.all {
		c := parts.NewWordChip(x.Name, func() { h.choose(x) })
		c.SetChosen(x.ID == s.ID)
		h.chips.Add(c)
	}
	h.chips.Add(parts.NewSmallButton(parts.Quiet, "+ supplier", func() { h.choose(catalog.Supplier{}) }))
	h.chips.Refresh()
	for path, text := range supplierText(s) {
		h.form.Set(path, text)
	}
	h.judge()
	parts.Focus(h.form.Field("name"))
}

func (h *supplierPage) fresh() { h.show(catalog.Supplier{SharePercent: money.Int(100)}) }

// choose goes to another supplier, unless this one was changed.
func (h *supplierPage) choose(s catalog.Supplier) {
	switch {
	case h.changed && h.was.ID != 0:
		h.fault.SetText("Save " + h.was.Name + " first, or leave the page to drop what was typed.")
	case s.ID == 0:
		h.fresh()
	default:
		h.show(s)
	}
}

func supplierText(s catalog.Supplier) map[string]string {
	return map[string]string{
		"name": s.Name, "contact": s.Contact, "notes": s.Notes, "cut_off": s.CutOff,
		"freight": s.Freight.String(), "free_from": s.FreeFrom.String(), "share_percent": s.SharePercent.String(),
		"minimum_order": s.MinimumOrder.String(), "transit_days": strconv.Itoa(s.TransitDays),
		"closed": strings.Join(s.Calendar.Closed, ", "), "federal": yes(s.Calendar.Federal),
		"saturday_stays": yes(s.Calendar.SaturdayStays), "saturday": yes(s.Calendar.Saturday),
	}
}

// supplier reads the form back.
func (h *supplierPage) supplier() (catalog.Supplier, []quote.Problem) {
	r := form.Reader{Get: h.form.Get}
	s := h.was
	s.Name, s.Contact, s.Notes = r.Need("name", "the supplier's name"), r.Text("contact"), r.Text("notes")
	s.Freight, s.FreeFrom, s.MinimumOrder = r.Amount("freight"), r.Amount("free_from"), r.Amount("minimum_order")
	s.SharePercent, s.TransitDays = r.Percent("share_percent", 101), r.Count("transit_days")
	s.CutOff = r.Text("cut_off")
	if _, err := calendar.ParseClock(s.CutOff); s.CutOff != "" && err != nil {
		r.Say("cut_off", "enter a time of day like 14:00")
	}
	s.Calendar = calendar.Settings{
		Saturday: r.Text("saturday") != "", Federal: r.Text("federal") != "", SaturdayStays: r.Text("saturday_stays") != "",
		Closed: r.Words("closed"),
	}
	if _, err := calendar.New(s.Calendar); err != nil {
		r.Say("closed", err.Error())
	}
	if s.TransitDays > 60 {
		r.Say("transit_days", "enter 0 to 60 days")
	}
	for _, x := range h.all {
		if x.ID != s.ID && strings.EqualFold(x.Name, s.Name) {
			r.Say("name", "there is a supplier of this name already")
		}
	}
	if s.Key == "" {
		s.Key = h.key(s.Name)
	}
	return s, r.Problems
}

// key makes a short name for job files that no supplier has yet.
func (h *supplierPage) key(name string) string {
	word := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.ToLower(strings.SplitN(strings.TrimSpace(name), " ", 2)[0]))
	if word == "" {
		word = "supplier"
	}
	key := word
	for n := 2; slices.ContainsFunc(h.all, func(s catalog.Supplier) bool { return s.Key == key }); n++ {
		key = word + "-" + strconv.Itoa(n)
	}
	return key
}

func (h *supplierPage) judge() {
	_, problems := h.supplier()
	h.form.Show(problems)
	if h.changed && len(problems) == 0 {
		h.save.Enable()
	} else {
		h.save.Disable()
	}
}

func (h *supplierPage) keep() {
	s, problems := h.supplier()
	if len(problems) > 0 {
		return
	}
	before := h.was
	parts.Background(func() func() {
		kept, err := h.place.Keeper.SaveSupplier(context.Background(), s)
		return func() {
			var found quote.Problems
			switch {
			case errors.As(err, &found):
				h.form.Show(found)
			case err != nil:
				h.fault.SetText("The supplier could not be saved: " + err.Error())
			default:
				if before.ID != 0 {
					h.place.did(h.place.supplierStep(before, kept))
				}
				h.changed = false
				h.open(kept.ID)
				h.place.filter.offer(h.place.catalog)
			}
		}
	})
}

// supplierStep is the way back from a supplier as it is kept to what it was.
func (p *Place) supplierStep(before, kept catalog.Supplier) step {
	put := func(s catalog.Supplier) func(context.Context) error {
		return func(ctx context.Context) error {
			_, err := p.Keeper.SaveSupplier(ctx, s)
			return err
		}
	}
	return step{before.Name + " changed back.", swap(put(before), put(kept))}
}

// openSuppliers shows the suppliers in place of the list.
func (p *Place) openSuppliers() {
	if p.houses == nil {
		p.houses = newSupplierPage(p)
		p.stack.Add(p.houses.object)
	}
	p.list.Hide()
	p.houses.object.Show()
	p.houses.open(p.houses.was.ID)
}

// closeSuppliers goes back to the list. What was typed and not saved is said, once.
func (p *Place) closeSuppliers() {
	h := p.houses
	if h.changed && h.form.Get("name") != "" && h.fault.Text() == "" {
		h.fault.SetText("This has not been saved. Save it, or leave once more to drop it.")
		return
	}
	h.changed = false
	h.object.Hide()
	p.list.Show()
	p.Shown()
	p.Focus()
}
