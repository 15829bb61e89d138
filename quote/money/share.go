package money

import (
	"math/big"
	"math/bits"
)

// Share splits total, in whole units, by weight with the largest-remainder method: each part is first rounded down,
// then the units left go to the largest remainders, ties to the earlier part. The parts add up to total. Weights below
// 0 count as 0; all weights zero mean equal weights; a negative total is split like its opposite.
// Without weights there are no parts.
func Share(total int64, weights []int64) []int64 {
	parts := make([]int64, len(weights))
	if len(weights) == 0 || total == 0 {
		return parts
	}
	if total < 0 {
		for i, p := range Share(-total, weights) {
			parts[i] = -p
		}
		return parts
	}
	w, sum := clean(weights)
	remainders := make([]uint64, len(w))
	left := total
	for i, x := range w {
		hi, lo := bits.Mul64(uint64(total), x)
		q, r := bits.Div64(hi, lo, sum) // hi < sum, for x <= sum and total < 2^63
		parts[i], remainders[i] = int64(q), r
		left -= int64(q)
	}
	for ; left > 0; left-- {
		best := -1
		for i, r := range remainders {
			if r > 0 && (best < 0 || r > remainders[best]) {
				best = i
			}
		}
		parts[best]++
		remainders[best] = 0
	}
	return parts
}

// clean returns weights without negative ones, not all zero, and their sum, which fits: weights too large to add up
// are halved together until it does.
func clean(weights []int64) ([]uint64, uint64) {
	w := make([]uint64, len(weights))
	var high, sum uint64
	for i, x := range weights {
		if x > 0 {
			w[i] = uint64(x)
		}
		high |= w[i]
	}
	if high == 0 {
		for i := range w {
			w[i] = 1
		}
	}
	for shift := 0; ; shift++ {
		var carry, c uint64
		sum = 0
		for i := range w {
			sum, c = bits.Add64(sum, w[i]>>shift, 0)
			carry |= c
		}
		if carry == 0 {
			for i := range w {
				w[i] >>= shift
			}
			return w, sum
		}
	}
}

// Up returns the smallest multiple of step that is at least x, in minor units; step 0 means 1.
func Up(x *big.Rat, step int64) int64 {
	if step <= 0 {
		step = 1
	}
	q, _ := ceilDiv(x.Num(), new(big.Int).Mul(x.Denom(), big.NewInt(step)))
	return q * step
}

// Cents rounds x, in minor units, half away from zero; false if it does not fit.
func Cents(x *big.Rat) (int64, bool) {
	n, d := new(big.Int).Lsh(x.Num(), 1), new(big.Int).Lsh(x.Denom(), 1)
	half := x.Denom()
	if x.Sign() < 0 {
		n.Sub(n, half)
	} else {
		n.Add(n, half)
	}
	n.Quo(n, d)
	return n.Int64(), n.IsInt64()
}

func ceilDiv(n, d *big.Int) (int64, bool) {
	q, m := new(big.Int).DivMod(n, d, new(big.Int))
	if m.Sign() != 0 {
		q.Add(q, big.NewInt(1))
	}
	return q.Int64(), q.IsInt64()
}
