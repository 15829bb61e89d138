package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// mostBytes is the largest job or pack file that is read: a job of 100 000 lines is far below.
const mostBytes = 64 << 20

// read returns the whole of a file, or of standard input for "-". A file past the limit is bad input, not read to its
// end.
func (s shell) read(name string) ([]byte, error) {
	in := s.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, mostBytes+1))
	if err != nil {
		return nil, err
	}
	if len(data) > mostBytes {
		return nil, quote.Problems{{Problem: fmt.Sprintf("larger than %d MiB", mostBytes>>20)}}
	}
	return bytes.TrimPrefix(data, []byte("\ufeff")), nil
}

// bothProblems works on what was read even where its form is not right, so that problems of form and of content come
// together. What is no document at all is not worked on.
func bothProblems[T any](form error, work func() (T, error)) (T, error) {
	var none T
	var ofForm, ofContent quote.Problems
	if errors.As(form, &ofForm) && ofForm[0].Path == "" {
		return none, form
	}
	result, err := work()
	if form == nil {
		return result, err
	}
	errors.As(err, &ofContent)
	return none, jobfile.Together(ofForm, ofContent)
}
