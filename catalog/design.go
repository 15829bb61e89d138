package catalog

import "pressworth/quote"

// Design is artwork on file for a customer, with what worked when it was last pressed.
type Design struct {
	ID         int64
	CustomerID int64
	Name       string // like "Full back"; the placement it was kept from
	File       string // path of the picture, or empty
	Sizes      []DesignSize
	Inks       string // names divided by commas, a count, or empty for full colour
	FullColor  bool
	Stitches   string // thousands, embroidery
	Card       string // key of the rate card it was made on; its set-up is paid there
	Settings   string // what worked at the press, in words
	LastRun    string // 2006-01-02
	LastQuote  string // number of the quote
	Runs       int    // how often it has been finished
	// ChargeAgain is the shop's word that set-up and art are charged on a repeat too.
	ChargeAgain bool
	Notes       string
}

// DesignSize is one size the design has been made in, inches.
type DesignSize struct {
	Width  string `json:"width"`
	Height string `json:"height"`
}

// Check gives what is wrong with a design.
func (d Design) Check() []quote.Problem {
	var e entries
	e.line("name", d.Name, true)
	e.date("last_run", d.LastRun)
	for _, s := range d.Sizes {
		e.length("sizes.width", s.Width)
		e.length("sizes.height", s.Height)
	}
	return e.problems
}

// Kinds of things on the shelf.
const (
	ShelfTransfer = "transfer"
	ShelfBlank    = "blank"
)

// ShelfItem is something left over that is kept for later: transfers of a customer's design, or blanks.
type ShelfItem struct {
	ID   int64
	Kind string // ShelfTransfer or ShelfBlank
	Qty  int
	On   string // 2006-01-02: since when
	From string // number of the quote it is left over from, or empty
	Note string

	// A blank.
	Supplier, Style, Color, Size string // the supplier's key
	// A transfer, inches.
	CustomerID          int64
	Name, Width, Height string
	Inks                string
	Card                string // key of the rate card
}

// Check gives what is wrong with a thing on the shelf.
func (s ShelfItem) Check() []quote.Problem {
	var e entries
	switch s.Kind {
	case ShelfBlank:
		e.line("style", s.Style, true)
		e.line("size", s.Size, true)
	case ShelfTransfer:
		e.line("name", s.Name, true)
	default:
		e.say("kind", "choose transfer or blank")
	}
	if s.Qty < 0 || s.Qty > maxCount {
		e.say("qty", "enter 0 to 100000")
	}
	e.date("on", s.On)
	return e.problems
}

// ShelfOffer is a thing on the shelf that a quote could use, and where.
type ShelfOffer struct {
	Item ShelfItem
	Path string // the field of the draft it fits, like garments[0].sizes[2]
	Use  int    // how many of it the quote could use
	Text string // in words, for the window
}
