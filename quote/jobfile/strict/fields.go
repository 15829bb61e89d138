// Package strict reads and writes JSON objects by one description of their fields: the same function names a struct's
// keys for both ways. Reading is stricter than encoding/json: a key given twice, in another case or unknown, a number
// where a string is due, a count that is not whole, text that is not UTF-8 and anything after the end are problems, each
// with its path, and all of them are found in one reading.
//
// Not in this package: which keys a file has, and what its values mean together.
package strict

import (
	"slices"

	"pressworth/quote/money"
)

// Fields are the fields of one JSON object, on the way in or out. On the way out a field with its zero value is left
// out unless Needs names it; on the way in a field that is left out leaves its variable as it is.
type Fields interface {
	// Needs names the keys that have to be there.
	Needs(keys ...string)
	// Text is a string.
	Text(key string, v *string)
	// Choice is a string out of a few.
	Choice(key string, v *string, options ...string)
	// Number is a decimal in a string.
	Number(key string, v *money.Number)
	// NumberOrNone is a decimal in a string; nil: left out.
	NumberOrNone(key string, v **money.Number)
	// Amount is an amount of money in a string.
	Amount(key string, v *money.Amount)
	// AmountOrNone is an amount in a string; nil: left out or "".
	AmountOrNone(key string, v **money.Amount)
	// Count is a JSON integer.
	Count(key string, v *int)
	// Flag is a boolean, false when left out.
	Flag(key string, v *bool)
	// Unless is a boolean that is true when left out; v holds its opposite.
	Unless(key string, v *bool)
	// Texts are strings, each out of options if there are any.
	Texts(key string, v *[]string, options ...string)
	// TextsOrNone are strings; nil: left out, which is something else than none.
	TextsOrNone(key string, v *[]string)
	// Counts are JSON integers.
	Counts(key string, v *[]int)

	list(key string, have int, make func(n int), each func(i int, f Fields))
	object(key string, keepEmpty bool, each func(f Fields))
	keys() []string // of the object, as they stand in the file; nil on the way out
	writing() bool
	isText(key string) bool
	refuse(key, problem string)
}

// List is an array of objects.
func List[T any](f Fields, key string, v *[]T, each func(Fields, *T)) {
	f.list(key, len(*v), func(n int) { *v = make([]T, n) }, func(i int, f Fields) { each(f, &(*v)[i]) })
}

// Object is an object within, left out when it has nothing to say.
func Object[T any](f Fields, key string, v *T, each func(Fields, *T)) {
	f.object(key, false, func(f Fields) { each(f, v) })
}

// ObjectOrNone is an object within; nil: left out.
func ObjectOrNone[T any](f Fields, key string, v **T, each func(Fields, *T)) {
	if f.writing() && *v == nil {
		return
	}
	f.object(key, true, func(f Fields) {
		if *v == nil {
			*v = new(T)
		}
		each(f, *v)
	})
}

// NameOrObject is an object that may be given as just a name.
func NameOrObject[T any](f Fields, key string, v *T, name func(*T) (short *string, only bool), each func(Fields, *T)) {
	short, only := name(v)
	if f.writing() && only || f.isText(key) {
		f.Text(key, short)
		return
	}
	Object(f, key, v, each)
}

// Map is an object with free keys.
func Map[T any](f Fields, key string, v *map[string]T, each func(f Fields, key string, v *T)) {
	f.object(key, false, func(f Fields) {
		for _, k := range mapKeys(f, *v) {
			x := (*v)[k]
			f.Needs(k)
			each(f, k, &x)
			if *v == nil {
				*v = map[string]T{}
			}
			(*v)[k] = x
		}
	})
}

func mapKeys[T any](f Fields, m map[string]T) []string {
	if !f.writing() {
		return f.keys()
	}
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// Format is the key that names the form of the file; any other name is a problem.
func Format(f Fields, want string) {
	f.Needs("format")
	got := want
	f.Text("format", &got)
	if got != want {
		f.refuse("format", "this is not a file of this form: write \""+want+"\"")
	}
}

// Refuse reports a problem with a key on the way in.
func Refuse(f Fields, key, problem string) { f.refuse(key, problem) }
