package nest

import (
	"errors"
	"fmt"
)

// check says what is wrong with a problem, all of it at once.
func check(s Sheet, ps []Piece, strip bool) error {
	if err := checkSheet(s, strip); err != nil {
		return err
	}
	return checkPieces(s, ps)
}

// checkSheet says what is wrong with a sheet.
func checkSheet(s Sheet, strip bool) error {
	switch {
	case s.W <= 0:
		return fmt.Errorf("sheet width %d: not above 0", s.W)
	case s.H < 0 || s.H == 0 && !strip:
		return fmt.Errorf("sheet height %d: not above 0", s.H)
	case s.W > MaxLength || s.H > MaxLength:
		return fmt.Errorf("sheet %d x %d: a side is longer than %d", s.W, s.H, int64(MaxLength))
	case !s.edged():
		return fmt.Errorf("edge %d: nothing is left of the sheet", s.Edge)
	case s.Gap < 0 || s.Gap > s.W || s.H > 0 && s.Gap > s.H:
		return fmt.Errorf("gap %d: not between 0 and the sheet's size", s.Gap)
	}
	return nil
}

// edged tells whether the edges leave something of the sheet.
func (s Sheet) edged() bool {
	return s.Edge >= 0 && s.Edge <= s.W && 2*s.Edge < s.W && (s.H == 0 || 2*s.Edge < s.H)
}

// checkPieces says, for every piece, what is wrong with it.
func checkPieces(s Sheet, ps []Piece) error {
	var all []error
	total := 0
	for i, p := range ps {
		if err := checkPiece(s, p); err != nil {
			all = append(all, fmt.Errorf("piece %d: %w", i, err))
		}
		if p.Count > 0 && total <= MaxPieces {
			total += min(p.Count, MaxPieces+1)
		}
	}
	if total > MaxPieces {
		all = append(all, fmt.Errorf("more than %d pieces in total", MaxPieces))
	}
	return errors.Join(all...)
}

func checkPiece(s Sheet, p Piece) error {
	switch {
	case p.Count < 0:
		return fmt.Errorf("count %d is below 0", p.Count)
	case p.W <= 0 || p.H <= 0:
		return fmt.Errorf("size %d x %d is not above 0", p.W, p.H)
	case p.W > MaxLength || p.H > MaxLength:
		return fmt.Errorf("size %d x %d: a side is longer than %d", p.W, p.H, int64(MaxLength))
	case !fitsAlone(s, p.W, p.H) && !(p.Turn && fitsAlone(s, p.H, p.W)):
		return fmt.Errorf("size %d x %d is larger than the sheet, edges taken off", p.W, p.H)
	}
	return nil
}

func fitsAlone(s Sheet, w, h int64) bool {
	return w <= s.W-2*s.Edge && (s.H == 0 || h <= s.H-2*s.Edge)
}
