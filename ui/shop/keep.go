package shop

import (
	"context"
	"errors"

	"pressworth/quote"
	"pressworth/ui/parts"
)

// keep saves what stands in the form.
func (p *Place) keep() {
	before := p.kept
	p.put(p.now, func() {
		p.undo = append(p.undo, before)
		p.redo = nil
	})
}

// put keeps a record in the file; then is done where that worked.
func (p *Place) put(r record, then func()) {
	parts.Background(func() func() {
		err := p.write(r)
		return func() {
			var problems quote.Problems
			switch {
			case errors.As(err, &problems):
				p.form.Show(problems)
			case err != nil:
				p.fault.SetText("The shop could not be saved: " + err.Error())
			default:
				then()
				p.show(r)
			}
		}
	})
}

func (p *Place) write(r record) error {
	if p.Settings == nil {
		return p.file.SaveShop(context.Background(), r.Shop)
	}
	return p.Settings.SaveRules(context.Background(), r.Shop, r.Settings)
}

func (p *Place) takeBack() { p.show(p.kept) }

// Undo takes back what was typed since the last save, and after that the last save. Where that does not work the way
// back stays.
func (p *Place) Undo() {
	if p.changed {
		p.takeBack()
		return
	}
	p.step(&p.undo, &p.redo)
}

// Redo does again what Undo took back last.
func (p *Place) Redo() {
	if !p.changed {
		p.step(&p.redo, &p.undo)
	}
}

// step goes to the last record of one list and notes the way back in the other.
func (p *Place) step(from, to *[]record) {
	n := len(*from)
	if n == 0 {
		return
	}
	now := p.kept
	p.put((*from)[n-1], func() {
		*from = (*from)[:n-1]
		*to = append(*to, now)
	})
}
