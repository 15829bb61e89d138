package blanks

import (
	"context"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

// openStyle shows a style in the editor, in place of the list.
func (p *Place) openStyle(s catalog.Style) {
	if p.Keeper == nil {
		return
	}
	if p.editor == nil {
		p.editor = newStylePage(p)
		p.stack.Add(p.editor.object)
	}
	p.list.Hide()
	p.editor.object.Show()
	p.editor.show(s, false)
}

// closeStyle goes back to the list. What was typed and not saved is said, once.
func (p *Place) closeStyle() {
	if p.editor == nil || !p.editor.object.Visible() {
		return
	}
	if p.editor.changed && p.editor.fault.Text() == "" {
		p.editor.fault.SetText("This has not been saved. Save it, or leave once more to drop it.")
		return
	}
	p.editor.object.Hide()
	p.list.Show()
	p.Shown()
	p.Focus()
}

// fresh starts a new style.
func (p *Place) fresh() {
	p.openStyle(catalog.Style{Category: "tee", Sizes: nil})
}

// copied starts a new style from the one that is shown.
func (p *Place) copied(s catalog.Style) {
	if p.Keeper == nil {
		return
	}
	p.openStyle(s)
	p.editor.show(s, true)
}

// change keeps a style with something about it changed, from the list.
func (p *Place) change(s catalog.Style, done string, change func(*catalog.Style)) {
	before := s
	change(&s)
	p.keepStyle(s, func(kept catalog.Style, err error) {
		p.failed(err)
		if err == nil {
			p.did(p.styleStep(before, kept))
			p.say(done)
			p.Shown()
		}
	})
}

func (p *Place) keepStyle(s catalog.Style, then func(catalog.Style, error)) {
	parts.Background(func() func() {
		kept, err := p.Keeper.SaveStyle(context.Background(), s, "")
		return func() { then(kept, err) }
	})
}

func (p *Place) keepListed(s catalog.Style, own []catalog.Price, then func(catalog.Style, error)) {
	parts.Background(func() func() {
		kept, err := p.Keeper.SaveListed(context.Background(), s, own, "")
		return func() { then(kept, err) }
	})
}
