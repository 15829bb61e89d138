package shop

import "pressworth/ui/parts"

// PIN keeps the PIN that leads back from the customer's side.
type PIN interface {
	Has() bool
	Set(pin string) error // an empty one asks for none
}

const leastPIN = 4 // digits or letters

// pinSection sets or takes away the PIN.
func (p *Place) pinSection() *parts.Section {
	entry := parts.NewField("at least 4 digits or letters")
	entry.Secret = true
	field := parts.NewCaptioned("PIN", entry)
	state := parts.NewText("", parts.MutedStyle)
	var remove *parts.Button
	tell := func() {
		state.SetText("No PIN is asked for.")
		remove.Disable()
		if p.PIN.Has() {
			state.SetText("A PIN is asked for on the way back.")
			remove.Enable()
		}
	}
	keep := func(pin string) {
		field.SetProblem("")
		if err := p.PIN.Set(pin); err != nil {
			field.SetProblem("could not be kept: " + err.Error())
			return
		}
		entry.SetText("")
		tell()
	}
	set := parts.NewDeed(parts.Quiet, "Set", "", func() {
		if len([]rune(entry.Text())) < leastPIN {
			field.SetProblem("enter at least 4 digits or letters")
			return
		}
		keep(entry.Text())
	})
	remove = parts.NewDeed(parts.Quiet, "Take away", "", func() { keep("") })
	tell()
	p.pinEntry, p.pinSet, p.pinRemove = entry, set, remove
	meaning := parts.NewParagraph("It keeps a customer's eyes off your figures, no more: who can use this computer can read the shop file without it.", parts.MutedStyle)
	return parts.NewSection("Customer's side", "what leads back from it, on this computer", meaning, state, parts.Fields(220, field), parts.Row(8, nil, set, remove))
}
