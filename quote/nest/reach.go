package nest

import "math/bits"

// reach tells which lengths up to a limit are sums of sides, each piece counted
// at most once. In a layout pushed to the corner every coordinate is such a sum
// (Herz 1972; Christofides & Whitlock 1977), so a gap can be used up to the
// largest sum it holds, and no further.
type reach struct {
	limit int64
	set   []uint64 // bit x: x is a sum; nil when the limit is too large to list
	small int64    // the smallest side
}

// maxReach is the longest length listed.
const maxReach = 1 << 14

// newReach lists the sums of kinds' sides: along x where lying is true, or
// along y; a piece that turns counts with either side.
func newReach(kinds []kind, along axis, limit int64) *reach {
	r := &reach{limit: limit, small: limit + 1}
	for _, k := range kinds {
		a, b := k.sides(along)
		r.small = min(r.small, a, b)
	}
	if limit > maxReach {
		return r
	}
	r.set = make([]uint64, limit/64+1)
	r.set[0] = 1
	was := make([]uint64, len(r.set))
	for _, k := range kinds {
		a, b := k.sides(along)
		for range min(int64(k.count), limit/min(a, b)+1) {
			copy(was, r.set)
			r.shift(was, a)
			if b != a {
				r.shift(was, b)
			}
			if same(was, r.set) {
				break
			}
		}
	}
	r.set[len(r.set)-1] &= 1<<(uint(limit%64)+1) - 1
	return r
}

// axis is a direction of the region.
type axis bool

const (
	alongX axis = false
	alongY axis = true
)

// sides are the lengths a kind may take up along an axis.
func (k kind) sides(along axis) (a, b int64) {
	a, b = k.w, k.h
	if along == alongY {
		a, b = b, a
	}
	if !k.turn {
		b = a
	}
	return a, b
}

// shift adds the sums of was, each grown by d.
func (r *reach) shift(was []uint64, d int64) {
	words, rest := int(d/64), uint(d%64)
	for i := len(was) - 1; i >= words; i-- {
		v := was[i-words] << rest
		if rest > 0 && i > words {
			v |= was[i-words-1] >> (64 - rest)
		}
		r.set[i] |= v
	}
}

func same(a, b []uint64) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// below is the largest sum not above x, or a length that is no smaller than it.
func (r *reach) below(x int64) int64 {
	if x >= r.limit {
		x = r.limit
	}
	if x < r.small {
		return 0
	}
	if r.set == nil {
		return x
	}
	i := x / 64
	v := r.set[i] & (1<<(uint(x%64)+1) - 1)
	for v == 0 {
		i--
		v = r.set[i]
	}
	return i*64 + int64(63-bits.LeadingZeros64(v))
}

// from is the smallest sum not below x, or a length that is no larger than it.
func (r *reach) from(x int64) int64 {
	if x <= 0 || x > r.limit {
		return x
	}
	if r.set == nil {
		return max(x, r.small)
	}
	i := x / 64
	v := r.set[i] &^ (1<<uint(x%64) - 1)
	for v == 0 {
		i++
		if i == int64(len(r.set)) {
			return r.limit + 1
		}
		v = r.set[i]
	}
	return i*64 + int64(bits.TrailingZeros64(v))
}
