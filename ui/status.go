package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// status is the bar at the bottom.
type status struct {
	object  fyne.CanvasObject
	demo    *parts.Badge
	look    *parts.Badge // looking only
	text    *parts.Text
	buttons *fyne.Container
	papers  []*parts.Button
	ready   func() bool
}

func newStatus(w *Window) *status {
	s := &status{
		demo: parts.NewBadge("DEMO", look.Warn), look: parts.NewBadge("LOOK ONLY", look.Warn),
		text: parts.NewText("", parts.MutedStyle.Shortened()), ready: w.deps.Presenter.Ready,
	}
	if !w.deps.LookOnly {
		s.look.Hide()
	}
	write := func(p Paper) func() { return func() { w.Write(p) } }
	turn := parts.NewButton(parts.Quiet, "To customer", "Ctrl+T", w.TurnToCustomer)
	s.papers = []*parts.Button{
		parts.NewButton(parts.Quiet, "Cost sheet", "", write(CostPaper)),
		parts.NewButton(parts.Quiet, "E-mail", "", write(EmailPaper)),
		parts.NewButton(parts.Filled, "Quote PDF", "", write(QuotePaper)),
	}
	s.buttons = parts.Row(10, nil, s.papers[0], s.papers[1], turn, s.papers[2])
	line := parts.Row(10, []parts.Track{parts.Fit(), parts.Fit(), parts.Share(1), parts.Fit(), parts.Fit()}, s.demo, s.look, s.text, s.buttons, parts.Gap(0, look.FieldHeight))
	ground := container.NewStack(parts.NewGround(look.Panel), parts.Inset(16, 6, line))
	s.object = parts.Column(0, parts.NewRule(), ground)
	return s
}

// show follows the quote on the counter.
func (s *status) show(v present.Status) {
	if s.look.Visible() {
		v.Saved, v.Failed = "another window has this shop open: nothing is saved here, and what would save cannot be pressed", false
	}
	var words []string
	for _, word := range []string{v.Number, v.State, v.Saved} {
		if word != "" {
			words = append(words, word)
		}
	}
	style := parts.MutedStyle.Shortened()
	if v.Failed {
		style = style.In(look.Fault)
	}
	s.text.Set(strings.Join(words, " · "), style)
	if s.demo.Visible() != v.Demo {
		if v.Demo {
			s.demo.Show()
		} else {
			s.demo.Hide()
		}
	}
	for _, b := range s.papers {
		if s.ready() {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

// forPlace shows the buttons of a quote only where there is one: other places have their own filled button.
func (s *status) forPlace(at placeID) {
	if at == counterPlace {
		s.buttons.Show()
	} else {
		s.buttons.Hide()
	}
}
