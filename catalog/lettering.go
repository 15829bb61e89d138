package catalog

import (
	"fmt"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Lettering is how names and numbers are set where nothing else is said: common practice, editable.
type Lettering struct {
	Heights       []LetterHeight `json:"heights"`
	DigitPercent  money.Number   `json:"digit_percent"`   // stock digits bought beside those needed, of each digit
	DigitsAtLeast int            `json:"digits_at_least"` // and no fewer than so many of each digit needed
}

// LetterHeight is the height of a text on the garments of an age group, in inches.
type LetterHeight struct {
	Text   string       `json:"text"`  // name, number, front number, sleeve number
	Group  string       `json:"group"` // youth or adult
	Height money.Number `json:"height"`
	Widest money.Number `json:"widest"` // widest it may be; longer names are narrowed
}

// DefaultLettering is what many teams wear. Common practice, no source.
func DefaultLettering() Lettering {
	return Lettering{DigitPercent: money.Int(5), DigitsAtLeast: 1, Heights: []LetterHeight{
		letterHeight("name", "adult", "2", "12"), letterHeight("name", "youth", "1.5", "9"),
		letterHeight("number", "adult", "10", "12"), letterHeight("number", "youth", "8", "9"),
		letterHeight("front number", "adult", "4", "6"), letterHeight("front number", "youth", "3", "5"),
		letterHeight("sleeve number", "adult", "3", "4"), letterHeight("sleeve number", "youth", "2", "3"),
	}}
}

func letterHeight(text, group, height, widest string) LetterHeight {
	h, _ := money.ParseNumber(height)
	w, _ := money.ParseNumber(widest)
	return LetterHeight{Text: text, Group: group, Height: h, Widest: w}
}

// Height is that of a text for an age group; false where the shop has none.
func (l Lettering) Height(text, group string) (LetterHeight, bool) {
	for _, h := range l.Heights {
		if h.Text == text && h.Group == group {
			return h, true
		}
	}
	return LetterHeight{}, false
}

// Check names what is wrong with the heights.
func (l Lettering) Check() (problems []quote.Problem) {
	say := func(path, problem string) { problems = append(problems, quote.Problem{Path: path, Problem: problem}) }
	most := money.Int(100)
	for i, h := range l.Heights {
		at := fmt.Sprintf("lettering.heights[%d]", i)
		if h.Text == "" {
			say(at+".text", "say what is printed, like name or number")
		}
		if h.Group != "youth" && h.Group != "adult" {
			say(at+".group", "enter youth or adult")
		}
		if h.Height.Sign() <= 0 || h.Height.Cmp(most) > 0 {
			say(at+".height", "enter a height in inches, like 2")
		}
		if h.Widest.Sign() <= 0 || h.Widest.Cmp(most) > 0 {
			say(at+".widest", "enter a width in inches, like 12")
		}
	}
	if l.DigitPercent.Sign() < 0 || l.DigitPercent.Cmp(most) > 0 {
		say("lettering.digit_percent", "enter 0 to 100 percent")
	}
	if l.DigitsAtLeast < 0 || l.DigitsAtLeast > 1000 {
		say("lettering.digits_at_least", "enter 0 to 1000")
	}
	return problems
}
