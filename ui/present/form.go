package present

import "pressworth/catalog"

// Form is the job form as it is shown. Raw text stands as it was typed.
type Form struct {
	Customer   catalog.DraftCustomer
	Title      string
	NeededBy   string // as shown: "Fri 18 Dec 2026", or as typed
	Away       string // "16 days"
	Level      string
	Levels     []string
	Exempt     bool
	Pieces     string // "46 pieces"
	Blocks     []Block
	Artwork    []ArtRow
	Roster     Roster
	Extras     []ExtraRow
	ArtMinutes string
	ArtCharge  string
	Rush       string
	Off        string
	DelivCost  string
	DelivPrice string
	Ladder     string
	Notes      string
}

// Block is the lines of one style, under one header, with one set of size columns.
type Block struct {
	StyleID int64
	Number  string
	Name    string
	Note    string // "one price for both colours"
	Sizes   []string
	Rows    []BlockRow
	Colors  []catalog.Color // that the style comes in
	Own     bool            // a customer's own garment
}

// BlockRow is one garment line.
type BlockRow struct {
	Key     string
	Path    string // garments[0]
	Color   string
	Hex     string
	Cells   []Cell
	Total   string
	Problem string
	Own     catalog.DraftGarment // where the garment is the customer's own
}

// Cell is the quantity of one size.
type Cell struct {
	Size    string
	Qty     string
	Problem string
	Absent  bool // the colour does not come in this size
}

// ArtRow is one row of artwork.
type ArtRow struct {
	Key        string
	Path       string // placements[0]
	Name       string
	Inches     string
	Inks       string
	Chips      []string
	FullColor  bool
	On         string // "long sleeves", "everything"
	OnKeys     []string
	Method     string // the card in use, by name
	Against    string // "film costs 62.18 more"
	Fixed      string // key of the card it is fixed on; empty: automatic
	Each       string // transfers for each piece
	Stitches   string
	NeedStitch bool // a card by stitches could carry it
	NoTurn     bool
	Variants   []catalog.DraftVariant
	Letters    string // name or number, where the texts come from the roster
	CharWidth  string
	ChargeEach string
	ByDigit    bool     // the charge is for each character
	Untaxed    bool     // it bears no tax
	Picture    *Picture // nil: none
	Problems   ArtProblems
}

// ArtProblems are the problems of one row of artwork by field.
type ArtProblems struct{ Name, Inches, Inks, On, Method, Other string }

// ExtraRow is an extra on the job.
type ExtraRow struct {
	Key     string
	Path    string
	Name    string
	Unit    string // "each" or "once"
	Charge  string
	Problem string
}

// Option is a choice with its words.
type Option struct{ Key, Name, Note string }
