package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// cellGrid is where the cells of a row stand: against the right edge, over several lines where there is no room.
type cellGrid struct {
	wide, apart float32
	left        float32 // where the first cell of a full line begins
	perLine     int
}

// gridFor finds the widest cells that let n of them stand side by side.
func gridFor(width float32, n int) cellGrid {
	right := width - px(blockTotal+blockRemove)
	room := right - px(blockLabel)
	for _, try := range []cellGrid{{wide: 53, apart: 10}, {wide: 46, apart: 7}, {wide: 40, apart: 5}} {
		try.wide, try.apart = px(try.wide), px(try.apart)
		if float32(n)*(try.wide+try.apart) <= room {
			try.left, try.perLine = right-float32(n)*(try.wide+try.apart), max(n, 1)
			return try
		}
	}
	g := cellGrid{wide: px(42), apart: px(5)}
	g.perLine = max(int(room/(g.wide+g.apart)), 1)
	g.left = right - float32(g.perLine)*(g.wide+g.apart)
	return g
}

// at is where cell i of n stands; rows that have fewer sizes than the widest end at the same edge.
func (g cellGrid) at(i, n int) (x, y float32) {
	line := i / g.perLine
	inLine := min(n-line*g.perLine, g.perLine)
	if n <= g.perLine {
		inLine = n
	}
	x = g.left + float32(g.perLine-inLine+i%g.perLine)*(g.wide+g.apart)
	return x, float32(line) * px(look.FieldHeight+captionTall)
}

// captionTall is the room for the names of sizes over a line of cells that has its own.
const captionTall = 15

// lines is how many lines the cells of a row take.
func (g cellGrid) lines(n int) int { return max((n+g.perLine-1)/g.perLine, 1) }

// captioned says whether the names of the sizes stand over every row instead of in the header: where they take several
// lines, or the style's name needs the room.
func captioned(b present.Block, g cellGrid) bool {
	n := len(b.Sizes)
	if b.Own || g.lines(n) > 1 {
		return true
	}
	x, _ := g.at(0, n)
	return n > 0 && parts.StrongStyle.Measure(blockName(b)).Width > x+g.wide-parts.CaptionStyle.Measure(b.Sizes[0]).Width-px(8)
}

// blockName is what a block is called.
func blockName(b present.Block) string {
	if b.Number == "" {
		return b.Name
	}
	return b.Number + " " + b.Name
}

// rowTall is the height of a row with its problem and the fields of a customer's own garment.
func (g cellGrid) rowTall(b present.Block, r present.BlockRow) float32 {
	h := px(look.FieldHeight)
	if captioned(b, g) {
		h = float32(g.lines(len(b.Sizes))) * px(look.FieldHeight+captionTall)
	}
	if b.Own {
		h += px(ownTall)
	}
	if r.Problem != "" {
		h += px(problemTall)
	}
	return h + px(blockRowApart)
}

// blockLayout sets a block's parts.
type blockLayout struct{ b *block }

// MinSize is part of the toolkit's Layout.
func (l blockLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	width := l.b.box.Size().Width
	if width == 0 {
		width = px(640)
	}
	g := gridFor(width, l.b.most)
	h := px(blockHeadTall)
	for _, r := range l.b.view.Rows {
		h += g.rowTall(l.b.view, r)
	}
	if l.b.offersColors() && !l.b.moreFits(g) {
		h += px(moreBelow)
	}
	return fyne.NewSize(px(300), h)
}

// Layout is part of the toolkit's Layout.
func (l blockLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	b := l.b
	put(b.words, 0, 0, size.Width, size.Height)
	g := gridFor(size.Width, b.most)
	y := px(blockHeadTall)
	for i, r := range b.rows {
		if i >= len(b.view.Rows) {
			break
		}
		b.lay(r, g, y, size.Width)
		y += g.rowTall(b.view, b.view.Rows[i])
	}
	b.layMore(g, y)
}

// moreBelow is the room for "+ colour" where it stands below the rows.
const moreBelow = 26

// offersColors says whether another colour can be added.
func (b *block) offersColors() bool { return !b.view.Own && len(b.view.Colors) > len(b.view.Rows) }

// moreFits says whether "+ colour" has room between the header's words and the names of the sizes.
func (b *block) moreFits(g cellGrid) bool {
	if captioned(b.view, g) {
		return true
	}
	x, _ := g.at(0, min(len(b.view.Sizes), g.perLine))
	return b.words.headWidth()+px(8)+b.more.MinSize().Width < x
}

func (b *block) layMore(g cellGrid, bottom float32) {
	m := b.more.MinSize()
	x, y := b.words.headWidth()+px(8), (px(blockHeadTall)-m.Height)/2
	if !b.moreFits(g) {
		x, y = px(14), bottom
	}
	put(b.more, x, y, m.Width, m.Height)
	put(b.colors.Field, x, y-px(4), px(140), px(look.FieldHeight))
}

func (b *block) lay(r *blockRow, g cellGrid, y, width float32) {
	n := len(b.view.Sizes)
	tall, cell := px(look.FieldHeight), px(look.CellHeight)
	put(r.color, px(12), y+(tall-cell)/2, max(g.left-px(14), px(60)), cell)
	if b.view.Own {
		put(r.own.box, 0, y, width, px(ownTall))
		y += px(ownTall)
	}
	top := y
	if captioned(b.view, g) {
		top += px(captionTall)
	}
	for i := range r.cells.Len() {
		x, dy := g.at(i, n)
		put(r.cells.Cell(i), x, top+dy, g.wide, tall)
	}
	m := r.remove.MinSize()
	if b.view.Own {
		y += px(captionTall)
	}
	put(r.remove, width-m.Width+px(4), y+(tall-m.Height)/2, m.Width, m.Height)
}
