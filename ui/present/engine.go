package present

import (
	"pressworth/catalog"
	"pressworth/quote"
)

// NewEngine is the real engine with a memory for the keys of one Counter, so that a job much like the last one is
// planned faster, and another for the work that follows in the background, one run at a time.
func NewEngine() Engine {
	keys, behind := quote.NewMemory(), quote.NewMemory()
	return Engine{
		Freeze: catalog.Freeze, Price: keys.First, Settled: keys.Price,
		Whole: behind.Price, Cheapest: behind.Cheapest, Levers: behind.Levers, Stop: behind.Stop,
	}
}
