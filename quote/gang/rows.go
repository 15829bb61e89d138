package gang

import "slices"

// Straight rows: each row lies from border to border, holds pieces side by side, and is as high as its first. Lengths
// in here count the gap to every piece and once to the border, so that pieces touch and the gap can be left out.

// blank is the rectangle of an item on a roll, gap included.
type blank struct {
	w, h int64
	turn bool
}

func (b blank) size(turned bool) (w, h int64) {
	if turned {
		return b.h, b.w
	}
	return b.w, b.h
}

// row is a number of like rows.
type row struct {
	high  int64
	free  int64 // width left
	times int
	segs  []seg
}

// seg is some copies of one item side by side.
type seg struct {
	item, n int
	turned  bool
}

// rowsOf lays need[k] copies of each blank in rows of a width: the higher first, in the first row that has room (first
// fit, decreasing height: Coffman, Garey, Johnson & Tarjan 1980), turned[k] saying which way new rows of it lie.
func rowsOf(width int64, blanks []blank, need []int, turned []bool) []row {
	order := make([]int, 0, len(blanks))
	for k := range blanks {
		if need[k] > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		_, ha := blanks[a].size(turned[a])
		_, hb := blanks[b].size(turned[b])
		return int(min(max(hb-ha, -1), 1))
	})
	var rows []row
	for _, k := range order {
		left := need[k]
		rows, left = beside(rows, blanks[k], k, left, turned[k])
		w, h := blanks[k].size(turned[k])
		across := int(width / w)
		if full := left / across; full > 0 {
			rows = append(rows, row{h, width - w*int64(across), full, []seg{{k, across, turned[k]}}})
			left -= full * across
		}
		if left > 0 {
			rows = append(rows, row{h, width - w*int64(left), 1, []seg{{k, left, turned[k]}}})
		}
	}
	return rows
}

// beside puts copies into the room that rows have left, and returns how many remain.
func beside(rows []row, b blank, item, left int, turned bool) ([]row, int) {
	for i := 0; i < len(rows) && left > 0; i++ {
		n, way := rows[i].room(b, turned)
		if n == 0 {
			continue
		}
		n = min(n, left)
		if fill := left / n; fill < rows[i].times {
			rest := rows[i]
			rest.times -= fill
			rest.segs = slices.Clone(rest.segs)
			rows[i].times = fill
			rows = slices.Insert(rows, i+1, rest)
		}
		w, _ := b.size(way)
		rows[i].free -= w * int64(n)
		rows[i].segs = append(slices.Clip(rows[i].segs), seg{item, n, way})
		left -= n * rows[i].times
	}
	return rows, left
}

// room is how many copies a row still takes, the given way or the other.
func (r row) room(b blank, turned bool) (n int, way bool) {
	if w, h := b.size(turned); h <= r.high && w <= r.free {
		n, way = int(r.free/w), turned
	}
	if !b.turn {
		return n, way
	}
	if w, h := b.size(!turned); h <= r.high && w <= r.free && int(r.free/w) > n {
		n, way = int(r.free/w), !turned
	}
	return n, way
}
