package present

import (
	"strings"

	"pressworth/catalog"
)

// SetCustomer takes a customer the shop knows, with their price level and whether tax is due from them.
func (c *Counter) SetCustomer(k catalog.DraftCustomer) {
	known, ok := c.known(k.ID)
	c.edit("", func(d *catalog.Draft) {
		d.Customer = k
		if ok {
			d.Level, d.TaxExempt = known.Level, known.ExemptOn(c.today())
		}
	})
}

// SetCustomerName takes the name as typed: somebody not (yet) kept.
func (c *Counter) SetCustomerName(name string) {
	c.edit("customer.name", func(d *catalog.Draft) {
		if d.Customer.Name != name {
			d.Customer.ID = 0
		}
		d.Customer.Name = name
	})
}

// SetContact takes the person to talk to.
func (c *Counter) SetContact(s string) {
	c.edit("customer.contact", func(d *catalog.Draft) { d.Customer.Contact = s })
}

// SetEmail takes the customer's e-mail address.
func (c *Counter) SetEmail(s string) {
	c.edit("customer.email", func(d *catalog.Draft) { d.Customer.Email = strings.TrimSpace(s) })
}

// SetTitle names the job.
func (c *Counter) SetTitle(s string) { c.edit("title", func(d *catalog.Draft) { d.Title = s }) }

// SetNeededBy takes the day the goods are needed, in any of the forms ParseDate reads; anything else is kept as typed.
func (c *Counter) SetNeededBy(s string) {
	c.edit("needed_by", func(d *catalog.Draft) {
		d.NeededBy = strings.TrimSpace(s)
		if t, ok := ParseDate(s, c.shop.Now()); ok {
			d.NeededBy = t.Format(iso)
		}
	})
}

// SetLevel chooses the price level.
func (c *Counter) SetLevel(name string) { c.edit("level", func(d *catalog.Draft) { d.Level = name }) }

// SetExempt frees the customer from tax, or not.
func (c *Counter) SetExempt(yes bool) {
	c.edit("tax_exempt", func(d *catalog.Draft) { d.TaxExempt = yes })
}

// SetLadder takes the quantities of the ladder; empty: the shop's.
func (c *Counter) SetLadder(s string) { c.edit("ladder", func(d *catalog.Draft) { d.Ladder = s }) }

// SetNotes takes what is printed on the quote.
func (c *Counter) SetNotes(s string) { c.edit("notes", func(d *catalog.Draft) { d.Notes = s }) }
