package counter

import (
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// entry is a field of the form: every key goes to the presenter, and when it is left it shows what the presenter made
// of it. While it is being typed into, nothing is written into it.
type entry struct {
	*parts.Field
	shown string
}

// newEntry wires a field to the presenter.
func newEntry(p *present.Counter, f *parts.Field, set func(text string)) *entry {
	e := &entry{Field: f}
	f.OnChanged = set
	before := f.OnFocus
	f.OnFocus = func(gained bool) {
		if before != nil {
			before(gained)
		}
		if !gained {
			p.Leave()
			e.SetText(e.shown)
		}
	}
	return e
}

// fill shows text; anew also where the field is being typed into, because the whole draft is another.
func (e *entry) fill(text string, anew bool) {
	e.shown = text
	if anew || !e.Focused() {
		e.SetText(text)
	}
}
