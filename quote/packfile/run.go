package packfile

import (
	"fmt"
	"math/big"

	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/quote/nest"
)

// Run packs. stop ends the search early when it says true; it may be nil. The error is quote.Problems.
func Run(r Request, stop func() bool) (Answer, error) {
	p := packing{Request: r}
	p.scale()
	if len(p.problems) == 0 {
		p.check()
	}
	if len(p.problems) > 0 {
		return Answer{}, p.problems
	}
	effort := nest.Effort{Steps: r.steps(), Stop: stop}
	if r.Height == nil {
		return p.strip(effort)
	}
	return p.bins(effort)
}

// packing is a request in whole units.
type packing struct {
	Request
	places   int // a unit is 10^-places
	sheet    nest.Sheet
	pieces   []nest.Piece
	problems quote.Problems
}

func (p *packing) fail(path, problem string) {
	p.problems = append(p.problems, quote.Problem{Path: path, Problem: problem})
}

// scale finds the finest place and brings every length to it.
func (p *packing) scale() {
	all := []money.Number{p.Width, p.Edge, p.Gap}
	if p.Height != nil {
		all = append(all, *p.Height)
	}
	for _, x := range p.Pieces {
		all = append(all, x.W, x.H)
	}
	for _, n := range all {
		p.places = max(p.places, n.Places())
	}
	p.sheet = nest.Sheet{W: p.units("width", p.Width), Edge: p.units("edge", p.Edge), Gap: p.units("gap", p.Gap)}
	if p.Height != nil {
		p.sheet.H = p.units("height", *p.Height)
	}
	for i, x := range p.Pieces {
		at := fmt.Sprintf("pieces[%d].", i)
		p.pieces = append(p.pieces, nest.Piece{W: p.units(at+"w", x.W), H: p.units(at+"h", x.H), Turn: !p.NoTurn, Count: x.Count})
	}
}

func (p *packing) units(path string, n money.Number) int64 {
	u, ok := n.Scaled(p.places)
	if !ok || u > nest.MaxLength {
		p.fail(path, fmt.Sprintf("%s is too long beside lengths with %d places: use fewer places or a larger unit", n, p.places))
	}
	return u
}

// check finds everything that nest would refuse, each at its field.
func (p *packing) check() {
	s := p.sheet
	above := func(path string, u int64) {
		if u <= 0 {
			p.fail(path, "enter more than 0")
		}
	}
	above("width", s.W)
	if p.Height != nil {
		above("height", s.H)
	}
	p.clearances()
	if p.Seconds.Sign() < 0 {
		p.fail("seconds", "enter 0 or more")
	}
	if len(p.pieces) == 0 {
		p.fail("pieces", "give at least one piece")
	}
	total := 0
	for i, x := range p.pieces {
		at := fmt.Sprintf("pieces[%d].", i)
		above(at+"w", x.W)
		above(at+"h", x.H)
		if x.Count < 1 {
			p.fail(at+"count", "enter 1 or more")
		}
		total += max(0, min(x.Count, nest.MaxPieces+1))
		if x.W > 0 && x.H > 0 && s.W > 2*s.Edge && !p.fits(x) {
			p.fail(fmt.Sprintf("pieces[%d]", i), fmt.Sprintf("%s × %s is larger than the sheet within its edges", p.Pieces[i].W, p.Pieces[i].H))
		}
	}
	if total > nest.MaxPieces {
		p.fail("pieces", fmt.Sprintf("at most %d pieces in all", nest.MaxPieces))
	}
}

// clearances checks edge and gap against the sheet.
func (p *packing) clearances() {
	s := p.sheet
	switch {
	case s.Edge < 0:
		p.fail("edge", "enter 0 or more")
	case s.W > 0 && 2*s.Edge >= s.W, s.H > 0 && 2*s.Edge >= s.H:
		p.fail("edge", "nothing is left of the sheet: enter less than half of its shorter side")
	}
	switch {
	case s.Gap < 0:
		p.fail("gap", "enter 0 or more")
	case s.W > 0 && s.Gap > s.W, s.H > 0 && s.Gap > s.H:
		p.fail("gap", "is larger than the sheet: enter less")
	}
}

func (p *packing) fits(x nest.Piece) bool {
	within := func(w, h int64) bool {
		return w <= p.sheet.W-2*p.sheet.Edge && (p.Height == nil || h <= p.sheet.H-2*p.sheet.Edge)
	}
	return within(x.W, x.H) || x.Turn && within(x.H, x.W)
}

func (p *packing) strip(e nest.Effort) (Answer, error) {
	got, err := nest.Strip(p.sheet, p.pieces, e)
	if err != nil {
		return Answer{}, refused(err)
	}
	a := Answer{Sheets: 1, Height: p.number(got.Length), Bound: p.number(got.Bound), Pieces: p.placed(got.Placed)}
	a.UsedPercent = p.used(got.Length, 1)
	return a, nil
}

func (p *packing) bins(e nest.Effort) (Answer, error) {
	got, err := nest.Bins(p.sheet, p.pieces, e)
	if err != nil {
		return Answer{}, refused(err)
	}
	a := Answer{Sheets: got.Sheets, Height: *p.Height, Bound: money.Int(int64(got.Bound)), Pieces: p.placed(got.Placed)}
	a.UsedPercent = p.used(p.sheet.H, got.Sheets)
	return a, nil
}

func refused(err error) error { return quote.Problems{{Path: "pieces", Problem: err.Error()}} }

func (p *packing) placed(list []nest.Placed) []Placed {
	var all []Placed
	for _, x := range list {
		from := p.Pieces[x.Piece]
		w, h := from.W, from.H
		if x.Turned {
			w, h = h, w
		}
		all = append(all, Placed{ID: from.ID, Sheet: x.Sheet, X: p.number(x.X), Y: p.number(x.Y), W: w, H: h, Turned: x.Turned})
	}
	return all
}

// number turns whole units back into a length.
func (p *packing) number(units int64) money.Number {
	return money.Number(money.FromMinor(units, p.places))
}

// used is how much of the sheets is covered, in percent.
func (p *packing) used(height int64, sheets int) string {
	covered := new(big.Int)
	for _, x := range p.pieces {
		area := new(big.Int).Mul(big.NewInt(x.W), big.NewInt(x.H))
		covered.Add(covered, area.Mul(area, big.NewInt(int64(x.Count))))
	}
	all := new(big.Int).Mul(big.NewInt(p.sheet.W), big.NewInt(height))
	all.Mul(all, big.NewInt(int64(sheets)))
	if all.Sign() == 0 {
		return "0.0"
	}
	return new(big.Rat).SetFrac(covered.Mul(covered, big.NewInt(100)), all).FloatString(1)
}
