package plain

import "math/big"

func whole(n int) *big.Rat { return big.NewRat(int64(n), 1) }

func zero() *big.Rat { return new(big.Rat) }

func add(xs ...*big.Rat) *big.Rat {
	sum := zero()
	for _, x := range xs {
		sum.Add(sum, x)
	}
	return sum
}

func sub(a *big.Rat, bs ...*big.Rat) *big.Rat {
	d := new(big.Rat).Set(a)
	for _, b := range bs {
		d.Sub(d, b)
	}
	return d
}

func mul(xs ...*big.Rat) *big.Rat {
	p := whole(1)
	for _, x := range xs {
		p.Mul(p, x)
	}
	return p
}

func div(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

func hundredth(x *big.Rat) *big.Rat { return div(x, whole(100)) }

// more is 1 + percent/100, and less is 1 − percent/100.
func more(percent *big.Rat) *big.Rat { return add(whole(1), hundredth(percent)) }
func less(percent *big.Rat) *big.Rat { return sub(whole(1), hundredth(percent)) }

func least(a, b *big.Rat) *big.Rat {
	if b.Cmp(a) < 0 {
		return b
	}
	return a
}

func most(a, b *big.Rat) *big.Rat {
	if b.Cmp(a) > 0 {
		return b
	}
	return a
}

func positive(x *big.Rat) bool { return x.Sign() > 0 }

// floor is the largest whole number not above x.
func floor(x *big.Rat) *big.Rat {
	q := new(big.Int)
	q.Div(x.Num(), x.Denom()) // Euclidean: towards minus infinity for a positive divisor
	return new(big.Rat).SetInt(q)
}

func ceil(x *big.Rat) *big.Rat { return new(big.Rat).Neg(floor(new(big.Rat).Neg(x))) }

func toInt(x *big.Rat) int { return int(x.Num().Int64()) }

// minor is one minor unit: 1/100 for two places.
func minor(places int) *big.Rat {
	u := whole(1)
	for range places {
		u = div(u, whole(10))
	}
	return u
}

// round rounds half away from zero.
func round(x *big.Rat, places int) *big.Rat {
	u := minor(places)
	half := big.NewRat(1, 2)
	n := div(x, u)
	if n.Sign() < 0 {
		return mul(new(big.Rat).Neg(floor(add(new(big.Rat).Neg(n), half))), u)
	}
	return mul(floor(add(n, half)), u)
}

// up is the smallest multiple of step that is not below x.
func up(x, step *big.Rat, places int) *big.Rat {
	if step.Sign() == 0 {
		step = minor(places)
	}
	return mul(ceil(div(x, step)), step)
}

// share splits a total of whole minor units by the largest remainder, ties to the earlier.
func share(total *big.Rat, weights []*big.Rat, places int) []*big.Rat {
	if len(weights) == 0 {
		return nil
	}
	u := minor(places)
	if add(weights...).Sign() == 0 {
		weights = ones(len(weights))
	}
	units, all := div(total, u), add(weights...)
	parts, rests := make([]*big.Rat, len(weights)), make([]*big.Rat, len(weights))
	left := units
	for i, w := range weights {
		exact := div(mul(units, w), all)
		parts[i] = floor(exact)
		rests[i] = sub(exact, parts[i])
		left = sub(left, parts[i])
	}
	for ; positive(left); left = sub(left, whole(1)) {
		best := 0
		for i := range rests {
			if rests[i].Cmp(rests[best]) > 0 {
				best = i
			}
		}
		parts[best] = add(parts[best], whole(1))
		rests[best] = whole(-1)
	}
	for i := range parts {
		parts[i] = mul(parts[i], u)
	}
	return parts
}

func ones(n int) []*big.Rat {
	var all []*big.Rat
	for range n {
		all = append(all, whole(1))
	}
	return all
}
