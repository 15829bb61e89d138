package book

import (
	"context"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/parts"
)

// Query says which quotes are listed and in which order; what is empty says nothing.
type Query struct {
	Words string // any word, number, date or amount
	State string
	Sort  string // one of the orders of columns; empty: the one changed last first
	Down  bool   // the largest first
}

// Back takes something back that was done.
type Back = func(context.Context) error

// Listing is the quotes that fit a query, read from the shop file a few at a time.
type Listing interface {
	parts.Many[catalog.QuoteRow]
	// Place is where a quote stands, -1 where it is not among them.
	Place(id int64) int
}

// Quotes is what the list asks of the shop file. What changes a quote is in the interfaces below; where one of those is
// missing, the place does not offer it.
type Quotes interface {
	// List gives the quotes that fit a query.
	List(ctx context.Context, q Query) (Listing, error)
	// Draft reads the draft of a quote.
	Draft(ctx context.Context, id int64) (catalog.Draft, error)
	// Open gives the quotes that are drafts, sent or accepted and can be priced, each as a job of today.
	Open(ctx context.Context) ([]Open, error)
}

// Ledger keeps what happens to a quote. Days are 2006-01-02.
type Ledger interface {
	// ToDo is what needs doing on a day, the most urgent first.
	ToDo(ctx context.Context, day string) ([]catalog.ToDo, error)
	// Quote is all about one quote beside its drafts and frozen documents.
	Quote(ctx context.Context, id int64) (catalog.QuoteHead, error)
	// Opened reads a frozen revision as it was sealed; the error is catalog.ErrAltered where it is not as it was.
	Opened(ctx context.Context, revision int64) (quote.Job, quote.Result, error)
	// Send freezes the next revision, one for each option, and returns its number.
	Send(ctx context.Context, id int64, how string) (number int, err error)
	// Accept takes a revision as the one the customer wants.
	Accept(ctx context.Context, id, revision int64, on, poNumber string) error
	// SetState declines, and takes decisions back.
	SetState(ctx context.Context, id int64, state, note string) error
	// SetDates changes the follow-up day and the last day of validity; empty takes one away.
	SetDates(ctx context.Context, id int64, followUp, expires string) error
	// Duplicate makes an unsaved draft of a quote for so many pieces; 0: as many as before.
	Duplicate(ctx context.Context, id int64, pieces int) (catalog.Draft, error)
	// TakeStep and UndoStep date the steps of an accepted job.
	TakeStep(ctx context.Context, id int64, s catalog.Step) error
	UndoStep(ctx context.Context, id int64, name string) error
	// Pay records a payment; above the balance it is refused with catalog.OverBalance.
	Pay(ctx context.Context, p catalog.Payment) (catalog.Payment, error)
	RemovePayment(ctx context.Context, payment int64) error
	// Finish closes a job with what it really took; Leftovers is what the shelf could keep of it.
	Finish(ctx context.Context, id int64, a catalog.Actuals) error
	Leftovers(ctx context.Context, id int64) ([]catalog.ShelfItem, error)
}

// Options keeps the jobs that a quote offers side by side.
type Options interface {
	OptionDraft(ctx context.Context, id int64, position int) (catalog.Draft, error)
	// CopyOption offers a copy of an option, or of the quote's only job, beside those there are.
	CopyOption(ctx context.Context, id int64, from int, name string) (catalog.Option, error)
	RenameOption(ctx context.Context, id int64, position int, name string) error
	// RemoveOption offers a job no more, and gives the way back.
	RemoveOption(ctx context.Context, id int64, position int) (back Back, err error)
}

// Buying is what has to be bought for accepted quotes, over all of them.
type Buying interface {
	// PurchaseList is combined over accepted quotes; all: what is done with too.
	PurchaseList(ctx context.Context, all bool) ([]catalog.PurchaseRow, error)
	// MarkPurchase puts whole parts to "ordered", "received" or back to "open".
	MarkPurchase(ctx context.Context, parts []int64, to, note string) error
	// ReceivePart takes in a delivery: what came, and what will not.
	ReceivePart(ctx context.Context, part int64, received, short int, note string) error
}

