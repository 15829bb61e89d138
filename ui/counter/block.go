package counter

import (
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// block is the lines of one style under one header.
type block struct {
	box      *fyne.Container
	words    *blockWords
	more     *parts.Button    // + colour
	colors   *parts.Typeahead // shown while a colour is added
	adding   bool
	rows     []*blockRow
	view     present.Block
	most     int // sizes of the widest block, so that the cells of all blocks line up
	garments *garments
}

// blockRow is one garment line.
type blockRow struct {
	key    string
	used   bool
	color  *parts.Choice
	offers []catalog.Color
	cells  *parts.SizeCells
	remove *parts.Button
	own    *ownFields
}

func newBlock(g *garments) *block {
	b := &block{garments: g, words: &blockWords{}}
	b.words.SetUp(b.words, func() fyne.Size { return fyne.NewSize(px(200), px(blockHeadTall)) }, b.words.draw)
	b.words.block = b
	b.more = parts.NewButton(parts.Link, "+ colour", "", b.openColors)
	b.colors = parts.NewTypeahead("colour", func(text string, show func([]parts.Option)) {
		show(colorOptions(g.presenter.FindColors(b.view.StyleID, text)))
	})
	b.colors.OpenEmpty = true
	b.colors.OnChosen = func(o parts.Option) {
		g.focusCells(g.presenter.AddGarment(b.view.StyleID, o.Key))
	}
	left := b.colors.Field.OnFocus
	b.colors.Field.OnFocus = func(gained bool) {
		left(gained)
		if !gained {
			b.closeColors()
		}
	}
	b.colors.Field.Hide()
	b.box = container.New(blockLayout{b}, b.words, b.more, b.colors.Field)
	return b
}

func (b *block) openColors() {
	b.adding = true
	b.more.Hide()
	b.colors.Field.Show()
	relay(b.box)
	parts.Focus(b.colors.Field)
}

func (b *block) closeColors() {
	b.adding = false
	b.colors.Field.SetText("")
	b.colors.Field.Hide()
	visible(b.more, b.offersColors())
}

func (b *block) clear() {
	for _, r := range b.rows {
		r.used = false
	}
	b.view = present.Block{}
}

func (b *block) show(v present.Block, most int, anew bool) {
	if b.view.StyleID != v.StyleID || len(b.view.Sizes) != len(v.Sizes) {
		b.discard(len(v.Sizes))
	}
	for len(b.rows) < len(v.Rows) {
		b.rows = append(b.rows, b.newRow(len(v.Sizes)))
	}
	same := b.most == most && reflect.DeepEqual(b.view, v)
	b.view, b.most = v, most
	if same && !anew {
		return
	}
	for i, r := range b.rows {
		r.used = i < len(v.Rows)
		r.visible(r.used, v.Own)
		if r.used {
			r.show(v.Rows[i], v, anew)
		}
	}
	if !b.adding {
		visible(b.more, b.offersColors())
	}
	b.words.Redraw()
	relay(b.box)
}

// discard drops rows whose cells are not as many as the style has sizes.
func (b *block) discard(n int) {
	kept := b.rows[:0]
	for _, r := range b.rows {
		if r.cells.Len() == n {
			kept = append(kept, r)
			continue
		}
		r.used = false
		for _, o := range r.objects() {
			b.box.Remove(o)
		}
	}
	b.rows = kept
}

func (b *block) newRow(n int) *blockRow {
	p := b.garments.presenter
	r := &blockRow{cells: parts.NewSizeCells(n)}
	r.color = parts.NewChoice(nil, func(o parts.Option) {
		p.SetColor(r.key, o.Key)
		r.cells.Focus(0)
	}).Bare().Small()
	r.remove = parts.NewButton(parts.Link, "×", "", func() {
		b.garments.reach()
		p.RemoveGarment(r.key)
	})
	r.own = newOwnFields(p, func() string { return r.key })
	b.wireCells(r)
	for _, o := range r.objects() {
		b.box.Add(o)
	}
	return r
}

// objects are the row's parts in the order in which Tab reaches them.
func (r *blockRow) objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.color, r.own.box}
	for i := range r.cells.Len() {
		out = append(out, r.cells.Cell(i))
	}
	return append(out, r.remove)
}

func (r *blockRow) visible(used, own bool) {
	for _, o := range r.objects() {
		visible(o, used)
	}
	visible(r.color, used && !own)
	visible(r.own.box, used && own)
}

func (r *blockRow) show(v present.BlockRow, b present.Block, anew bool) {
	r.key = v.Key
	if !reflect.DeepEqual(r.offers, b.Colors) {
		r.offers = b.Colors
		r.color.SetOptions(colorOptions(b.Colors))
	}
	r.color.SetKey(v.Color)
	r.color.SetWrong(v.Color == "")
	r.own.show(v.Own, anew)
	for i, c := range v.Cells {
		f := r.cells.Cell(i)
		switch {
		case anew:
			f.SetText(c.Qty)
		case f.Wrong() && present.IsSizeRun(f.Text()): // a size run that could not be read stays to be mended
		default:
			r.cells.SetQty(i, c.Qty)
		}
		f.SetWrong(c.Problem != "" || v.Problem != "" && present.IsSizeRun(f.Text()) && !f.Focused())
		f.SetHint(map[bool]string{true: "–"}[c.Absent])
	}
}

func colorOptions(colors []catalog.Color) []parts.Option {
	options := make([]parts.Option, len(colors))
	for i, c := range colors {
		options[i] = parts.Option{Key: c.Name, Name: c.Name, Detail: c.Shade, Hex: c.Hex}
	}
	return options
}

// focusColor goes to the colour of a row that has none yet and opens its list.
func (b *block) focusColor(r *blockRow) {
	parts.Focus(r.color)
	r.color.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
}

// wireCells takes quantities and size runs to the presenter.
func (b *block) wireCells(r *blockRow) {
	p := b.garments.presenter
	r.cells.OnChanged = func(at int, qty string) { p.SetSize(r.key, b.view.Sizes[at], qty) }
	r.cells.Spread = func(at int, text string) ([]string, string) {
		p.FillSizes(r.key, b.view.Sizes[at], text)
		return p.SizesOf(r.key, b.view.Sizes)
	}
	r.cells.OnLeave = func(at, by int) { b.garments.step(r, at, by) }
	r.cells.OnEnter = b.garments.reach
	r.cells.OnFocus = func(_ int, gained bool) {
		if !gained {
			p.Leave()
		}
	}
	for i := range r.cells.Len() {
		f := r.cells.Cell(i)
		whole := f.OnChanged
		f.OnChanged = func(text string) {
			whole(text)
			if present.IsSizeRun(text) {
				p.TrySizes(r.key, b.view.Sizes[i], text)
			}
		}
	}
}
