package jobfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/jobfile/strict"
)

// EncodeResult writes a result, indented, with a line end.
func EncodeResult(r quote.Result) []byte {
	if r.Format == "" {
		r.Format = quote.ResultFormat
	}
	return indented(r)
}

// DecodeResult reads a result that EncodeResult wrote. Keys it does not know are passed over: a later version may have
// written more.
func DecodeResult(data []byte) (quote.Result, error) {
	var r quote.Result
	if err := json.Unmarshal(data, &r); err != nil {
		return quote.Result{}, fmt.Errorf("result: %w", err)
	}
	if r.Format != quote.ResultFormat {
		return quote.Result{}, fmt.Errorf("result: format %q is not %s", r.Format, quote.ResultFormat)
	}
	return r, nil
}

// EncodeProblems writes what is wrong with an input.
func EncodeProblems(p quote.Problems) []byte {
	return indented(struct {
		Errors []quote.Problem `json:"errors"`
	}{append([]quote.Problem{}, p...)})
}

// Price reads a job file and prices it. Problems of form and of content come together; what is only a consequence of a
// value that could not be read is left out.
func Price(data []byte) (quote.Job, quote.Result, error) {
	job, err := Decode(data)
	var form, content quote.Problems
	if errors.As(err, &form) && form[0].Path == "" {
		return job, quote.Result{}, err
	}
	result, err := quote.Price(job)
	if len(form) == 0 {
		return job, result, err
	}
	errors.As(err, &content)
	return job, quote.Result{}, Together(form, content)
}

// Together adds the problems of content to those of form, except at fields that could not be read and at what holds
// them: a price that could not be read is not missing as well.
func Together(form, content quote.Problems) quote.Problems {
	all := slices.Clone(form)
	for _, c := range content {
		follows := func(f quote.Problem) bool {
			return !strict.Unknown(f) && (within(f.Path, c.Path) || within(c.Path, f.Path))
		}
		if !slices.ContainsFunc(form, follows) {
			all = append(all, c)
		}
	}
	return all
}

// within tells whether a path is another one or leads into it.
func within(path, of string) bool {
	rest, ok := strings.CutPrefix(path, of)
	return ok && (rest == "" || of == "" || rest[0] == '.' || rest[0] == '[')
}

func indented(v any) []byte {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(v); err != nil {
		panic("jobfile: wrote what is not JSON: " + err.Error()) // plain structs of strings and numbers always encode
	}
	return b.Bytes()
}
