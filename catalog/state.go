package catalog

import (
	"slices"

	"pressworth/quote"
)

// States of a quote.
const (
	Drafted  = "draft"
	Sent     = "sent"
	Accepted = "accepted"
	Declined = "declined"
	Finished = "finished"
)

// States are all states, in the order of a quote's life.
var States = []string{Drafted, Sent, Accepted, Declined, Finished}

// follows says which states a state may turn into. A quote that was declined may be sent again, one accepted by mistake
// goes back to sent, and one finished too early back to accepted.
var follows = map[string][]string{
	Drafted:  {Sent, Accepted, Declined},
	Sent:     {Sent, Accepted, Declined},
	Accepted: {Finished, Sent, Declined},
	Declined: {Sent, Accepted},
	Finished: {Accepted},
}

// MayBecome tells whether a quote in one state may be put into another.
func MayBecome(from, to string) bool { return slices.Contains(follows[from], to) }

// NextStates are the states that a quote may be put into, in the order of a quote's life.
func NextStates(from string) []string {
	var out []string
	for _, s := range States {
		if s != from && MayBecome(from, s) {
			out = append(out, s)
		}
	}
	return out
}

// Steps of an accepted job, in their order.
const (
	ArtApproved  = "artwork approved"
	GoodsOrdered = "goods ordered"
	GoodsIn      = "goods in"
	Pressed      = "pressed"
	Ready        = "ready"
	Collected    = "collected"
)

// Steps are all steps of an accepted job, in their order.
var Steps = []string{ArtApproved, GoodsOrdered, GoodsIn, Pressed, Ready, Collected}

// Step is one step of an accepted job that has been taken.
type Step struct {
	Name string // one of Steps
	On   string // 2006-01-02
	Who  string // who approved it, or did it
	How  string // how it was approved: by e-mail, on the proof, at the counter
	Note string
}

// Check gives what is wrong with a step.
func (s Step) Check() []quote.Problem {
	var e entries
	if !slices.Contains(Steps, s.Name) {
		e.say("name", "choose one of the steps of an accepted job")
	}
	e.day("on", s.On)
	e.line("who", s.Who, false)
	e.line("how", s.How, false)
	return e.problems
}

// Taken finds a step among those taken.
func Taken(steps []Step, name string) (Step, bool) {
	for _, s := range steps {
		if s.Name == name {
			return s, true
		}
	}
	return Step{}, false
}

// NextStep is what a quote waits for, in the words of a person: for an accepted one the first step not taken.
func NextStep(state string, taken []Step) string {
	switch state {
	case Drafted:
		return "send"
	case Sent:
		return "follow up"
	case Accepted:
		for i, s := range Steps {
			if _, ok := Taken(taken, s); !ok {
				return stepToDo[i]
			}
		}
		return "finish"
	}
	return ""
}

// stepToDo says what is to be done for each of Steps.
var stepToDo = []string{"get artwork approved", "order goods", "take goods in", "press", "get ready", "hand over"}

// Place is where the step stands among Steps, from 1; 0: it is none of them.
func (s Step) Place() int { return 1 + slices.Index(Steps, s.Name) }
