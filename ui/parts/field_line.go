package parts

import "unicode"

// maxRunes is how much one line holds: more than anybody types, and little enough to be drawn.
const maxRunes = 4000

// editLine is a line of text with a caret and a selection between anchor and caret, without anything of a screen.
type editLine struct {
	text          []rune
	caret, anchor int
}

func (l *editLine) set(text string) {
	l.text = []rune(text)
	if len(l.text) > maxRunes {
		l.text = l.text[:maxRunes]
	}
	l.caret = len(l.text)
	l.anchor = l.caret
}

func (l *editLine) span() (from, to int) { return min(l.caret, l.anchor), max(l.caret, l.anchor) }

func (l *editLine) selected() string {
	from, to := l.span()
	return string(l.text[from:to])
}

func (l *editLine) selectAll() { l.anchor, l.caret = 0, len(l.text) }

// move sets the caret; where it keeps the selection, the anchor stays.
func (l *editLine) move(to int, keep bool) {
	l.caret = min(max(to, 0), len(l.text))
	if !keep {
		l.anchor = l.caret
	}
}

// step moves by one rune; from a selection it goes to the selection's edge.
func (l *editLine) step(by int, keep bool) {
	from, to := l.span()
	switch {
	case keep || from == to:
		l.move(l.caret+by, keep)
	case by < 0:
		l.move(from, false)
	default:
		l.move(to, false)
	}
}

// word is where a step by a word leads.
func (l *editLine) word(by int) int {
	inWord := func(i int) bool {
		return i >= 0 && i < len(l.text) && (unicode.IsLetter(l.text[i]) || unicode.IsDigit(l.text[i]))
	}
	i := l.caret
	if by < 0 {
		for i > 0 && !inWord(i-1) {
			i--
		}
		for i > 0 && inWord(i-1) {
			i--
		}
		return i
	}
	for i < len(l.text) && !inWord(i) {
		i++
	}
	for i < len(l.text) && inWord(i) {
		i++
	}
	return i
}

// insert puts text in place of the selection and tells whether anything changed.
func (l *editLine) insert(text string) bool {
	from, to := l.span()
	add := []rune(text)
	if room := maxRunes - (len(l.text) - (to - from)); len(add) > room {
		add = add[:max(room, 0)]
	}
	if from == to && len(add) == 0 {
		return false
	}
	next := make([]rune, 0, len(l.text)-(to-from)+len(add))
	next = append(append(append(next, l.text[:from]...), add...), l.text[to:]...)
	l.text, l.caret = next, from+len(add)
	l.anchor = l.caret
	return true
}

// remove takes away the selection, or what lies between the caret and another place.
func (l *editLine) remove(upto int) bool {
	if from, to := l.span(); from == to {
		l.anchor = min(max(upto, 0), len(l.text))
	}
	return l.insert("")
}
