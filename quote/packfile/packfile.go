// Package packfile reads a list of rectangles to be packed, pressworth.pack/1, has them packed and writes where they
// lie. Lengths are decimals in any one unit; the packing itself is in whole units of the finest place among them.
//
// Not in this package: the packing (quote/nest does it), prices, and the clock.
package packfile

import (
	"math"
	"math/big"
	"time"

	"pressworth/quote/jobfile/strict"
	"pressworth/quote/money"
)

// Format names of the two documents.
const (
	Format       = "pressworth.pack/1"
	PackedFormat = "pressworth.packed/1"
)

// Request is what is to be packed.
type Request struct {
	Width   money.Number
	Height  *money.Number // nil: an open strip
	Edge    money.Number
	Gap     money.Number
	NoTurn  bool
	Seconds money.Number // ceiling for the search, and the measure of its effort
	Pieces  []Piece
}

// Piece is a rectangle with the number of its copies.
type Piece struct {
	ID    string
	W, H  money.Number
	Count int
}

// Answer is where everything lies.
type Answer struct {
	Sheets      int
	Height      money.Number // length of the strip that is used, or the height of a sheet
	Bound       money.Number // no strip is shorter, or no fewer sheets do
	UsedPercent string       // one place
	Pieces      []Placed
}

// Placed is one copy: its corner on its sheet, and its size as it lies there.
type Placed struct {
	ID         string
	Sheet      int // from 0
	X, Y, W, H money.Number
	Turned     bool // W and H are the piece's H and W
}

// StepsPerSecond turns the limit in seconds into effort. It is set below what a small computer does, so that the
// effort ends the search and not the clock, and the answer is the same on every machine.
const StepsPerSecond = 2_500_000

// Ceiling is the longest time that a search may take.
func (r Request) Ceiling() time.Duration {
	seconds, _ := r.Seconds.Rat().Float64()
	return time.Duration(min(seconds, math.MaxInt32) * float64(time.Second))
}

// steps is the effort, in whole steps.
func (r Request) steps() int {
	steps := new(big.Rat).Mul(r.Seconds.Rat(), big.NewRat(StepsPerSecond, 1))
	whole := new(big.Int).Quo(steps.Num(), steps.Denom())
	if !whole.IsInt64() || whole.Int64() > math.MaxInt32 {
		return math.MaxInt32
	}
	return int(whole.Int64())
}

// Decode reads a pack file. The error is quote.Problems.
func Decode(data []byte) (Request, error) {
	var r Request
	err := strict.Read(data, func(f strict.Fields) { r.fields(f) })
	return r, err
}

func (r *Request) fields(f strict.Fields) {
	strict.Format(f, Format)
	f.Needs("width", "pieces")
	f.Number("width", &r.Width)
	r.height(f)
	f.Number("edge", &r.Edge)
	f.Number("gap", &r.Gap)
	f.Unless("turn", &r.NoTurn)
	f.Number("seconds", &r.Seconds)
	strict.List(f, "pieces", &r.Pieces, func(f strict.Fields, p *Piece) {
		f.Needs("w", "h")
		f.Text("id", &p.ID)
		f.Number("w", &p.W)
		f.Number("h", &p.H)
		p.Count = 1
		f.Count("count", &p.Count)
	})
}

// height may be left out, or empty, for an open strip.
func (r *Request) height(f strict.Fields) {
	var s string
	f.Text("height", &s)
	if s == "" {
		return
	}
	h, err := money.ParseNumber(s)
	if err != nil {
		strict.Refuse(f, "height", err.Error())
		return
	}
	r.Height = &h
}

// Encode writes an answer.
func Encode(a Answer) []byte {
	return strict.Write(func(f strict.Fields) {
		strict.Format(f, PackedFormat)
		f.Needs("sheets", "height", "bound", "used_percent", "pieces")
		f.Count("sheets", &a.Sheets)
		f.Number("height", &a.Height)
		f.Number("bound", &a.Bound)
		f.Text("used_percent", &a.UsedPercent)
		strict.List(f, "pieces", &a.Pieces, func(f strict.Fields, p *Placed) {
			f.Needs("id", "sheet", "x", "y", "w", "h", "turned")
			f.Text("id", &p.ID)
			f.Count("sheet", &p.Sheet)
			f.Number("x", &p.X)
			f.Number("y", &p.Y)
			f.Number("w", &p.W)
			f.Number("h", &p.H)
			f.Flag("turned", &p.Turned)
		})
	})
}
