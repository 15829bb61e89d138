package nest

import (
	"fmt"
	"sort"
)

// Check says what is wrong with a layout: a piece that is unknown, turned
// against its leave, over the edge or nearer to another than the gap, or a count
// that is not met. It shares no code with the methods that make layouts.
func Check(s Sheet, ps []Piece, placed []Placed) error {
	boxes := make([]box, 0, len(placed))
	count := make([]int, len(ps))
	for i, p := range placed {
		b, err := boxOf(s, ps, p)
		if err != nil {
			return fmt.Errorf("placed %d: %w", i, err)
		}
		b.at = i
		count[p.Piece]++
		boxes = append(boxes, b)
	}
	for i, p := range ps {
		if count[i] != p.Count {
			return fmt.Errorf("piece %d: laid %d times, wanted %d", i, count[i], p.Count)
		}
	}
	return apart(boxes, s.Gap)
}

// box is a placed piece by its four borders.
type box struct {
	sheet                  int
	left, near, right, far int64
	at                     int
}

func boxOf(s Sheet, ps []Piece, p Placed) (box, error) {
	if p.Piece < 0 || p.Piece >= len(ps) {
		return box{}, fmt.Errorf("no piece %d", p.Piece)
	}
	if p.Sheet < 0 {
		return box{}, fmt.Errorf("sheet %d is below 0", p.Sheet)
	}
	w, h := ps[p.Piece].W, ps[p.Piece].H
	if p.Turned {
		if !ps[p.Piece].Turn {
			return box{}, fmt.Errorf("piece %d may not be turned", p.Piece)
		}
		w, h = h, w
	}
	if p.X < s.Edge || p.Y < s.Edge || p.X > s.W-s.Edge-w || p.Y > MaxLength*MaxPieces || s.H > 0 && p.Y > s.H-s.Edge-h {
		return box{}, fmt.Errorf("piece %d at %d, %d, size %d x %d, is over the edge", p.Piece, p.X, p.Y, w, h)
	}
	return box{sheet: p.Sheet, left: p.X, near: p.Y, right: p.X + w, far: p.Y + h}, nil
}

// apart sweeps a line along each sheet, the longer way, so that it holds few boxes
// at a time. Boxes on the line, in order from left to right, are apart from one
// another, so a new one is held against its two neighbours only.
func apart(boxes []box, gap int64) error {
	var across, along int64
	for _, b := range boxes {
		across, along = max(across, b.right), max(along, b.far)
	}
	if across > along {
		for i, b := range boxes {
			boxes[i].left, boxes[i].near, boxes[i].right, boxes[i].far = b.near, b.left, b.far, b.right
		}
	}
	sort.Slice(boxes, func(a, b int) bool {
		if boxes[a].sheet != boxes[b].sheet {
			return boxes[a].sheet < boxes[b].sheet
		}
		return boxes[a].near < boxes[b].near
	})
	var line []box
	for i, b := range boxes {
		if i > 0 && boxes[i-1].sheet != b.sheet {
			line = line[:0]
		}
		line = leave(line, b.near, gap)
		j := sort.Search(len(line), func(k int) bool { return line[k].left >= b.left })
		if j < len(line) && line[j].left < b.right+gap {
			return tooNear(b, line[j], gap)
		}
		if j > 0 && b.left < line[j-1].right+gap {
			return tooNear(b, line[j-1], gap)
		}
		line = append(line, box{})
		copy(line[j+1:], line[j:])
		line[j] = b
	}
	return nil
}

// leave drops the boxes the line has passed, gap included.
func leave(line []box, y, gap int64) []box {
	kept := line[:0]
	for _, b := range line {
		if b.far+gap > y {
			kept = append(kept, b)
		}
	}
	return kept
}

func tooNear(a, b box, gap int64) error {
	return fmt.Errorf("placed %d and %d on sheet %d are nearer than %d", min(a.at, b.at), max(a.at, b.at), a.sheet, gap)
}
