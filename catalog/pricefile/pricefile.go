// Package pricefile reads a supplier's price list as a table: CSV in its many dialects, or XLSX. It finds the header,
// guesses the columns, and gives the rows one by one, whatever their number.
//
// Not in this package: the catalog a list is compared with (catalog/store), and files by name: it reads from an
// io.Reader and touches nothing else.
package pricefile

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
)

// Bounds of what is taken for a price list. What goes beyond is refused with the line it stands on.
const (
	maxCell    = 64 << 10  // bytes
	maxColumns = 2048      // cells of a row
	maxRow     = 1 << 20   // bytes
	headRows   = 20        // a header stands among these
	sampleRows = 400       // rows looked at before anything is taken
	peekBytes  = 128 << 10 // looked at for the dialect
)

// Error is something wrong with the file itself, on a line (the first is 1; 0: no line).
type Error struct {
	Line    int
	Problem string
	Err     error // what lies under it, or nil
}

// Error names the line.
func (e *Error) Error() string {
	text := e.Problem
	if e.Err != nil {
		text += ": " + e.Err.Error()
	}
	if e.Line == 0 {
		return text
	}
	return fmt.Sprintf("line %d: %s", e.Line, text)
}

// Unwrap gives what lies under it.
func (e *Error) Unwrap() error { return e.Err }

// record is one row of the table.
type record struct {
	line  int
	cells []string
}

// source gives the rows one by one, io.EOF after the last. A record's cells are valid until the next call only, their
// strings for ever.
type source interface{ next() (record, error) }

// File is an open price list, from which the first rows have been read.
type File struct {
	Kind string // comma, semicolon, tab, pipe, xlsx

	rows   source
	sample []record
	ended  error // what came after the sample, if reading ended in it
}

// Open looks at the beginning of a price list. An error is *Error.
func Open(r io.Reader) (*File, error) {
	peeked := bufio.NewReaderSize(r, peekBytes)
	head, err := peeked.Peek(peekBytes)
	if err != nil && !errors.Is(err, io.EOF) && len(head) == 0 {
		return nil, &Error{Line: 1, Problem: "reading", Err: err}
	}
	f := &File{}
	switch {
	case len(bytes.TrimSpace(head)) == 0:
		return nil, &Error{Problem: "the file is empty"}
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		f.Kind = "xlsx"
		f.rows, err = openXLSX(peeked)
	case bytes.HasPrefix(head, []byte("\xD0\xCF\x11\xE0")):
		err = &Error{Problem: "an old spreadsheet file: save it as XLSX or CSV"}
	case bytes.HasPrefix(head, []byte("%PDF")):
		err = &Error{Problem: "a PDF: ask the supplier for a CSV or XLSX file"}
	default:
		f.Kind, f.rows, err = openText(peeked, head)
	}
	if err != nil {
		return nil, err
	}
	return f, f.readSample()
}

func (f *File) readSample() error {
	for len(f.sample) < sampleRows {
		r, err := f.rows.next()
		if err != nil {
			f.ended = err
			break
		}
		f.sample = append(f.sample, record{r.line, append([]string(nil), r.cells...)})
	}
	if f.ended != nil && !errors.Is(f.ended, io.EOF) {
		return f.ended
	}
	return nil
}

// Head is the first rows of the file, at most 20, for a person to match columns by.
func (f *File) Head() [][]string {
	var head [][]string
	for i := 0; i < len(f.sample) && i < headRows; i++ {
		head = append(head, f.sample[i].cells)
	}
	return head
}

// each gives the rows after the first skip of them.
func (f *File) each(skip int, take func(record) error) error {
	for i := skip; i < len(f.sample); i++ {
		if err := take(f.sample[i]); err != nil {
			return err
		}
	}
	err := f.ended
	for err == nil {
		var r record
		if r, err = f.rows.next(); err == nil {
			if failed := take(r); failed != nil {
				return failed
			}
		}
	}
	if errors.Is(err, io.EOF) {
		return nil
	}
	return err
}
