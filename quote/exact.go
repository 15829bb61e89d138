package quote

import (
	"math/big"
	"math/bits"

	"pressworth/quote/money"
)

// tooLarge is what the checked arithmetic panics with; Price and Cheapest turn it into a Problem.
type tooLarge struct{}

const tooLargeText = "the amounts are too large to be worked out: enter smaller ones"

func mul(a, b int64) int64 {
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	if hi != 0 || lo > 1<<62 {
		panic(tooLarge{})
	}
	if (a < 0) != (b < 0) {
		return -int64(lo)
	}
	return int64(lo)
}

func add(a, b int64) int64 {
	if c := a + b; (c > a) == (b > 0) && c < 1<<62 && c > -1<<62 {
		return c
	}
	panic(tooLarge{})
}

func magnitude(a int64) uint64 {
	if a < 0 {
		return -uint64(a)
	}
	return uint64(a)
}

func sum(xs []int64) (t int64) {
	for _, x := range xs {
		t = add(t, x)
	}
	return t
}

func fits(x int64, ok bool) int64 {
	if !ok || x > 1<<62 || x < -1<<62 {
		panic(tooLarge{})
	}
	return x
}

func cents(x *big.Rat) int64 { return fits(money.Cents(x)) }

func up(x *big.Rat, step int64) int64 {
	if x.Sign() <= 0 {
		return 0
	}
	if new(big.Int).Quo(x.Num(), x.Denom()).BitLen() > 61 {
		panic(tooLarge{})
	}
	return money.Up(x, step)
}

func rat(n int64) *big.Rat            { return new(big.Rat).SetInt64(n) }
func frac(a, b int64) *big.Rat        { return big.NewRat(a, b) }
func times(xs ...*big.Rat) *big.Rat   { return fold((*big.Rat).Mul, xs) }
func plus(xs ...*big.Rat) *big.Rat    { return fold((*big.Rat).Add, xs) }
func minus(a, b *big.Rat) *big.Rat    { return new(big.Rat).Sub(a, b) }
func over(a, b *big.Rat) *big.Rat     { return new(big.Rat).Quo(a, b) }
func percent(n money.Number) *big.Rat { return times(n.Rat(), frac(1, 100)) }

// plusPercent is 1 + n/100.
func plusPercent(n money.Number) *big.Rat { return plus(rat(1), percent(n)) }

// lessPercent is 1 - n/100.
func lessPercent(n money.Number) *big.Rat { return minus(rat(1), percent(n)) }

func fold(op func(z, x, y *big.Rat) *big.Rat, xs []*big.Rat) *big.Rat {
	z := new(big.Rat).Set(xs[0])
	for _, x := range xs[1:] {
		op(z, z, x)
	}
	return z
}

func power10(n int) int64 {
	p := int64(1)
	for range n {
		p *= 10
	}
	return p
}

// linear is a·x + b·y over a common divisor, none of them negative: a cost that follows two counts and is rounded once.
type linear struct {
	a, b, d uint64 // valid where small
	small   bool
	ra, rb  *big.Rat
}

func newLinear(a, b *big.Rat) linear {
	l := linear{ra: a, rb: b}
	d := new(big.Int).Mul(a.Denom(), new(big.Int).Quo(b.Denom(), new(big.Int).GCD(nil, nil, a.Denom(), b.Denom())))
	na := new(big.Int).Mul(a.Num(), new(big.Int).Quo(d, a.Denom()))
	nb := new(big.Int).Mul(b.Num(), new(big.Int).Quo(d, b.Denom()))
	if na.BitLen() < 62 && nb.BitLen() < 62 && d.BitLen() < 62 {
		l.a, l.b, l.d, l.small = na.Uint64(), nb.Uint64(), d.Uint64(), true
	}
	return l
}

// round is cents(a·x + b·y), x and y not negative.
func (l linear) round(x, y int64) int64 {
	if l.small {
		h1, l1 := bits.Mul64(l.a, uint64(x))
		h2, l2 := bits.Mul64(l.b, uint64(y))
		lo, c := bits.Add64(l1, l2, 0)
		hi := h1 + h2 + c // each below 2^61
		if hi < l.d {
			q, r := bits.Div64(hi, lo, l.d)
			if r >= l.d-r {
				q++
			}
			return fits(int64(q&(1<<63-1)), q < 1<<62)
		}
	}
	return cents(plus(times(l.ra, rat(x)), times(l.rb, rat(y))))
}
