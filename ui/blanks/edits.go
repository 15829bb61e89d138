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
	p.editor.show(s)
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
	s.ID, s.Number, s.Name = 0, s.Number+"-2", s.Name+" copy"
	p.openStyle(s)
}

// change keeps a style with something about it changed, from the list.
func (p *Place) change(s catalog.Style, done string, change func(*catalog.Style)) {
	before := s
	change(&s)
	p.keepStyle(s, func(_ catalog.Style, err error) {
		p.failed(err)
		if err == nil {
			p.undo = append(p.undo, p.backTo(before))
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

// step is a way back.
type step struct {
	done string // what is said afterwards
	back func(ctx context.Context) error
}

// backTo is the way back to what a style was.
func (p *Place) backTo(before catalog.Style) step {
	return step{before.Number + " is as it was.", func(ctx context.Context) error {
		_, err := p.Keeper.SaveStyle(ctx, before, "")
		return err
	}}
}

// Undo takes back the last change of styles or prices. Where that does not work the way back stays.
func (p *Place) Undo() {
	n := len(p.undo)
	if n == 0 {
		return
	}
	last := p.undo[n-1]
	parts.Background(func() func() {
		err := last.back(context.Background())
		return func() {
			if err != nil {
				p.fault.SetText("That could not be taken back: " + err.Error())
				return
			}
			p.undo = p.undo[:n-1]
			p.say(last.done)
			p.Shown()
		}
	})
}

// Redo is part of the window's Undoer; a change that was taken back is made anew.
func (p *Place) Redo() {}
