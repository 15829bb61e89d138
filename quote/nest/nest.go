package nest

// Piece is one design to be laid out.
type Piece struct {
	W, H  int64 // size as drawn, without any gap
	Turn  bool  // may be turned by 90 degrees
	Count int   // copies wanted; 0 takes no part
}

// Sheet is what pieces are laid on.
type Sheet struct {
	W, H int64 // full size; H == 0 is a strip open at its far end
	Edge int64 // kept free along every border
	Gap  int64 // kept free between any two pieces
}

// Placed is one copy of a piece in a layout.
type Placed struct {
	Piece, Sheet int   // index of the piece; number of the sheet, from 0
	X, Y         int64 // nearest corner, measured from the sheet's corner: the edge is counted
	Turned       bool  // lies with the piece's H along the sheet's width
}

// Effort says how long to look for something better than the first answer.
type Effort struct {
	// Steps is the budget of the search; a step is about one piece set down in
	// a trial layout. 0 keeps to the constructive methods.
	Steps int
	// Stop is polled now and then, and ends the search early when it says true.
	// It may be nil.
	Stop func() bool
}

// Verdict is an answer to whether pieces fit; Fits and CannotFit are proven.
type Verdict int

// The verdicts.
const (
	Unknown   Verdict = iota // not found, and not excluded either
	Fits                     // a layout is at hand
	CannotFit                // no layout exists
)

// String names the verdict.
func (v Verdict) String() string {
	switch v {
	case Fits:
		return "fits"
	case CannotFit:
		return "cannot fit"
	default:
		return "unknown"
	}
}

// StripResult is a layout on an open strip.
type StripResult struct {
	Placed []Placed
	Length int64 // of strip used, both edges included
	Bound  int64 // no layout is shorter
}

// BinsResult is a layout on sheets of one size.
type BinsResult struct {
	Placed []Placed
	Sheets int
	Bound  int // no layout does with fewer
}

// Limits of what is taken on.
const (
	// MaxPieces is the largest sum of counts.
	MaxPieces = 100_000
	// MaxLength is the longest side of a piece or sheet.
	MaxLength = 1 << 40
)
