package parts

// looking is set where another window works on the shop file: no deed can be pressed.
var looking bool

// LookOnly keeps every deed that is made from now on from being pressed, until restore. The program calls it once, before
// its window is made.
func LookOnly() (restore func()) {
	before := looking
	looking = true
	return func() { looking = before }
}

// NewDeed makes a button that changes the shop file. Where one only looks it is drawn disabled, and stays so.
func NewDeed(kind ButtonKind, word, key string, act func()) *Button {
	return NewButton(kind, word, key, act).Deed()
}

// NewSmallDeed makes a deed as high as a field in a table.
func NewSmallDeed(kind ButtonKind, word string, act func()) *Button {
	return NewSmallButton(kind, word, act).Deed()
}

// Deed makes a button a deed.
func (b *Button) Deed() *Button {
	b.deed, b.disabled = true, b.disabled || looking
	return b
}

// OfferDeed is Offer for a word that changes the shop file.
func (b *Band) OfferDeed(word string, act func()) {
	b.action.Deed()
	b.Offer(word, act)
}

// Deed makes ticking the box a change of the shop file, which cannot be done where one only looks.
func (c *Check) Deed() *Check {
	c.deed, c.disabled = true, c.disabled || looking
	return c
}
