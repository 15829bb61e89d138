package strict

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"pressworth/quote/money"
)

// Write writes one object, indented, with a line end.
func Write(each func(Fields)) []byte {
	w := &writer{out: new(bytes.Buffer)}
	w.braces(each)
	var out bytes.Buffer
	if err := json.Indent(&out, w.out.Bytes(), "", " "); err != nil {
		panic("strict: wrote what is not JSON: " + err.Error()) // cannot happen: every string is encoded
	}
	out.WriteByte('\n')
	return out.Bytes()
}

type writer struct {
	out   *bytes.Buffer
	any   bool // a field was written
	needs []string
}

func (w *writer) braces(each func(Fields)) {
	w.out.WriteByte('{')
	each(w)
	w.out.WriteByte('}')
}

// key begins a field unless it has its zero value and is not needed.
func (w *writer) key(key string, zero bool) bool {
	if zero && !slices.Contains(w.needs, key) {
		return false
	}
	if w.any {
		w.out.WriteByte(',')
	}
	w.any = true
	w.string(key)
	w.out.WriteByte(':')
	return true
}

func (w *writer) string(s string) {
	if !strings.ContainsFunc(s, escaped) {
		w.out.WriteByte('"')
		w.out.WriteString(s)
		w.out.WriteByte('"')
		return
	}
	enc := json.NewEncoder(w.out)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(s)               // a string into a buffer: no error
	w.out.Truncate(w.out.Len() - 1) // the encoder's line end
}

// escaped tells of a character that may stand otherwise in JSON than as it is.
func escaped(r rune) bool { return r < ' ' || r > '~' || r == '"' || r == '\\' }

func (w *writer) writing() bool         { return true }
func (w *writer) keys() []string        { return nil }
func (w *writer) isText(string) bool    { return false }
func (w *writer) refuse(string, string) {}
func (w *writer) Needs(keys ...string)  { w.needs = append(w.needs, keys...) }

func (w *writer) Text(key string, v *string) {
	if w.key(key, *v == "") {
		w.string(*v)
	}
}

func (w *writer) Choice(key string, v *string, _ ...string) { w.Text(key, v) }

func (w *writer) Number(key string, v *money.Number) {
	if w.key(key, v.Sign() == 0) {
		w.string(v.String())
	}
}

func (w *writer) NumberOrNone(key string, v **money.Number) {
	if *v != nil && w.key(key, false) {
		w.string((*v).String())
	}
}

func (w *writer) Amount(key string, v *money.Amount) {
	if w.key(key, v.Sign() == 0) {
		w.string(v.String())
	}
}

func (w *writer) AmountOrNone(key string, v **money.Amount) {
	if *v != nil && w.key(key, false) {
		w.string((*v).String())
	}
}

func (w *writer) Count(key string, v *int) {
	if w.key(key, *v == 0) {
		w.out.WriteString(strconv.Itoa(*v))
	}
}

func (w *writer) Flag(key string, v *bool) {
	if w.key(key, !*v) {
		w.out.WriteString(strconv.FormatBool(*v))
	}
}

func (w *writer) Unless(key string, v *bool) {
	if w.key(key, !*v) {
		w.out.WriteString(strconv.FormatBool(!*v))
	}
}

func (w *writer) Texts(key string, v *[]string, _ ...string) {
	if w.key(key, len(*v) == 0) {
		w.brackets(len(*v), func(i int) { w.string((*v)[i]) })
	}
}

func (w *writer) TextsOrNone(key string, v *[]string) {
	if *v != nil && w.key(key, false) {
		w.brackets(len(*v), func(i int) { w.string((*v)[i]) })
	}
}

func (w *writer) Counts(key string, v *[]int) {
	if w.key(key, len(*v) == 0) {
		w.brackets(len(*v), func(i int) { w.out.WriteString(strconv.Itoa((*v)[i])) })
	}
}

func (w *writer) brackets(n int, each func(i int)) {
	w.out.WriteByte('[')
	for i := range n {
		if i > 0 {
			w.out.WriteByte(',')
		}
		each(i)
	}
	w.out.WriteByte(']')
}

func (w *writer) list(key string, have int, _ func(n int), each func(i int, f Fields)) {
	if w.key(key, have == 0) {
		w.brackets(have, func(i int) {
			inner := &writer{out: w.out}
			inner.braces(func(f Fields) { each(i, f) })
		})
	}
}

func (w *writer) object(key string, keepEmpty bool, each func(f Fields)) {
	inner := &writer{out: new(bytes.Buffer)}
	inner.braces(each)
	if w.key(key, !inner.any && !keepEmpty) {
		w.out.Write(inner.out.Bytes())
	}
}
