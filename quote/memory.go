package quote

import (
	"errors"
	"fmt"
	"sync/atomic"

	"pressworth/quote/gang"
)

// Memory remembers what earlier jobs taught about sheets and rolls, so that a job much like the last one, priced on the
// next keystroke, is planned faster. What it holds never changes a result. It is not safe for use by several
// goroutines at once, but for Stop.
type Memory struct {
	sheets map[string]*gang.Sheets
	rolls  map[string]*gang.Roll
	beside *Memory // of the goroutine that works ahead
	stop   *atomic.Bool
}

// ErrStopped is returned by work that was stopped.
var ErrStopped = errors.New("stopped")

// stopped ends work between two quantities.
type stopped struct{}

// Stop ends the work that goes on at present with ErrStopped, at the next quantity it comes to. Any goroutine may call
// it; where nothing goes on it does nothing.
func (k *Memory) Stop() { k.stop.Store(true) }

func (k *Memory) mayGoOn() {
	if k != nil && k.stop.Load() {
		panic(stopped{})
	}
}

// mostPlanners is how many planners a memory holds of a kind; a fuller one is emptied.
const mostPlanners = 64

// NewMemory makes an empty memory.
func NewMemory() *Memory { return newMemory(new(atomic.Bool)) }

func newMemory(stop *atomic.Bool) *Memory {
	return &Memory{sheets: map[string]*gang.Sheets{}, rolls: map[string]*gang.Roll{}, stop: stop}
}

func (k *Memory) sheetsOf(card gang.SheetCard, items []gang.Item) *gang.Sheets {
	return recall(k.sheets, fmt.Sprint(card, items), func() *gang.Sheets { return gang.NewSheets(card, items) })
}

// rollOf ignores inks, which do not matter on a roll.
func (k *Memory) rollOf(card gang.RollCard, items []gang.Item) *gang.Roll {
	plain := make([]gang.Item, len(items))
	for i, it := range items {
		plain[i] = gang.Item{Placement: it.Placement, W: it.W, H: it.H, Turn: it.Turn}
	}
	return recall(k.rolls, fmt.Sprint(card, plain), func() *gang.Roll { return gang.NewRoll(card, plain) })
}

func recall[T any](known map[string]*T, key string, make func() *T) *T {
	x, ok := known[key]
	if !ok {
		if len(known) >= mostPlanners {
			clear(known)
		}
		x = make()
		known[key] = x
	}
	return x
}
