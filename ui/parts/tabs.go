package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// Tab is one word of Tabs: a page of a place, underlined while it is shown.
type Tab struct {
	pressable
	word   string
	chosen bool
}

// Tabs is the pages of a place as words in a line.
type Tabs struct {
	holder
	tabs  []*Tab
	shown int

	OnChosen func(i int)
}

// NewTabs makes the line; the first page is shown at first.
func NewTabs(words ...string) *Tabs {
	t := &Tabs{}
	line := Row(18, nil)
	for i, word := range words {
		tab := &Tab{word: word, chosen: i == 0}
		tab.self, tab.act = tab, func() { t.Choose(i) }
		tab.ExtendBaseWidget(tab)
		t.tabs = append(t.tabs, tab)
		line.Add(tab)
	}
	t.hold(t, line)
	return t
}

// Shown is the page that is shown.
func (t *Tabs) Shown() int { return t.shown }

// Tab is one of the words, for focus and for tests.
func (t *Tabs) Tab(i int) *Tab { return t.tabs[i] }

// Choose shows a page and tells so.
func (t *Tabs) Choose(i int) {
	t.SetShown(i)
	if t.OnChosen != nil {
		t.OnChosen(i)
	}
}

// SetShown underlines a page without telling.
func (t *Tabs) SetShown(i int) {
	t.shown = i
	for k, tab := range t.tabs {
		if tab.chosen != (k == i) {
			tab.chosen = k == i
			tab.repaint()
		}
	}
}

// Text is the tab's word.
func (t *Tab) Text() string { return t.word }

// Chosen tells whether its page is shown.
func (t *Tab) Chosen() bool { return t.chosen }

func (t *Tab) style() Style {
	if t.chosen {
		return Style{Size: look.Title, Weight: Semibold}
	}
	return Style{Size: look.Title, Color: look.Muted}
}

// CreateRenderer is part of the toolkit's Widget.
func (t *Tab) CreateRenderer() fyne.WidgetRenderer {
	over, line, word := canvas.NewRectangle(nil), canvas.NewRectangle(nil), canvas.NewText("", nil)
	t.drawn = true
	return newPainted(painted{
		part: t, objects: []fyne.CanvasObject{over, line, word},
		paint: func() {
			border, width := look.Clear, float32(0)
			if t.focused {
				border, width = look.Accent, look.FocusBorder
			}
			fill := look.Clear
			if t.hovered && !t.chosen {
				fill = look.Hover
			}
			setRect(over, fill, border, width, look.FieldRadius)
			setRect(line, look.Accent, look.Clear, 0, 1)
			show(line, t.chosen)
			setText(word, t.word, t.style())
		},
		layout: func(s fyne.Size) {
			place(over, 0, 0, s.Width, s.Height-look.Px(4))
			place(word, look.Px(6), 0, max(s.Width-look.Px(6), 0), s.Height-look.Px(4))
			place(line, look.Px(6), s.Height-look.Px(2.5), max(s.Width-look.Px(12), 0), look.Px(2.5))
		},
		min: func() fyne.Size {
			wide := Style{Size: look.Title, Weight: Semibold}.measure(t.word).Width
			return fyne.NewSize(wide+look.Px(12), look.Px(30))
		},
	})
}
