package catalog

import (
	"math"
	"slices"
)

// Quartiles are how figures lie: the middle one, and the quarter points below and above it. Quartiles are interpolated
// linearly between the two nearest figures: type 7 of R. J. Hyndman and Y. Fan, Sample Quantiles in Statistical
// Packages, The American Statistician 50 (1996) 361–365; the reference from memory.
type Quartiles struct {
	Count                int
	Lower, Median, Upper float64
}

// QuartilesOf is the spread of figures; its zero value for none.
func QuartilesOf(figures []float64) Quartiles {
	if len(figures) == 0 {
		return Quartiles{}
	}
	sorted := slices.Sorted(slices.Values(figures))
	at := func(part float64) float64 {
		h := part * float64(len(sorted)-1)
		low := int(math.Floor(h))
		high := min(low+1, len(sorted)-1)
		return sorted[low] + (h-float64(low))*(sorted[high]-sorted[low])
	}
	return Quartiles{Count: len(sorted), Lower: at(0.25), Median: at(0.5), Upper: at(0.75)}
}
