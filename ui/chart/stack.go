package chart

import (
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Slice is one part of a stack.
type Slice struct {
	Kind     look.Kind
	Fraction float64 // of the whole
}

// Stack is one bar made of slices in the order given: what the cost is made of. The rows beside it name the slices in
// the same order.
type Stack struct {
	parts.Figure
	slices []Slice
	faded  bool
}

// NewStack makes an empty stack.
func NewStack() *Stack {
	s := &Stack{}
	s.SetUp(s, func() fyne.Size { return fyne.NewSize(look.Px(120), look.Px(12)) }, s.draw)
	return s
}

// Set changes the slices; faded shows them as figures that no longer hold.
func (s *Stack) Set(parts []Slice, faded bool) {
	if slices.Equal(s.slices, parts) && s.faded == faded {
		return
	}
	s.slices, s.faded = slices.Clone(parts), faded
	s.Redraw()
}

func (s *Stack) draw(p *parts.Pen, size fyne.Size) {
	x := float32(0)
	for i, part := range s.slices {
		w := size.Width * float32(part.Fraction)
		gap := float32(1)
		if i == len(s.slices)-1 {
			gap = 0
		}
		c := fade(part.Kind.Color(), 1)
		if s.faded {
			c = fade(part.Kind.Color(), 0.35)
		}
		p.Rect(parts.Box{X: x, W: max(w-gap, 1), H: size.Height}, parts.Fill{Color: c, Radius: 2})
		x += w
	}
}
