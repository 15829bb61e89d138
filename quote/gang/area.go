package gang

import (
	"math"
	"math/big"
	"math/bits"
)

// area is a square of lengths: two of them of 2^41 multiplied, and that by a count, need more than 64 bits.
type area struct{ hi, lo uint64 }

// product is a × b; lengths below 0 count as 0.
func product(a, b int64) area {
	hi, lo := bits.Mul64(uint64(max(a, 0)), uint64(max(b, 0)))
	return area{hi, lo}
}

// times is n × a; what passes 128 bits stays at the most.
func (a area) times(n int) area {
	hi, lo := bits.Mul64(a.lo, uint64(max(n, 0)))
	over, top := bits.Mul64(a.hi, uint64(max(n, 0)))
	sum, carry := bits.Add64(hi, top, 0)
	if over != 0 || carry != 0 {
		return area{^uint64(0), ^uint64(0)}
	}
	return area{sum, lo}
}

// plus is a + b; what passes 128 bits stays at the most.
func (a area) plus(b area) area {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	hi, carry := bits.Add64(a.hi, b.hi, carry)
	if carry != 0 {
		return area{^uint64(0), ^uint64(0)}
	}
	return area{hi, lo}
}

func (a area) less(b area) bool {
	return a.hi < b.hi || a.hi == b.hi && a.lo < b.lo
}

// over is ceil(a / n), at most what a length can hold.
func (a area) over(n int64) int64 {
	if a.hi >= uint64(n) {
		return math.MaxInt64
	}
	q, r := bits.Div64(a.hi, a.lo, uint64(n))
	if r > 0 {
		q++
	}
	return int64(min(q, math.MaxInt64))
}

// overArea is floor(a / b) for areas that are not 0.
func (a area) overArea(b area) int64 {
	if a.hi == 0 && b.hi == 0 {
		return int64(min(a.lo/b.lo, math.MaxInt64))
	}
	x := a.big()
	if x.Div(x, b.big()); x.IsInt64() {
		return x.Int64()
	}
	return math.MaxInt64
}

func (a area) big() *big.Int {
	x := new(big.Int).Lsh(new(big.Int).SetUint64(a.hi), 64)
	return x.Or(x, new(big.Int).SetUint64(a.lo))
}
