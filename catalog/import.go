package catalog

import "fmt"

// ImportOptions say how a price file is to be taken.
type ImportOptions struct {
	SupplierID int64
	FileName   string
	ValidFrom  string // 2006-01-02: since when its prices hold
	Whole      bool   // the file lists all the supplier has: what is not in it is gone
}

// Kinds of change a price file makes to one size in one colour.
const (
	ChangeNew     = "new"
	ChangeDearer  = "dearer"
	ChangeCheaper = "cheaper"
	ChangeSame    = "unchanged"
	ChangeGone    = "gone"
)

// PriceChange is what a price file changes about one size in one colour.
type PriceChange struct {
	Kind   string
	Line   int // in the file; 0 where it is gone
	Style  string
	Color  string
	Size   string
	Before string // prices as WriteBreaks writes them; empty: none
	After  string
}

// Spread says how far apart changes lie, in percent of the price before: the least, the middle and the largest.
type Spread struct{ Least, Middle, Most float64 }

// ImportReport is what a price file would change, or has changed. Counts are of sizes in colours; lists are cut off
// after their first thousand, counts are not.
type ImportReport struct {
	Rows      int // taken from the file, or refused
	Counts    map[string]int
	NewStyles int
	Gone      int // styles no longer listed
	Refused   int
	DearerBy  Spread
	CheaperBy Spread
	Changes   []PriceChange
	Refusals  []Refused
}

// ListedChanges is how many changes and refusals a report lists.
const ListedChanges = 1000

// TouchedQuote is an open quote whose garments a price file touches, with what it comes to before and after.
type TouchedQuote struct {
	ID           int64
	Number       string
	Customer     string
	Title        string
	MarginBefore string // percent; empty where it cannot be priced
	MarginAfter  string
	TotalBefore  string
	TotalAfter   string
	BelowFloor   bool   // after, and not before
	Unpriced     string // why not, if so
}

// Stale says how many days old a price list is on a day where that is more than the shop allows; 0 where it is not.
// Days are 2006-01-02; a day that cannot be read is not stale.
func (s Shop) Stale(pricedOn, on string) int {
	age, ok := daysBetween(pricedOn, on)
	if !ok || s.StaleDays <= 0 || age <= s.StaleDays {
		return 0
	}
	return age
}

// EditedError says why an import cannot be undone: these were changed, or used, since.
type EditedError struct {
	Styles []string // numbers
	Quotes []string // numbers of quotes that name a style which the import brought
}

// Error names at most ten of them.
func (e *EditedError) Error() string {
	if len(e.Styles) > 0 {
		return fmt.Sprintf("the import cannot be undone: edited since: %s", someOf(e.Styles))
	}
	return fmt.Sprintf("the import cannot be undone: its styles are used in quotes %s", someOf(e.Quotes))
}

func someOf(names []string) string {
	const most = 10
	if len(names) > most {
		return fmt.Sprintf("%v and %d more", names[:most], len(names)-most)
	}
	return fmt.Sprint(names)
}
