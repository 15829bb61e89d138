package gang

import (
	"encoding/binary"
	"slices"

	"pressworth/quote/nest"
)

// effort is how many steps the packer may take over one question.
const effort = 2000

// shape is the geometry of an item; one that may be turned lies on its longer side.
type shape struct {
	w, h int64
	turn bool
}

func shapeOf(it Item) shape {
	if it.Turn {
		return shape{max(it.W, it.H), min(it.W, it.H), true}
	}
	return shape{it.W, it.H, false}
}

// verdict says whether x sheets of a size hold the group: ceil(need / x) copies of each on every sheet. The packer is
// asked in shapes, so that the answer is the same whatever items they belong to and whatever was asked before.
func (s *Sheets) verdict(g group, size, x int) nest.Verdict {
	s.count(g, x)
	s.buf = binary.AppendUvarint(s.buf[:0], uint64(size))
	for _, k := range s.used {
		s.buf = binary.AppendUvarint(s.buf, uint64(k))
		s.buf = binary.AppendUvarint(s.buf, uint64(s.counts[k]))
	}
	if v, ok := s.fits[string(s.buf)]; ok {
		return v
	}
	key := string(s.buf)
	v := s.packs(sheetOf(s.card.Sizes[size]))
	if len(s.fits) >= memory {
		clear(s.fits)
	}
	s.fits[key] = v
	return v
}

// packs asks the packer about the counted shapes.
func (s *Sheets) packs(sheet nest.Sheet) (v nest.Verdict) {
	if s.hasty {
		_, v = nest.Quick(sheet, s.shapely())
	} else {
		_, v = nest.Fit(sheet, s.shapely(), nest.Effort{Steps: effort})
	}
	return v
}

// count puts the copies of each shape on one of x sheets into counts, and the shapes with copies into used.
func (s *Sheets) count(g group, x int) {
	for _, k := range s.used {
		s.counts[k] = 0
	}
	s.used = s.used[:0]
	for k, i := range g.items {
		sh := s.shapes[i]
		if s.counts[sh] == 0 {
			s.used = append(s.used, sh)
		}
		s.counts[sh] = sum(s.counts[sh], parts(g.need[k], x))
	}
	slices.Sort(s.used)
}

// shapely are the counted shapes as pieces.
func (s *Sheets) shapely() []nest.Piece {
	ps := make([]nest.Piece, len(s.used))
	for k, sh := range s.used {
		f := s.forms[sh]
		ps[k] = nest.Piece{W: f.w, H: f.h, Turn: f.turn, Count: s.counts[sh]}
	}
	return ps
}

func sheetOf(sz SheetSize) nest.Sheet {
	return nest.Sheet{W: sz.W, H: sz.H, Edge: sz.Edge, Gap: sz.Gap}
}

// sound says whether there is room on a sheet, in lengths that can be reckoned with.
func sound(s nest.Sheet) bool {
	least, most := min(s.W, s.H, s.Edge+1, s.Gap+1), max(s.W, s.H, s.Edge, s.Gap)
	return least > 0 && most <= nest.MaxLength && 2*s.Edge < min(s.W, s.H)
}
