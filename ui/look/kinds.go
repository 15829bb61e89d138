package look

import "image/color"

// Kind is a kind of cost as the window and the documents group it.
type Kind int

// The kinds in the order in which they are listed where no amount says otherwise.
const (
	Blanks Kind = iota
	Transfers
	Pressing
	Overhead
	Freight
	Art
	Rest
)

// Kinds are all kinds.
var Kinds = []Kind{Blanks, Transfers, Pressing, Overhead, Freight, Art, Rest}

var kindNames = [...]string{"Blanks", "Transfers", "Pressing time", "Overhead", "Freight", "Art", "The rest"}

// kindColors are seven colours told apart with any kind of colour vision: six of Okabe and Ito, Color Universal Design
// (2008), and a grey.
var kindColors = [...]uint32{0x0072B2, 0xE69F00, 0x009E73, 0x56B4E9, 0xCC79A7, 0xD55E00, 0x8A8A8A}

// Name is the kind in the trade's words.
func (k Kind) Name() string { return kindNames[k] }

// Color is the kind's colour, the same in light and dark.
func (k Kind) Color() color.NRGBA { return rgb(kindColors[k]) }

// KindOf groups the engine's kinds of cost line.
func KindOf(costLine string) Kind {
	switch costLine {
	case "blanks":
		return Blanks
	case "transfers":
		return Transfers
	case "labour":
		return Pressing
	case "overhead":
		return Overhead
	case "freight":
		return Freight
	case "art":
		return Art
	}
	return Rest
}
