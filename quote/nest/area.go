package nest

import "math/bits"

// area is an area of 128 bits: sides of 2^40 and 100 000 pieces overflow less.
type area struct{ hi, lo uint64 }

func product(w, h int64) area {
	hi, lo := bits.Mul64(uint64(w), uint64(h))
	return area{hi, lo}
}

func (a area) add(b area) area {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	hi, _ := bits.Add64(a.hi, b.hi, carry)
	return area{hi, lo}
}

func (a area) times(n int) area {
	hi, lo := bits.Mul64(a.lo, uint64(n))
	return area{hi + a.hi*uint64(n), lo}
}

func (a area) less(b area) bool {
	return a.hi < b.hi || a.hi == b.hi && a.lo < b.lo
}

// over is a / width rounded up; the quotient must fit 63 bits.
func (a area) over(width int64) int64 {
	q, r := bits.Div64(a.hi%uint64(width), a.lo, uint64(width))
	if r > 0 {
		q++
	}
	return int64(q)
}

func (k kind) area() area { return product(k.w, k.h) }

// area is that of all pieces.
func (t *task) area() area {
	var sum area
	for _, k := range t.kinds {
		sum = sum.add(k.area().times(k.count))
	}
	return sum
}

// overArea is a / b rounded up, for a quotient of at most MaxPieces.
func (a area) overArea(b area) int {
	low, high := 0, MaxPieces
	for low < high {
		mid := (low + high) / 2
		if b.times(mid).less(a) {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return low
}

// float is the area as a float: exact below 2^53.
func (a area) float() float64 { return float64(a.hi)*(1<<64) + float64(a.lo) }
