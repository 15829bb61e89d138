package gang

import "math"

// most is the largest amount that is reckoned with; a sum that passes it is no longer exact and counts as out of reach.
const most = math.MaxInt64

// times is n × p for amounts from 0 on, or false where that is more than an amount can hold.
func times(n int, p Price) (Price, bool) {
	if n < 0 || p < 0 {
		return 0, false
	}
	if n != 0 && p > most/Price(n) {
		return 0, false
	}
	return Price(n) * p, true
}

// plus is a + b for amounts from 0 on, or false where that is more than an amount can hold.
func plus(a, b Price) (Price, bool) {
	if a < 0 || b < 0 || a > most-b {
		return 0, false
	}
	return a + b, true
}

// sum adds counts from 0 on and stays at the largest where they pass it.
func sum(a, b int) int {
	if a > math.MaxInt-b {
		return math.MaxInt
	}
	return a + b
}

// parts is ceil(a / b) for a ≥ 0, b > 0.
func parts(a, b int) int {
	if a == 0 {
		return 0
	}
	return (a-1)/b + 1
}
