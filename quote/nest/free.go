package nest

import "sort"

// FreeRectangle is the largest rectangle still free on a sheet, gap and edge
// kept: its corner, counted from the sheet's, and its size. placed must lie on
// one sheet; on an open strip the room up to the farthest piece counts.
func FreeRectangle(s Sheet, ps []Piece, placed []Placed) (x, y, w, h int64, ok bool) {
	g := s.Gap
	r := room{w: s.W - 2*s.Edge + g, h: s.H - 2*s.Edge + g}
	for _, p := range placed {
		if p.Piece < 0 || p.Piece >= len(ps) {
			return 0, 0, 0, 0, false
		}
		pw, ph := ps[p.Piece].W, ps[p.Piece].H
		if p.Turned {
			pw, ph = ph, pw
		}
		b := box{left: p.X - s.Edge, near: p.Y - s.Edge, right: p.X - s.Edge + pw + g, far: p.Y - s.Edge + ph + g}
		r.taken = append(r.taken, b)
		if s.H == 0 {
			r.h = max(r.h, b.far)
		}
	}
	b := r.largest(g)
	if b.right-b.left <= g || b.far-b.near <= g {
		return 0, 0, 0, 0, false
	}
	return b.left + s.Edge, b.near + s.Edge, b.right - b.left - g, b.far - b.near - g, true
}

// room is a region with boxes in it.
type room struct {
	w, h  int64
	taken []box
}

// maxCells limits the work of the search for free room.
const maxCells = 4 << 20

// largest finds the free box that is largest once the gap is taken off: over
// each row of the grid of all borders, the largest rectangle below a histogram.
func (r *room) largest(gap int64) box {
	xs, ys := []int64{0, r.w}, []int64{0, r.h}
	for _, b := range r.taken {
		xs = append(xs, b.left, b.right)
		ys = append(ys, b.near, b.far)
	}
	xs, ys = distinct(xs, r.w), distinct(ys, r.h)
	if len(xs)*len(ys) > maxCells {
		return r.beyond()
	}
	free := r.grid(xs, ys)
	var best box
	var most area
	roof := make([]int, len(xs)-1) // rows free below, counted from the present one
	for j := 0; j+1 < len(ys); j++ {
		for i := range roof {
			roof[i]++
			if !free[j*len(roof)+i] {
				roof[i] = 0
			}
		}
		under(roof, func(from, to, rows int) {
			b := box{left: xs[from], right: xs[to], near: ys[j+1-rows], far: ys[j+1]}
			if b.right-b.left <= gap || b.far-b.near <= gap {
				return
			}
			if a := product(b.right-b.left-gap, b.far-b.near-gap); most.less(a) {
				most, best = a, b
			}
		})
	}
	return best
}

// under calls with every widest rectangle below a histogram.
func under(roof []int, with func(from, to, rows int)) {
	var open []int // columns with rising roofs
	for i := 0; i <= len(roof); i++ {
		high := 0
		if i < len(roof) {
			high = roof[i]
		}
		for len(open) > 0 && roof[open[len(open)-1]] >= high {
			rows := roof[open[len(open)-1]]
			open = open[:len(open)-1]
			from := 0
			if len(open) > 0 {
				from = open[len(open)-1] + 1
			}
			if rows > 0 {
				with(from, i, rows)
			}
		}
		open = append(open, i)
	}
}

// grid marks the free cells between the lines xs and ys, row by row.
func (r *room) grid(xs, ys []int64) []bool {
	cols := len(xs) - 1
	free := make([]bool, cols*(len(ys)-1))
	for i := range free {
		free[i] = true
	}
	for _, b := range r.taken {
		for j := index(ys, b.near); j < len(ys)-1 && ys[j] < b.far; j++ {
			for i := index(xs, b.left); i < cols && xs[i] < b.right; i++ {
				free[j*cols+i] = false
			}
		}
	}
	return free
}

// beyond is the band behind all pieces.
func (r *room) beyond() box {
	var far int64
	for _, b := range r.taken {
		far = max(far, b.far)
	}
	return box{right: r.w, near: min(far, r.h), far: r.h}
}

// distinct sorts lines within 0 and end, each once.
func distinct(v []int64, end int64) []int64 {
	sort.Slice(v, func(a, b int) bool { return v[a] < v[b] })
	out := v[:0]
	for _, x := range v {
		if x >= 0 && x <= end && (len(out) == 0 || out[len(out)-1] != x) {
			out = append(out, x)
		}
	}
	return out
}

func index(v []int64, x int64) int {
	return sort.Search(len(v), func(i int) bool { return v[i] >= x })
}
