package strict

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Limits of a file. They are far above what a job needs.
const (
	MaxBytes = 32 << 20
	maxDepth = 24
	maxText  = 20_000  // bytes of one string
	maxItems = 200_000 // of one array or object
)

type kind int

const (
	none kind = iota
	null
	boolean
	number
	text
	array
	object
)

func (k kind) String() string {
	return [...]string{"nothing", "null", "true or false", "a number", "a string", "a list", "an object"}[k]
}

// node is one value of the file.
type node struct {
	kind   kind
	at     int64 // byte offset of its end, to list problems as they stand in the file
	path   string
	text   string // of a string or a number
	yes    bool
	fields []field
	byKey  map[string]*node
	items  []*node
}

type field struct {
	key   string
	value *node
}

func (n *node) field(key string) *node { return n.byKey[key] }

// parser builds the tree of nodes from encoding/json's tokens.
type parser struct {
	data     []byte
	dec      *json.Decoder
	problems problems
}

// parse reads a whole file; the node is nil where the file is no JSON.
func (p *parser) parse() *node {
	if len(p.data) > MaxBytes {
		p.problems.add(0, "", fmt.Sprintf("the file has %d bytes: at most %d are read", len(p.data), MaxBytes))
		return nil
	}
	p.dec = json.NewDecoder(bytes.NewReader(p.data))
	p.dec.UseNumber()
	n, err := p.value("", 0)
	if err != nil {
		p.syntax(err)
		return nil
	}
	if len(bytes.Trim(p.data[p.dec.InputOffset():], " \t\r\n")) > 0 {
		p.problems.add(p.dec.InputOffset(), "", "something follows the end of the file's object: remove it")
	}
	return n
}

func (p *parser) syntax(err error) {
	at := p.dec.InputOffset()
	before := p.data[:min(int(at), len(p.data))]
	reason := err.Error()
	if syntax := (*json.SyntaxError)(nil); !errors.As(err, &syntax) { // the decoder's only other error is the end
		reason = "the file ends in the middle"
	}
	p.problems.add(at, "", fmt.Sprintf("not JSON after line %d: %s", 1+bytes.Count(before, []byte("\n")), reason))
}

func (p *parser) value(path string, depth int) (*node, error) {
	from := p.dec.InputOffset()
	t, err := p.dec.Token()
	if err != nil {
		return nil, err
	}
	n := &node{path: path, at: p.dec.InputOffset()}
	switch t := t.(type) {
	case nil:
		n.kind = null
	case bool:
		n.kind, n.yes = boolean, t
	case json.Number:
		n.kind, n.text = number, t.String()
	case string:
		n.kind, n.text = text, t
		p.checkText(path, t, p.data[from:n.at])
	case json.Delim:
		return n, p.inner(n, t, depth+1)
	}
	return n, nil
}

func (p *parser) inner(n *node, open json.Delim, depth int) error {
	n.kind = array
	if open == '{' {
		n.kind, n.byKey = object, map[string]*node{}
	}
	if depth > maxDepth {
		p.problems.add(n.at, n.path, fmt.Sprintf("lists and objects within one another more than %d deep are not read", maxDepth))
		return p.skip()
	}
	for i := 0; p.dec.More(); i++ {
		if i == maxItems {
			p.problems.add(n.at, n.path, fmt.Sprintf("more than %d entries are not read", maxItems))
			return p.skip()
		}
		if err := p.entry(n, depth); err != nil {
			return err
		}
	}
	_, err := p.dec.Token()
	return err
}

func (p *parser) entry(n *node, depth int) error {
	if n.kind == array {
		v, err := p.value(fmt.Sprintf("%s[%d]", n.path, len(n.items)), depth)
		n.items = append(n.items, v)
		return err
	}
	from := p.dec.InputOffset()
	t, err := p.dec.Token()
	if err != nil {
		return err
	}
	key, ok := t.(string)
	if !ok {
		return fmt.Errorf("a key has to be a string")
	}
	path := join(n.path, key)
	p.checkText(path, key, p.data[from:p.dec.InputOffset()])
	v, err := p.value(path, depth)
	switch {
	case err != nil:
		return err
	case n.byKey[key] != nil:
		p.problems.add(v.at, path, "this key is given twice: keep one")
		return nil
	}
	n.byKey[key] = v
	n.fields = append(n.fields, field{key, v})
	return nil
}

// skip reads to the end of the list or object that is open.
func (p *parser) skip() error {
	for open := 1; open > 0; {
		t, err := p.dec.Token()
		if err != nil {
			return err
		}
		switch t {
		case json.Delim('{'), json.Delim('['):
			open++
		case json.Delim('}'), json.Delim(']'):
			open--
		}
	}
	return nil
}

// checkText holds a string against the bytes it was read from: encoding/json puts U+FFFD for what is no Unicode.
func (p *parser) checkText(path, s string, raw []byte) {
	if len(s) > maxText {
		p.problems.add(p.dec.InputOffset(), path, fmt.Sprintf("a text of %d bytes: at most %d are read", len(s), maxText))
	}
	if !strings.ContainsRune(s, utf8.RuneError) {
		return
	}
	meant := strings.Count(string(raw), "\uFFFD") + strings.Count(strings.ToLower(string(raw)), `\ufffd`)
	if !utf8.Valid(raw) || meant == 0 {
		p.problems.add(p.dec.InputOffset(), path, "the text is not valid UTF-8: save the file as UTF-8")
	}
}