// People is the shop's customers.
type People interface {
	Customers(ctx context.Context, words string, limit int) ([]catalog.Customer, error)
	Customer(ctx context.Context, id int64) (catalog.Customer, error)
	SaveCustomer(ctx context.Context, c catalog.Customer) (catalog.Customer, error)
	// MergeCustomers gives everything of one customer to another, in one go, and gives the way back.
	MergeCustomers(ctx context.Context, keep, gone int64) (back Back, err error)
	// DoubleCustomers finds those that look like one.
	DoubleCustomers(ctx context.Context) ([][]catalog.Customer, error)
	Designs(ctx context.Context, customer int64) ([]catalog.Design, error)
	SaveDesign(ctx context.Context, d catalog.Design) (catalog.Design, error)
	RemoveDesign(ctx context.Context, id int64) error
	// KeepArtwork keeps the artwork of an accepted quote on file, and gives the way back.
	KeepArtwork(ctx context.Context, id int64) (kept []catalog.Design, back Back, err error)
	// Cards are the rate cards that artwork can be made on.
	Cards(ctx context.Context) ([]Card, error)
	// Of gives the quotes of a customer, the one changed last first.
	Of(ctx context.Context, customer int64) ([]catalog.QuoteRow, error)
	// Levels are the names of the shop's price levels.
	Levels(ctx context.Context) ([]string, error)
}

// Card is a rate card by its key and name.
type Card struct{ Key, Name string }

// Shelf is what was left over and is kept.
type Shelf interface {
	Shelf(ctx context.Context) ([]catalog.ShelfItem, error)
	SaveShelfItem(ctx context.Context, s catalog.ShelfItem) (catalog.ShelfItem, error)
	RemoveShelfItem(ctx context.Context, id int64) error
	// ShelfOffers are the things on the shelf that a draft could use.
	ShelfOffers(ctx context.Context, d catalog.Draft) ([]catalog.ShelfOffer, error)
	// UseFromShelf takes n of a thing for an accepted quote, which then needs so many fewer bought, and gives the way back.
	UseFromShelf(ctx context.Context, item, quote int64, n int) (back Back, err error)
}

// Paper is a document of a quote.
type Paper string

// The documents that the quote's page offers.
const (
	QuotePaper   Paper = "Quote PDF"
	EmailPaper   Paper = "E-mail"
	ProofPaper   Paper = "Proof"
	ConfirmPaper Paper = "Order confirmation"
	InvoicePaper Paper = "Invoice"
	ReceiptPaper Paper = "Receipt"
	PackingPaper Paper = "Packing list"
	BagPaper     Paper = "Bag list"
	LabelPaper   Paper = "Labels"
	TicketPaper  Paper = "Press ticket"
	ReprintPaper Paper = "Reprint ticket"
	BuyPaper     Paper = "Purchase list"
	LayoutPaper  Paper = "Sheet layouts"
	CostPaper    Paper = "Cost sheet"
)

// Spoiled is a number of pieces of a size that have to be pressed again, or the one piece of a line of the roster.
type Spoiled struct {
	Garment, Size string
	Qty           int
	Row           int // line of the roster, from 1; 0: pieces that are nobody's own
}

// Papers writes documents, off the window's goroutine.
type Papers interface {
	// Write writes a document of a quote as it was accepted, else as it was sent last, else as it stands, and returns
	// the file's path. Only a reprint ticket looks at the spoiled pieces.
	Write(ctx context.Context, id int64, p Paper, spoiled []Spoiled) (path string, err error)
	// Bookkeeping writes what was invoiced and paid between two days as a table.
	Bookkeeping(ctx context.Context, from, to string) (path string, err error)
	// BuyingList writes the combined purchase list of a supplier.
	BuyingList(ctx context.Context, supplier string) (path string, err error)
	// Text is the quote, and ReadyText that it can be collected, as plain text for a message.
	Text(ctx context.Context, id int64) (string, error)
	ReadyText(ctx context.Context, id int64) (string, error)
	// OpenFile opens a file in the system's viewer or mail program.
	OpenFile(path string) error
}

// Comparing says what differs between two priced jobs; the differences of money add up.
type Comparing interface {
	// Today prices a quote's draft with the prices of today.
	Today(ctx context.Context, id int64) (quote.Job, quote.Result, error)
	// Standing prices it with the prices of the day it is quoted on.
	Standing(ctx context.Context, id int64) (quote.Job, quote.Result, error)
}
