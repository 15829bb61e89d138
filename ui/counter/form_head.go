package counter

import (
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// head is whom the job is for, and by when.
type head struct {
	box       *fyne.Container
	customer  *parts.Typeahead
	name      *entry
	needed    *entry
	neededBox *parts.Captioned
	level     *parts.Choice
	levels    []string
	title     *entry
	contact   *entry
	email     *entry
	next      func() // where Enter leads from the customer
	bare      string // the customer's name alone, for editing
	caption   *parts.Text
	noted     int64                 // the customer whom the caption speaks of
	note      func(id int64) string // what matters of a customer
}

func newHead(p *present.Counter) *head {
	h := &head{note: p.CustomerNote}
	h.customer = parts.NewTypeahead("Name of a customer, or a new one", func(text string, show func([]parts.Option)) {
		show(customerOptions(p.FindCustomers(text)))
	})
	h.customer.OpenEmpty = true
	h.customer.OnChosen = func(o parts.Option) {
		p.SetCustomer(o.Any.(catalog.DraftCustomer))
		h.next()
	}
	h.customer.OnUnknown = func(string) { h.next() }
	h.wireName(p)
	h.needed = newEntry(p, parts.NewField("18 dec, fri, +10"), func(text string) {
		if _, ok := present.ParseDate(text, p.Day()); ok || strings.TrimSpace(text) == "" {
			p.SetNeededBy(text)
		}
	})
	h.wireDate(p)
	h.level = parts.NewChoice(nil, func(o parts.Option) { p.SetLevel(o.Key) })
	h.title = newEntry(p, parts.NewField("What the job is, for the quote"), p.SetTitle)
	h.contact = newEntry(p, parts.NewField(""), p.SetContact)
	h.email = newEntry(p, parts.NewField(""), p.SetEmail)
	h.neededBox = parts.NewCaptioned("Needed by", h.needed.Field)
	customer := parts.NewCaptioned("Customer", h.customer.Field)
	h.caption = customer.Caption
	h.box = parts.Column(9,
		parts.TopRow(10, []parts.Track{parts.Share(2.2), parts.Share(1.12), parts.Share(0.86)},
			customer, h.neededBox, parts.NewCaptioned("Price level", h.level)),
		parts.TopRow(10, []parts.Track{parts.Share(2.2), parts.Share(1.12), parts.Share(0.86)},
			parts.NewCaptioned("Job", h.title.Field), parts.NewCaptioned("E-mail", h.email.Field),
			parts.NewCaptioned("Contact", h.contact.Field)))
	return h
}

// wireName reports the name at every key, besides the search that the typeahead does. While it is edited the field
// holds the name alone.
func (h *head) wireName(p *present.Counter) {
	f := h.customer.Field
	search := f.OnChanged
	h.name = newEntry(p, f, func(text string) {
		p.SetCustomerName(text)
		search(text)
	})
	left := f.OnFocus
	f.OnFocus = func(gained bool) {
		if gained {
			f.SetText(h.bare)
		}
		left(gained)
	}
}

// wireDate takes whatever stands in the field when it is left, so that a date that cannot be read is said.
func (h *head) wireDate(p *present.Counter) {
	f := h.needed.Field
	left := f.OnFocus
	f.OnFocus = func(gained bool) {
		if !gained && f.Text() != h.needed.shown {
			p.SetNeededBy(f.Text())
		}
		left(gained)
	}
}

func customerOptions(found []catalog.DraftCustomer) []parts.Option {
	options := make([]parts.Option, len(found))
	for i, c := range found {
		options[i] = parts.Option{Key: c.Name, Name: c.Name, Detail: firstOf(c.Contact, c.Email, c.Phone), Any: c}
	}
	return options
}

func firstOf(words ...string) string {
	for _, w := range words {
		if w != "" {
			return w
		}
	}
	return ""
}

func (h *head) show(v *present.View, anew bool) {
	c := v.Form.Customer
	h.bare = c.Name
	h.told(c.ID, anew)
	shown := c.Name
	if c.Name != "" && c.Contact != "" {
		shown += " · " + c.Contact
	}
	h.name.shown = shown
	if !h.name.Focused() {
		h.name.SetText(shown)
	} else if anew {
		h.name.SetText(c.Name)
	}
	h.needed.fill(v.Form.NeededBy, anew)
	h.needed.SetUnit(v.Form.Away)
	h.neededBox.SetProblem(v.Problem("needed_by"))
	if strings.Join(h.levels, "\n") != strings.Join(v.Form.Levels, "\n") {
		h.levels = v.Form.Levels
		h.level.SetOptions(parts.Words(v.Form.Levels...))
	}
	h.level.SetKey(v.Form.Level)
	h.title.fill(v.Form.Title, anew)
	h.contact.fill(c.Contact, anew)
	h.email.fill(c.Email, anew)
}

// told says over the name what matters of a customer the shop keeps; it is looked up when another one comes.
func (h *head) told(id int64, anew bool) {
	if id == h.noted && !anew {
		return
	}
	h.noted = id
	words := "Customer"
	if note := h.note(id); note != "" {
		words += " · " + note
	}
	h.caption.SetText(words)
}
