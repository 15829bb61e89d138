package strict

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pressworth/quote/money"
)

// maxCount is the largest count that is read; what a count may be is for its reader to say.
const maxCount = 1_000_000_000

// Read reads a file that is one object. What can be read is read even where there are problems. The error, if any, is
// quote.Problems.
func Read(data []byte, each func(Fields)) error {
	p := parser{data: data}
	n := p.parse()
	if n == nil {
		return p.problems.err()
	}
	if n.kind != object {
		p.problems.add(n.at, "", "the file is "+n.kind.String()+": it has to be an object, { … }")
		return p.problems.err()
	}
	r := newReader(n, &p.problems)
	each(r)
	r.done()
	return p.problems.err()
}

type reader struct {
	n        *node
	known    map[string]bool
	needs    []string
	problems *problems
}

func newReader(n *node, p *problems) *reader {
	return &reader{n: n, known: map[string]bool{}, problems: p}
}

// done reports the keys that nobody asked for, and those that were needed.
func (r *reader) done() {
	for _, f := range r.n.fields {
		if !r.known[f.key] {
			r.problems.add(f.value.at, f.value.path, r.unknown(f.key))
		}
	}
	for _, k := range r.needs {
		if r.n.field(k) == nil {
			r.problems.add(r.n.at, join(r.n.path, k), "is missing")
		}
	}
}

func (r *reader) unknown(key string) string {
	for k := range r.known {
		if strings.EqualFold(k, key) {
			return unknownKey + "write it as \"" + k + "\""
		}
	}
	return unknownKey + "remove it"
}

// take gives the value of a key if it is there and of the right kind.
func (r *reader) take(key string, want kind) *node {
	r.known[key] = true
	n := r.n.field(key)
	if n == nil {
		return nil
	}
	if n.kind != want {
		r.problems.add(n.at, n.path, mismatch(n, want))
		return nil
	}
	return n
}

func mismatch(n *node, want kind) string {
	switch {
	case n.kind == null:
		return "is null: leave the key out instead"
	case n.kind == number && want == text:
		return "is a number: write it as a string, \"" + clip(n.text) + "\""
	case n.kind == text && want == number:
		return "is a string: write a whole number without quotation marks"
	}
	return "is " + n.kind.String() + ": it has to be " + want.String()
}

func (r *reader) refuse(key, problem string) {
	if n := r.n.field(key); n != nil {
		r.problems.add(n.at, n.path, problem)
		return
	}
	r.problems.add(r.n.at, join(r.n.path, key), problem)
}

func (r *reader) writing() bool { return false }

func (r *reader) isText(key string) bool { n := r.n.field(key); return n != nil && n.kind == text }

func (r *reader) keys() []string {
	var keys []string
	for _, f := range r.n.fields {
		keys = append(keys, f.key)
	}
	return keys
}

func (r *reader) Needs(keys ...string) { r.needs = append(r.needs, keys...) }

func (r *reader) Text(key string, v *string) {
	if n := r.take(key, text); n != nil {
		*v = n.text
	}
}

func (r *reader) Choice(key string, v *string, options ...string) {
	if n := r.take(key, text); n != nil && r.isOne(n, options) {
		*v = n.text
	}
}

func (r *reader) isOne(n *node, options []string) bool {
	if len(options) == 0 || slices.Contains(options, n.text) {
		return true
	}
	r.problems.add(n.at, n.path, fmt.Sprintf("%q is not known here: write one of %s", clip(n.text), strings.Join(options, ", ")))
	return false
}

func (r *reader) Number(key string, v *money.Number) {
	if n := r.take(key, text); n != nil {
		r.number(n, v)
	}
}

func (r *reader) number(n *node, v *money.Number) bool {
	x, err := money.ParseNumber(n.text)
	if err != nil {
		r.problems.add(n.at, n.path, err.Error())
		return false
	}
	*v = x
	return true
}

func (r *reader) NumberOrNone(key string, v **money.Number) {
	var x money.Number
	if n := r.take(key, text); n != nil && r.number(n, &x) {
		*v = &x
	}
}

func (r *reader) Amount(key string, v *money.Amount) {
	if n := r.take(key, text); n != nil {
		r.amount(n, v)
	}
}

func (r *reader) amount(n *node, v *money.Amount) bool {
	x, err := money.ParseAmount(n.text)
	if err != nil {
		r.problems.add(n.at, n.path, err.Error())
		return false
	}
	*v = x
	return true
}

func (r *reader) AmountOrNone(key string, v **money.Amount) {
	var x money.Amount
	if n := r.take(key, text); n != nil && n.text != "" && r.amount(n, &x) {
		*v = &x
	}
}

var whole = regexp.MustCompile(`^-?[0-9]+$`)

func (r *reader) Count(key string, v *int) {
	if n := r.take(key, number); n != nil {
		r.count(n, v)
	}
}

func (r *reader) count(n *node, v *int) {
	if !whole.MatchString(n.text) {
		r.problems.add(n.at, n.path, clip(n.text)+" is not a whole number: write digits only")
		return
	}
	x, err := strconv.ParseInt(n.text, 10, 64)
	if err != nil || x > maxCount || x < -maxCount {
		r.problems.add(n.at, n.path, fmt.Sprintf("%s is too large: at most %d", clip(n.text), maxCount))
		return
	}
	*v = int(x)
}

func (r *reader) Flag(key string, v *bool) {
	if n := r.take(key, boolean); n != nil {
		*v = n.yes
	}
}

func (r *reader) Unless(key string, v *bool) {
	if n := r.take(key, boolean); n != nil {
		*v = !n.yes
	}
}

// items gives those entries of a list that are of the right kind.
func (r *reader) items(key string, want kind) []*node {
	n := r.take(key, array)
	if n == nil {
		return nil
	}
	good := []*node{}
	for _, x := range n.items {
		if x.kind != want {
			r.problems.add(x.at, x.path, mismatch(x, want))
			continue
		}
		good = append(good, x)
	}
	return good
}

func (r *reader) Texts(key string, v *[]string, options ...string) {
	items := r.items(key, text)
	if items == nil {
		return
	}
	*v = make([]string, 0, len(items))
	for _, n := range items {
		if r.isOne(n, options) {
			*v = append(*v, n.text)
		}
	}
}

func (r *reader) TextsOrNone(key string, v *[]string) { r.Texts(key, v) }

func (r *reader) Counts(key string, v *[]int) {
	for _, n := range r.items(key, number) {
		var x int
		r.count(n, &x)
		*v = append(*v, x)
	}
}

func (r *reader) list(key string, _ int, make func(n int), each func(i int, f Fields)) {
	n := r.take(key, array)
	if n == nil {
		return
	}
	make(len(n.items))
	for i, x := range n.items {
		if x.kind != object {
			r.problems.add(x.at, x.path, mismatch(x, object))
			continue
		}
		inner := newReader(x, r.problems)
		each(i, inner)
		inner.done()
	}
}

func (r *reader) object(key string, _ bool, each func(f Fields)) {
	if n := r.take(key, object); n != nil {
		inner := newReader(n, r.problems)
		each(inner)
		inner.done()
	}
}
