// Package form is fields bound to paths: the text typed by path, what is wrong with it beside the field, and the
// reading of that text into exact numbers.
//
// Not in this package: what the fields mean, and any rule beyond the form of a number or date.
package form

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/quote"
	"pressworth/ui/parts"
)

// Form is a set of fields by path.
type Form struct {
	fields  map[string]*parts.Field
	choices map[string]*parts.Choice
	checks  map[string]*parts.Check
	labels  map[string]*parts.Captioned
	rest    *parts.Band // problems of paths that have no field in sight

	OnChanged func(path string) // the user changed a field
}

// New makes an empty form.
func New() *Form {
	return &Form{
		fields: map[string]*parts.Field{}, choices: map[string]*parts.Choice{}, checks: map[string]*parts.Check{},
		labels: map[string]*parts.Captioned{}, rest: parts.NewBand(parts.Fault, ""),
	}
}

// Rest is the band in which problems stand that belong to no field.
func (f *Form) Rest() fyne.CanvasObject { return f.rest }

// Text makes a field of text for a path.
func (f *Form) Text(path, caption, hint string) *parts.Captioned {
	return f.add(path, caption, parts.NewField(hint))
}

// Number makes a field against the right edge, with a unit.
func (f *Form) Number(path, caption, unit string) *parts.Captioned {
	field := parts.NewNumber("")
	field.Unit = unit
	return f.add(path, caption, field)
}

func (f *Form) add(path, caption string, field *parts.Field) *parts.Captioned {
	field.OnChanged = func(string) { f.changed(path) }
	c := parts.NewCaptioned(caption, field)
	f.fields[path], f.labels[path] = field, c
	return c
}

// Choice makes a choice for a path.
func (f *Form) Choice(path, caption string, options []parts.Option) *parts.Captioned {
	choice := parts.NewChoice(options, func(parts.Option) { f.changed(path) })
	c := parts.NewCaptioned(caption, choice)
	f.choices[path], f.labels[path] = choice, c
	return c
}

// Check makes a box to tick for a path; its text is "yes" or nothing.
func (f *Form) Check(path, words string) *parts.Check {
	c := parts.NewCheck(words, func(bool) { f.changed(path) })
	f.checks[path] = c
	return c
}

// Around sets what has no field of its own (a table, a line of boxes) under a caption, with the problems of a path and of
// all below it.
func (f *Form) Around(path, caption string, o fyne.CanvasObject) *parts.Captioned {
	c := parts.NewCaptioned(caption, o)
	if caption == "" {
		c.Caption.Hide()
	}
	f.labels[path] = c
	return c
}

// Forget drops the fields whose paths begin with a prefix: they are about to be made anew.
func (f *Form) Forget(prefix string) {
	forget(f.fields, prefix)
	forget(f.choices, prefix)
	forget(f.checks, prefix)
	forget(f.labels, prefix)
}

func forget[T any](m map[string]T, prefix string) {
	for path := range m {
		if len(path) >= len(prefix) && path[:len(prefix)] == prefix {
			delete(m, path)
		}
	}
}

func (f *Form) changed(path string) {
	if f.OnChanged != nil {
		f.OnChanged(path)
	}
}

// Get is the text at a path: what was typed, the chosen key, or "yes".
func (f *Form) Get(path string) string {
	if x, ok := f.fields[path]; ok {
		return x.Text()
	}
	if x, ok := f.choices[path]; ok {
		return x.Key()
	}
	if x, ok := f.checks[path]; ok && x.Checked() {
		return "yes"
	}
	return ""
}

// Has tells whether there is a field for the path.
func (f *Form) Has(path string) bool {
	return f.fields[path] != nil || f.choices[path] != nil || f.checks[path] != nil
}

// Set fills the field at a path; OnChanged is not told. A path without a field is passed over.
func (f *Form) Set(path, text string) {
	if x, ok := f.fields[path]; ok {
		x.SetText(text)
	}
	if x, ok := f.choices[path]; ok {
		x.SetKey(text)
	}
	if x, ok := f.checks[path]; ok {
		x.SetChecked(text == "yes")
	}
}

// Field is the field of a path, for focus and for tests; nil if there is none.
func (f *Form) Field(path string) *parts.Field { return f.fields[path] }

// ChoiceAt is the choice of a path; nil if there is none.
func (f *Form) ChoiceAt(path string) *parts.Choice { return f.choices[path] }

// CheckAt is the box of a path; nil if there is none.
func (f *Form) CheckAt(path string) *parts.Check { return f.checks[path] }

// Show puts problems beside their fields, those of a part without a field beside what holds it, and the others into the
// band.
func (f *Form) Show(problems []quote.Problem) {
	said := map[string]string{}
	rest := ""
	for _, p := range problems {
		path, inside := f.labelled(p.Path)
		switch {
		case path == "" && rest == "":
			rest = p.Path + ": " + p.Problem
		case path != "" && said[path] == "":
			said[path] = inside + p.Problem
		}
	}
	for path, label := range f.labels {
		label.SetProblem(said[path])
	}
	f.rest.SetText(rest)
}

// labelled is the path itself or the nearest above it that has a label, and which of its rows is meant.
func (f *Form) labelled(path string) (above, inside string) {
	for above = path; above != ""; above = Parent(above) {
		if f.labels[above] != nil {
			return above, rowWord(path[len(above):])
		}
	}
	return "", ""
}

// Parent is the path of what holds a part: shop.equipment of shop.equipment[2].
func Parent(path string) string { return path[:max(strings.LastIndexAny(path, ".["), 0)] }

// rowWord names the row of a list that a path within it begins with.
func rowWord(inside string) string {
	number, _, _ := strings.Cut(strings.TrimPrefix(inside, "["), "]")
	n, err := strconv.Atoi(number)
	if err != nil {
		return ""
	}
	return "row " + strconv.Itoa(n+1) + ": "
}

// ProblemAt is what stands beside the field of a path.
func (f *Form) ProblemAt(path string) string {
	if l := f.labels[path]; l != nil {
		return l.Problem()
	}
	return ""
}
