package catalog

import "pressworth/quote/money"

// StyleFilter says which blanks a list shows; empty fields say nothing.
type StyleFilter struct {
	Words      string // beginnings of words, as in a search
	SupplierID int64
	Category   string
	Shade      string
	Size       string        // available in it
	AtMost     *money.Amount // the lowest price in force is not above this
	Retired    bool          // retired ones instead of the others
}
