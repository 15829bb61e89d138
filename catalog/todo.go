package catalog

import "pressworth/quote/money"

// Kinds of things to do.
const (
	ToFollowUp = "follow up"
	Expiring   = "expiring"
	ToApprove  = "get approved"
	ToOrder    = "order"
	ToTakeIn   = "take in"
	ToPress    = "press"
	ToHandOver = "hand over"
	Overdue    = "overdue"
	ToCollect  = "collect money"
)

// ToDo is one thing that needs doing on a day.
type ToDo struct {
	QuoteRow
	Kind string // one of the kinds above
	Due  string // 2006-01-02, or empty
	Text string // in words, like "expires on 2026-05-31"
}

// PurchaseRow is one line of the purchase list that is combined over accepted quotes.
type PurchaseRow struct {
	Kind         string // ShelfBlank or ShelfTransfer
	Supplier     string // key
	SupplierName string
	Style        string // blanks
	Name         string
	Color        string
	Size         string
	Card         string // transfers: the rate card's key
	CardName     string
	What         string // transfers: the placement's name, the sheet size or the length
	Needed       int
	Ordered      int
	Received     int
	Short        int // delivered short and closed
	Quotes       []PurchasePart
}

// Open is how many are still to be ordered.
func (r PurchaseRow) Open() int { return max(0, r.Needed-r.Ordered) }

// Awaited is how many are ordered and not here yet.
func (r PurchaseRow) Awaited() int { return max(0, r.Ordered-r.Received-r.Short) }

// PurchasePart is what one quote needs of a purchase row.
type PurchasePart struct {
	ID       int64 // of the row in the shop file
	QuoteID  int64
	Number   string
	NeededBy string
	Needed   int
	Ordered  int
	Received int
	Short    int
	Note     string // like what was said about a short delivery
}

// SupplierValue is what is bought from a supplier over several quotes.
type SupplierValue struct {
	Supplier string
	Value    money.Amount
}

// QuoteHead is all about one quote beside its drafts and frozen documents.
type QuoteHead struct {
	QuoteRow
	CustomerID int64
	Options    []Option      // empty: a quote without options
	Revisions  []RevisionRow // latest first
	AcceptedID int64         // the accepted revision, 0: none
	Steps      []Step        // those taken, in their order
	Account    Account
	Actuals    *Actuals // nil: not finished
	History    []StateChange
	PONumber   string
	Why        string // why it was declined
}

// StateChange is when a quote came into a state.
type StateChange struct {
	State string
	At    string // RFC 3339
	Note  string
}
