package counter

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/assets/drawing"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// inkField takes inks as typed, divided by commas, and shows them as chips while it is not being typed into.
type inkField struct {
	box   *fyne.Container
	field *parts.Field
	chips *chips
	text  string
}

// chips draws inks as words in rounded borders with the ink's colour before them.
type chips struct {
	parts.Figure
	words []string
}

func newInkField(p *present.Counter, set func(text string), next func()) *inkField {
	k := &inkField{field: parts.NewField("").Bare(), chips: &chips{}}
	k.chips.SetUp(k.chips, func() fyne.Size { return fyne.NewSize(px(60), px(22)) }, k.chips.draw)
	k.field.OnChanged = func(text string) {
		k.text = text
		set(text)
	}
	k.field.OnSubmitted = func(string) { next() }
	k.field.OnFocus = func(gained bool) {
		if gained {
			k.field.SetText(k.text)
		} else {
			k.field.SetText("")
			p.Leave()
		}
		k.dress()
	}
	k.box = container.NewStack(k.field, k.chips)
	return k
}

func (k *inkField) show(text string, words []string, problem bool, anew bool) {
	k.text = text
	k.field.SetWrong(problem)
	if k.field.Focused() && anew {
		k.field.SetText(text)
	}
	if !sameWords(k.chips.words, words) {
		k.chips.words = words
		k.chips.Redraw()
	}
	k.dress()
}

// dress shows either the chips or the text.
func (k *inkField) dress() {
	visible(k.chips, !k.field.Focused())
	hint := "white, gold · 2 · full colour"
	if len(k.chips.words) > 0 && !k.field.Focused() {
		hint = ""
	}
	k.field.SetHint(hint)
}

func sameWords(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func (c *chips) draw(p *parts.Pen, size fyne.Size) {
	style := parts.Style{Size: look.Caption}
	x, h := px(9), px(21)
	y := (size.Height - h) / 2
	for i, word := range c.words {
		disc, dotted := inkColor(word)
		pad, room := px(9), float32(0)
		if dotted {
			room = px(15)
		}
		w := style.Measure(word).Width + 2*pad + room
		if x+w > size.Width && i > 0 {
			p.Text(parts.Box{X: x, Y: y, W: size.Width - x, H: h}, "+"+strconv.Itoa(len(c.words)-i), style.In(look.Muted))
			return
		}
		w = min(w, size.Width-x)
		p.Rect(parts.Box{X: x, Y: y, W: w, H: h}, parts.Fill{Color: look.Color(look.Fill), Border: look.Color(look.Rule), Radius: h / 2})
		if dotted {
			c.disc(p, word, disc, x+pad+px(4), y+h/2)
		}
		p.Text(parts.Box{X: x + pad + room, Y: y, W: max(w-pad-room-px(4), 0), H: h}, word, style)
		x += w + px(5)
	}
}

// disc shows an ink's colour; full colour is a disc of four.
func (c *chips) disc(p *parts.Pen, word string, fill color.Color, x, y float32) {
	if word != fullColor {
		p.Disc(x, y, px(5.5), fill, look.Color(look.Muted))
		return
	}
	r := px(3)
	for i, k := range []look.Kind{look.Art, look.Transfers, look.Pressing, look.Blanks} {
		dx, dy := float32(i%2*2-1)*r*0.8, float32(i/2*2-1)*r*0.8
		p.Disc(x+dx, y+dy, r, k.Color(), nil)
	}
}

const fullColor = "full colour"

// inkColor is the colour to show for an ink; false where its name says none.
func inkColor(word string) (color.Color, bool) {
	if word == fullColor {
		return color.Transparent, true
	}
	hex, ok := drawing.InkColor(word)
	if !ok {
		return nil, false
	}
	return parts.ParseHex(hex)
}
