// Package counter is the Counter: the job form on the left, the live cost panel on the right. Every key goes to the
// presenter, which prices the job and hands back a view; form and panel then set what differs and nothing else.
//
// Not in this package: any figure or sentence (ui/present makes them), the window around the Counter, the customer's
// side (ui/customer), files.
package counter

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Counter is the place where a job is priced.
type Counter struct {
	content   *fyne.Container
	form      *form
	panel     *panel
	presenter *present.Counter
}

// New makes the Counter over a presenter.
func New(p *present.Counter) *Counter {
	c := &Counter{presenter: p}
	c.form = newForm(p)
	c.panel = newPanel(p)
	c.content = container.New(sides{}, c.form.scroll, parts.NewGround(look.Panel),
		parts.NewUpright(), c.panel.scroll)
	p.Watch(c.show)
	return c
}

// Content is the Counter's part of the window.
func (c *Counter) Content() fyne.CanvasObject { return c.content }

// Shown takes the prices in force anew: they may have been changed in another place of the window.
func (c *Counter) Shown() { c.presenter.Reload() }

// Undo takes the last edit back.
func (c *Counter) Undo() { c.presenter.Undo() }

// Redo does again what Undo took back.
func (c *Counter) Redo() { c.presenter.Redo() }

// Focus goes to where a new job begins.
func (c *Counter) Focus() { parts.Focus(c.form.head.customer.Field) }

func (c *Counter) show(v present.View) {
	c.form.show(v)
	c.panel.show(v.Panel)
}

// sides lays the form out beside the panel, which gives way in a narrow window.
type sides struct{}

// Widths at 100 %.
const (
	panelWide   = look.PanelWidth
	panelNarrow = 372
	panelLeast  = 296
	formWanted  = 560
	formLeast   = 396
)

// panel is how wide the panel is: it gives way to the form down to panelNarrow, and in the narrowest window both do.
func (sides) panel(width float32) float32 {
	wide := min(max(width-look.Px(formWanted), look.Px(panelNarrow)), look.Px(panelWide))
	return max(min(wide, width-look.Px(formLeast)), look.Px(panelLeast))
}

// MinSize is part of the toolkit's Layout.
func (s sides) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(formLeast+panelLeast), look.Px(400))
}

// Layout is part of the toolkit's Layout.
func (s sides) Layout(o []fyne.CanvasObject, size fyne.Size) {
	wide := s.panel(size.Width)
	left := max(size.Width-wide, 0)
	put(o[0], 0, 0, left, size.Height)
	put(o[1], left, 0, wide, size.Height)
	put(o[2], left, 0, look.Hairline, size.Height)
	put(o[3], left, 0, wide, size.Height)
}
