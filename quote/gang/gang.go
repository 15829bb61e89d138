// Package gang turns the transfers of a job into priced print runs: which placements share a sheet, on which size, how
// many copies of each stand on it, how many sheets are bought; and which lengths of a roll hold everything.
//
// Not in this package: placing rectangles (quote/nest does), money's rounding, which card a placement goes on.
package gang

// Item is one rectangle to be printed: a placement at one of its sizes. Lengths are in one unit for the whole card.
type Item struct {
	Placement int   // index of the placement: designs are counted, and setups paid, by it
	W, H      int64 // > 0
	Turn      bool
	Inks      []string // names; nil with InkCount > 0: that many inks shared with nobody
	InkCount  int
}

// Price is an amount in the caller's unit of money (a fraction of a cent, say); exact.
type Price = int64

// Break is a price each from a quantity on.
type Break struct {
	From int
	Each Price
}

// SheetCard is what a printer charges for sheets.
type SheetCard struct {
	MaxInks                     int // 0: no limit
	SetupPerDesign, SetupPerInk Price
	Sizes                       []SheetSize
}

// SheetSize is one sheet with its prices.
type SheetSize struct {
	W, H, Edge, Gap int64
	Minimum         int
	Prices          []InkRow // ascending ink counts
}

// InkRow is the price of a sheet with up to so many inks.
type InkRow struct {
	Inks int
	Each []Break // ascending
}

// RollCard is what a printer charges for lengths of a roll.
type RollCard struct {
	W, Edge, Gap int64
	Lengths      []RollLength
}

// RollLength is one length that can be bought.
type RollLength struct {
	Length int64
	Each   Price
}

// Run is one layout printed on a number of sheets or lengths.
type Run struct {
	Size   int   // index of the sheet size or roll length
	Inks   int   // size of the union of inks (sheets)
	Row    int   // index of the ink row used (sheets)
	Sheets int   // sheets or lengths bought
	Each   Price // of one
	Setup  Price
	Items  []int // indices of the items on it, ascending
	Copies []int // copies of each of Items on one sheet
	Placed []Placed
}

// Cost is what the run costs, setup included.
func (r Run) Cost() Price { return Price(r.Sheets)*r.Each + r.Setup }

// Placed is one copy on the sheet: the corner of the piece from the sheet's corner, edge counted in.
type Placed struct {
	Item   int // index into the card's items
	X, Y   int64
	Turned bool
}

// Plan is a set of runs that together hold every copy needed.
type Plan struct {
	Runs      []Run
	Cost      Price
	Bound     Price // no plan costs less
	Heuristic bool  // not every split was tried
}
