package present

import (
	"strings"

	"pressworth/catalog"
)

// Knower is a Shop that keeps more of a customer than a draft names: level, terms, and whether tax is due.
type Knower interface {
	// Known gives a customer the shop keeps; false where it does not.
	Known(id int64) (catalog.Customer, bool)
}

func (c *Counter) known(id int64) (catalog.Customer, bool) {
	k, ok := c.shop.(Knower)
	if !ok || id == 0 {
		return catalog.Customer{}, false
	}
	return k.Known(id)
}

// CustomerNote says of a customer the shop keeps what matters at the counter: when they pay, and whether tax is due;
// nothing of anybody else.
func (c *Counter) CustomerNote(id int64) string {
	k, ok := c.known(id)
	if !ok {
		return ""
	}
	var words []string
	if k.Terms != "" && k.Terms != catalog.PayOnPickUp {
		words = append(words, "pays "+k.TermsInWords())
	}
	switch today := c.today(); {
	case k.ExemptOn(today):
		words = append(words, "exempt from tax")
	case k.TaxExempt:
		words = append(words, "exemption has run out on "+k.CertificateUntil)
	}
	return strings.Join(words, " · ")
}
