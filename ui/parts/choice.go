package parts

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// Choice is one of several options. Typing goes to the option that begins so; Enter, Space or Down opens the list.
type Choice struct {
	pressable
	options []Option
	chosen  int
	typed   string
	wrong   bool
	drop    drop
	small   bool
	bare    bool // no border until it is reached

	OnChanged func(Option) // the user has chosen
}

// NewChoice makes a choice; nothing is chosen at first.
func NewChoice(options []Option, changed func(Option)) *Choice {
	c := &Choice{options: options, chosen: -1, OnChanged: changed}
	c.self, c.act = c, c.toggle
	c.drop = drop{owner: c, pick: c.take}
	c.ExtendBaseWidget(c)
	return c
}

// Words makes options of words that stand for themselves.
func Words(words ...string) []Option {
	options := make([]Option, len(words))
	for i, w := range words {
		options[i] = Option{Key: w, Name: w}
	}
	return options
}

// Small makes the choice as high as a field in a table.
func (c *Choice) Small() *Choice {
	c.small = true
	return c
}

// SetOptions changes what there is to choose from; the chosen key stays, if it is still there.
func (c *Choice) SetOptions(options []Option) {
	key := c.Key()
	c.options, c.chosen = options, -1
	c.SetKey(key)
	c.repaint()
}

// Key is the chosen option's key, or nothing.
func (c *Choice) Key() string {
	if c.chosen < 0 || c.chosen >= len(c.options) {
		return ""
	}
	return c.options[c.chosen].Key
}

// Text is the chosen option's name, or nothing.
func (c *Choice) Text() string {
	if c.chosen < 0 || c.chosen >= len(c.options) {
		return ""
	}
	return c.options[c.chosen].Name
}

// SetKey chooses by key; OnChanged is not told. An unknown key chooses nothing.
func (c *Choice) SetKey(key string) {
	at := -1
	for i, o := range c.options {
		if o.Key == key {
			at = i
		}
	}
	if at != c.chosen {
		c.chosen = at
		c.repaint()
	}
}

// SetWrong marks the border as wrong.
func (c *Choice) SetWrong(wrong bool) {
	if c.wrong != wrong {
		c.wrong = wrong
		c.repaint()
	}
}

func (c *Choice) toggle() {
	if c.drop.list() != nil {
		c.drop.close(true)
		return
	}
	if !c.focused {
		Focus(c)
	}
	c.drop.open(c.options, c.chosen)
}

func (c *Choice) take(i int) {
	c.typed = ""
	if i == c.chosen || i < 0 || i >= len(c.options) {
		return
	}
	c.chosen = i
	c.repaint()
	if c.OnChanged != nil {
		c.OnChanged(c.options[i])
	}
}

// FocusLost is part of the toolkit's Focusable.
func (c *Choice) FocusLost() {
	c.typed = ""
	c.drop.close(false)
	c.pressable.FocusLost()
}

// TypedRune goes to the option that begins with what was typed.
func (c *Choice) TypedRune(r rune) {
	if c.disabled || r == ' ' && c.typed == "" {
		return
	}
	for _, typed := range []string{c.typed + string(r), string(r)} {
		if i := c.beginning(typed); i >= 0 {
			c.typed = typed
			c.mark(i)
			return
		}
	}
}

func (c *Choice) beginning(text string) int {
	text = strings.ToLower(text)
	for i, o := range c.options {
		if strings.HasPrefix(strings.ToLower(o.Name), text) {
			return i
		}
	}
	return -1
}

// mark goes to an option: in the open list only there, else it is taken.
func (c *Choice) mark(i int) {
	if list := c.drop.list(); list != nil {
		list.move(i - list.marked)
		return
	}
	typed := c.typed
	c.take(i)
	c.typed = typed
}

// TypedKey is part of the toolkit's Focusable.
func (c *Choice) TypedKey(e *fyne.KeyEvent) {
	if c.disabled {
		passKey(c, e)
		return
	}
	list := c.drop.list()
	by := map[fyne.KeyName]int{fyne.KeyDown: 1, fyne.KeyUp: -1, fyne.KeyPageDown: listRows - 1, fyne.KeyPageUp: 1 - listRows}[e.Name]
	switch {
	case list == nil && e.Name == fyne.KeyDown:
		c.toggle()
	case list == nil && e.Name == fyne.KeyUp:
		c.take(max(c.chosen-1, 0))
	case list != nil && by != 0:
		c.typed = ""
		list.move(by)
	case list != nil && e.Name == fyne.KeyEscape:
		c.drop.close(true)
	case list != nil && (e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter):
		list.choose()
	default:
		c.pressable.TypedKey(e)
	}
}

// CreateRenderer is part of the toolkit's Widget.
func (c *Choice) CreateRenderer() fyne.WidgetRenderer {
	box, word := canvas.NewRectangle(nil), canvas.NewText("", nil)
	left, right := canvas.NewLine(nil), canvas.NewLine(nil)
	c.drawn = true
	return newPainted(painted{
		part: c, objects: []fyne.CanvasObject{box, word, left, right},
		paint: func() {
			c.paintBox(box)
			for _, l := range []*canvas.Line{left, right} {
				if m := look.Color(look.Muted); l.StrokeColor != m {
					l.StrokeColor, l.StrokeWidth = m, 1.4
					l.Refresh()
				}
			}
		},
		layout: func(s fyne.Size) {
			place(box, 0, 0, s.Width, s.Height)
			x, arrow := look.Px(fieldPad), look.Px(8)
			room := s.Width - 2*x - arrow - look.Px(4)
			style := Style{}
			if c.disabled {
				style = MutedStyle
			}
			setText(word, shorten(c.Text(), style, room), style)
			place(word, x, 0, max(room, 0), s.Height)
			layArrow(left, right, s.Width-x-arrow, s.Height/2, arrow)
			arrows := !c.disabled && (!c.bare || c.hovered || c.focused)
			show(left, arrows)
			show(right, arrows)
		},
		min: func() fyne.Size {
			h := look.Px(look.FieldHeight)
			if c.small {
				h = look.Px(look.CellHeight)
			}
			return fyne.NewSize(look.Px(64), h)
		},
	})
}

func layArrow(left, right *canvas.Line, x, middle, wide float32) {
	rise := wide * 0.28
	left.Position1, left.Position2 = fyne.NewPos(x, middle-rise), fyne.NewPos(x+wide/2, middle+rise)
	right.Position1, right.Position2 = fyne.NewPos(x+wide/2, middle+rise), fyne.NewPos(x+wide, middle-rise)
}

func (c *Choice) paintBox(box *canvas.Rectangle) {
	paintBox(box, boxState{focused: c.focused, wrong: c.wrong, bare: c.bare, hovered: c.hovered, disabled: c.disabled})
}
