package parts

import "fyne.io/fyne/v2"

// Typeahead is a field with a list of what the typed words find. The focus stays in the field; Down and Up mark, Enter
// or a click takes, Esc closes the list.
type Typeahead struct {
	Field *Field // the object to put on the canvas

	// Search finds what text means and hands it to show, at once or later, on the toolkit's goroutine. Later results of
	// older texts are dropped.
	Search   func(text string, show func([]Option))
	OnChosen func(Option)
	// OnUnknown is told of Enter without an option; nil: the focus moves on.
	OnUnknown func(text string)
	// OpenEmpty shows the list as soon as the field is reached, for recent and usual things.
	OpenEmpty bool

	drop    drop
	options []Option
	turn    int // counts searches
}

// NewTypeahead makes a field that searches while one types.
func NewTypeahead(hint string, search func(text string, show func([]Option))) *Typeahead {
	t := &Typeahead{Field: NewField(hint), Search: search}
	t.drop = drop{owner: t.Field, pick: t.pick}
	t.Field.OnChanged = func(string) { t.search() }
	t.Field.OnKey = t.key
	t.Field.OnFocus = t.focus
	t.Field.OnSubmitted = t.submit
	return t
}

// Wide makes the list at least so wide, at 100 %.
func (t *Typeahead) Wide(w float32) *Typeahead {
	t.drop.wide = w
	return t
}

// Options are what is offered now.
func (t *Typeahead) Options() []Option { return t.options }

func (t *Typeahead) search() {
	t.turn++
	turn, text := t.turn, t.Field.Text()
	if text == "" && !t.OpenEmpty {
		t.show(nil)
		return
	}
	t.Search(text, func(found []Option) {
		if turn == t.turn && t.Field.Focused() {
			t.show(found)
		}
	})
}

func (t *Typeahead) show(found []Option) {
	t.options = found
	at := -1
	if len(found) > 0 && t.Field.Text() != "" {
		at = 0
	}
	t.drop.open(found, at)
}

func (t *Typeahead) pick(i int) {
	chosen := t.options[i]
	t.turn++
	if t.OnChosen != nil {
		t.OnChosen(chosen)
	}
}

func (t *Typeahead) key(e *fyne.KeyEvent) bool {
	list := t.drop.list()
	switch {
	case list == nil && e.Name == fyne.KeyDown:
		t.search()
	case list == nil:
		return false
	case e.Name == fyne.KeyDown:
		list.move(1)
	case e.Name == fyne.KeyUp:
		list.move(-1)
	case e.Name == fyne.KeyPageDown:
		list.move(listRows - 1)
	case e.Name == fyne.KeyPageUp:
		list.move(1 - listRows)
	case e.Name == fyne.KeyEscape:
		t.drop.close(true)
	default:
		return false
	}
	return true
}

func (t *Typeahead) submit(text string) {
	if list := t.drop.list(); list != nil && list.choose() {
		return
	}
	if t.OnUnknown != nil {
		t.OnUnknown(text)
		return
	}
	focusNext(t.Field)
}

func (t *Typeahead) focus(gained bool) {
	if !gained {
		t.drop.close(false)
		return
	}
	if t.OpenEmpty && t.Field.Text() == "" {
		t.search()
	}
}
