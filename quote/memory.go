package quote

import (
	"fmt"

	"pressworth/quote/gang"
)

// Memory remembers what earlier jobs taught about sheets and rolls, so that a job much like the last one, priced on the
// next keystroke, is planned faster. What it holds never changes a result. It is not safe for use by several
// goroutines at once.
type Memory struct {
	sheets map[string]*gang.Sheets
	rolls  map[string]*gang.Roll
	beside *Memory // of the goroutine that works ahead
}

// mostPlanners is how many planners a memory holds of a kind; a fuller one is emptied.
const mostPlanners = 64

// NewMemory makes an empty memory.
func NewMemory() *Memory {
	return &Memory{sheets: map[string]*gang.Sheets{}, rolls: map[string]*gang.Roll{}}
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
