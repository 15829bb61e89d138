package present

import "strings"

// View is everything the Counter shows, as text ready to be put on screen.
type View struct {
	Generation int // changes when the whole draft was replaced: undo, redo, another quote
	Form       Form
	Panel      Panel
	Problems   []Problem
	Status     Status
	CanUndo    bool
	CanRedo    bool
}

// Problem is what is wrong with one field, in words that say what would do.
type Problem struct {
	Path string
	Text string
}

// Problem returns what is wrong with the field at path, or with a field inside it where within is given; empty if
// nothing is.
func (v *View) Problem(path string) string {
	for _, p := range v.Problems {
		if p.Path == path {
			return p.Text
		}
	}
	return ""
}

// ProblemWithin returns the first problem of the fields whose paths start with path.
func (v *View) ProblemWithin(path string) string {
	for _, p := range v.Problems {
		if strings.HasPrefix(p.Path, path) {
			return p.Text
		}
	}
	return ""
}

// lineProblem is the first problem of a garment line, but for its price, which stands in the panel.
func (v *View) lineProblem(path string) string {
	for _, p := range v.Problems {
		if strings.HasPrefix(p.Path, path+".") && p.Path != path+".price" {
			return p.Text
		}
	}
	return ""
}

// Status is the state of the quote for the bar at the bottom.
type Status struct {
	Number string
	State  string
	Saved  string // "saved 12:04", "not saved yet", or why it could not be saved
	Failed bool   // saving did not work
	Demo   bool
}

// Panel is the cost panel.
type Panel struct {
	Empty bool   // nothing has been priced yet
	Stale bool   // the figures are the last good ones, not those of the form as it stands
	Hint  string // what is missing, in words; empty when the figures are current

	Total      string
	TotalNote  string // "order total with tax"
	Margin     string
	PerHour    string
	BelowFloor bool
	Pieces     int

	Prices PriceTable
	Next   string // the next break as a sentence
	Cost   CostStack
	Ladder Ladder
	Bands  Bands
	Levers Levers
	Sheets []Sheet
	Dates  Dates
	Drawn  []FrontDrawing
	Notes  []Note
}

// PriceTable is the price each, a row for each price group.
type PriceTable struct {
	Columns []string // sizes that cost more or less than the rest
	Rows    []PriceRow
}

// PriceRow is the price each of one group.
type PriceRow struct {
	Key      string // of the group's first garment line: what a typed price is set on
	Name     string
	Each     string
	Typed    string   // as typed; empty: computed
	Computed string   // what the rules give, where a price is typed
	More     []string // prices in the table's columns
	Other    string   // prices by size where they are too many for columns
	CostEach string
	Problem  string
	Lines    []Figure // the sizes' prices and the basis, for opening
}

// Figure is a named amount with the formula behind it.
type Figure struct {
	Name   string
	Basis  string
	Amount string
}

// CostStack is the cost by kind.
type CostStack struct {
	Total string
	Rows  []CostRow
}

// CostRow is one kind of cost; its lines are shown when it is opened.
type CostRow struct {
	Kind     string // the engine's kind, or "rest"
	Name     string
	Basis    string
	Amount   string
	Fraction float64 // of the whole cost
	Lines    []Figure
}

// Ladder is the price at other quantities.
type Ladder struct {
	Columns []LadderColumn
	Rows    []LadderRow
	Points  []LadderPoint
	Cliffs  []string
}

// LadderColumn is a quantity of the ladder.
type LadderColumn struct {
	Pieces string
	Own    bool // the job's own quantity
}

// LadderRow is a line of the ladder: a group's price each, or the whole order.
type LadderRow struct {
	Name   string
	Values []string
}

// LadderPoint is a place on the curve.
type LadderPoint struct {
	Pieces int
	Each   float64
	Label  string
	Own    bool
	Break  bool // another card is chosen from here on than one step below
}

// Bands are which card is cheapest at which quantities, for one placement.
type Bands struct {
	Placement  string   // its name
	Key        string   // its key
	Placements []Option // those that can be looked at
	Upto       int
	Pieces     int // the job's own quantity
	Rows       []BandRow
	Seeking    bool // being worked out
}

// BandRow is the bands of one ink count.
type BandRow struct {
	Name  string
	Own   bool // the ink count the placement has
	Spans []BandSpan
}

// BandSpan is a run of quantities over which one card is cheapest.
type BandSpan struct {
	From, To int
	Card     string // the card's name; empty: none serves
	Kind     string // the card's kind
	Place    int    // the card's place in the shop's list, for telling cards of one kind apart
	Label    string
}

// Sheet is one layout of a gang plan, to be drawn to scale.
type Sheet struct {
	Title   string // "38 sheets of 13 × 9.5"
	Detail  string // "two inks · 76 % used · best possible"
	Left    string // "2 copies left for the shelf"
	Card    string
	Kind    string
	Width   float64
	Height  float64
	Edge    float64
	Pieces  []SheetPiece
	Roll    bool
	Amount  string
	Clipped int // pieces not drawn, where there are very many
}

// SheetPiece is one transfer on a sheet, in the job's unit from the sheet's corner.
type SheetPiece struct {
	X, Y, W, H float64
	Label      string
	Turned     bool
}

// Note is a warning or a caution about the job.
type Note struct {
	Text    string
	Path    string
	Warning bool // else it is a remark
}
