package present

import (
	"slices"
	"strings"

	"pressworth/catalog"
)

// OfferedExtras are the shop's extras that the draft does not have yet.
func (c *Counter) OfferedExtras() []catalog.Extra {
	var out []catalog.Extra
	for _, e := range c.book.Shop.Extras {
		if extraAt(&c.draft, e.Key) == nil {
			out = append(out, e)
		}
	}
	return out
}

// AddExtra takes one of the shop's extras.
func (c *Counter) AddExtra(key string) {
	for _, e := range c.OfferedExtras() {
		if e.Key == key {
			c.edit("", func(d *catalog.Draft) { d.Extras = append(d.Extras, catalog.TakeExtra(e)) })
			return
		}
	}
}

// RemoveExtra takes an extra off the draft.
func (c *Counter) RemoveExtra(key string) {
	c.edit("", func(d *catalog.Draft) {
		d.Extras = slices.DeleteFunc(d.Extras, func(e catalog.DraftExtra) bool { return e.Key == key })
	})
}

// SetExtraCharge takes what is charged for an extra.
func (c *Counter) SetExtraCharge(key, charge string) {
	c.edit("charge "+key, func(d *catalog.Draft) {
		if e := extraAt(d, key); e != nil {
			e.Charge = strings.TrimSpace(charge)
		}
	})
}

// SetArtMinutes takes the minutes at the drawing table.
func (c *Counter) SetArtMinutes(s string) {
	c.edit("art.minutes", func(d *catalog.Draft) { d.ArtMinutes = bare(s, "minutes", "min") })
}

// SetArtCharge takes what is charged for artwork.
func (c *Counter) SetArtCharge(s string) {
	c.edit("art.charge", func(d *catalog.Draft) { d.ArtCharge = strings.TrimSpace(s) })
}

// SetRush takes the rush surcharge in percent.
func (c *Counter) SetRush(s string) {
	c.edit("rush", func(d *catalog.Draft) { d.RushPercent = bare(s, "%") })
}

// SetOff takes a discount: a percentage with its sign ("10 %"), or an amount.
func (c *Counter) SetOff(s string) {
	c.edit("off", func(d *catalog.Draft) {
		d.DiscountPercent, d.Discount = "", strings.TrimSpace(s)
		if strings.Contains(s, "%") {
			d.DiscountPercent, d.Discount = bare(s, "%"), ""
		}
	})
}

// SetDeliveryCost takes what delivery costs the shop.
func (c *Counter) SetDeliveryCost(s string) {
	c.edit("delivery_cost", func(d *catalog.Draft) { d.DeliveryCost = strings.TrimSpace(s) })
}

// SetDeliveryCharge takes what the customer pays for delivery.
func (c *Counter) SetDeliveryCharge(s string) {
	c.edit("delivery_charge", func(d *catalog.Draft) { d.DeliveryCharge = strings.TrimSpace(s) })
}

// bare takes the units off a number as typed.
func bare(s string, units ...string) string {
	for _, u := range units {
		s = strings.ReplaceAll(strings.ToLower(s), u, "")
	}
	return strings.TrimSpace(s)
}

// FindExtras finds the shop's extras that the draft does not have yet, by the start of a word.
func (c *Counter) FindExtras(query string) []catalog.Extra {
	var out []catalog.Extra
	for _, e := range c.OfferedExtras() {
		if Matches(e.Extra.Name, query) {
			out = append(out, e)
		}
	}
	return out
}
