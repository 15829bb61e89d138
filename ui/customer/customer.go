// Package customer is the customer's side of the window: the price each, what it comes to, what more pieces would save,
// and the garments drawn to scale. It is given nothing else, so that nothing else can be seen.
//
// Not in this package: costs, margins, suppliers, methods and hours in any form; the turn between the sides (ui).
package customer

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Side is the customer's side.
type Side struct {
	content *fyne.Container
	scroll  *container.Scroll
	words   *words
	picture *pictures
	front   func() present.Front
}

// New makes the customer's side; front gives what it shows.
func New(front func() present.Front) *Side {
	s := &Side{front: front, words: newWords(), picture: newPictures()}
	s.scroll = parts.NewScroll(container.New(halves{}, s.picture.box, s.words))
	s.content = container.NewStack(s.scroll)
	return s
}

// Content is what fills the window.
func (s *Side) Content() fyne.CanvasObject { return s.content }

// Shown brings the side to the job as it stands.
func (s *Side) Shown() {
	f := s.front()
	s.words.set(f)
	s.picture.set(f)
	s.scroll.Content.Refresh()
	s.scroll.Refresh()
}

// Focus is part of the window's Place; there is nothing to type into.
func (s *Side) Focus() {}

// halves sets the drawings beside the words, or above them where the window is narrow.
type halves struct{}

// Measures at 100 %.
const (
	margin  = 64
	between = 60
	top     = 44
	foot    = 40
)

// MinSize is part of the toolkit's Layout.
func (halves) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(480), max(o[0].MinSize().Height, o[1].MinSize().Height)+look.Px(top+foot))
}

// Layout is part of the toolkit's Layout.
func (halves) Layout(o []fyne.CanvasObject, size fyne.Size) {
	side := min(look.Px(margin), size.Width*0.045)
	wide := (size.Width - 2*side - min(look.Px(between), size.Width*0.045)) / 2
	tall := size.Height - look.Px(top+foot)
	place(o[0], side, look.Px(top), wide, tall)
	place(o[1], size.Width-side-wide, look.Px(top), wide, tall)
}

func place(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}
