package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// blockWords draws everything of a block that is not typed into.
type blockWords struct {
	parts.Figure
	block *block
}

func (w *blockWords) headTexts() (name, note string) {
	return blockName(w.block.view), w.block.view.Note
}

// headWidth is how far the header's words reach.
func (w *blockWords) headWidth() float32 {
	name, note := w.headTexts()
	x := parts.StrongStyle.Measure(name).Width
	if note != "" && w.noteFits() {
		x += px(6) + parts.MutedStyle.Measure(note).Width
	}
	return x
}

// noteFits says whether the note has room beside the names of the sizes.
func (w *blockWords) noteFits() bool {
	name, note := w.headTexts()
	g := gridFor(w.Size().Width, w.block.most)
	if captioned(w.block.view, g) {
		return false
	}
	x, _ := g.at(0, min(len(w.block.view.Sizes), g.perLine))
	used := parts.StrongStyle.Measure(name).Width + px(6) + parts.MutedStyle.Measure(note).Width
	return used+px(80) < x // "+ colour" follows it
}

func (w *blockWords) draw(p *parts.Pen, size fyne.Size) {
	b := w.block
	name, note := w.headTexts()
	g := gridFor(size.Width, b.most)
	tall := px(blockHeadTall)
	p.Text(parts.Box{W: size.Width, H: tall}, name, parts.StrongStyle)
	if note != "" && w.noteFits() {
		x := parts.StrongStyle.Measure(name).Width + px(6)
		p.Text(parts.Box{X: x, W: parts.MutedStyle.Measure(note).Width + 1, H: tall}, note, parts.MutedStyle)
	}
	if !captioned(b.view, g) {
		w.heads(p, g, 0, tall)
	}
	y := tall
	for _, r := range b.view.Rows {
		w.row(p, g, r, y, size.Width)
		y += g.rowTall(b.view, r)
	}
}

// heads names the sizes over the cells.
func (w *blockWords) heads(p *parts.Pen, g cellGrid, y, tall float32) {
	n := len(w.block.view.Sizes)
	for i, size := range w.block.view.Sizes {
		x, dy := g.at(i, n)
		if size == "OS" && n == 1 {
			size = "one size"
			x -= px(20)
			p.Text(parts.Box{X: x, Y: y, W: g.wide + px(20), H: tall}, size, parts.CaptionStyle.Right())
			continue
		}
		p.Text(parts.Box{X: x, Y: y + dy, W: g.wide, H: tall}, size, parts.CaptionStyle.Right())
	}
}

func (w *blockWords) row(p *parts.Pen, g cellGrid, r present.BlockRow, y, width float32) {
	tall := px(look.FieldHeight)
	b := w.block.view
	if b.Own {
		y += px(ownTall)
	} else if c, ok := parts.ParseHex(r.Hex); ok {
		p.Disc(px(6), y+tall/2, px(6), c, look.Color(look.Rule))
	}
	bottom := y + g.rowTall(b, r) - px(problemTall+blockRowApart)
	if b.Own {
		bottom -= px(ownTall)
	}
	if captioned(b, g) {
		w.heads(p, g, y, px(captionTall))
	}
	if b.Own {
		y += px(captionTall)
	}
	right := width - px(blockRemove)
	p.Text(parts.Box{X: right - px(blockTotal), Y: y, W: px(blockTotal), H: tall}, r.Total, parts.StrongStyle.Right())
	if r.Problem != "" {
		p.Text(parts.Box{X: px(18), Y: bottom, W: width - px(18), H: px(problemTall)}, r.Problem, parts.CaptionStyle.In(look.Fault))
	}
}
