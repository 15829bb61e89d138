package book

import "pressworth/ui/parts"

// newAsking makes a button for what cannot be taken back: pressed once it says what it is about to do, pressed again it
// does it.
func newAsking(kind parts.ButtonKind, word, sure string, act func()) *parts.Button {
	b := parts.NewDeed(kind, word, "", nil)
	b.SetAction(func() {
		b.SetText(sure)
		b.SetAction(act)
	})
	return b
}
