// Package export makes the documents of a job: the customer's quote, the shop's cost sheet, press ticket, purchase
// lists, sheet layouts, an e-mail and plain text. Values in, bytes out: the same job, result and date give the same
// bytes. Documents show what a result holds and work nothing out.
//
// Not in this package: pricing; files and folders; the window.
package export

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"pressworth/quote"
)

// File is a document under the name it should have, without a folder.
type File struct {
	Name string
	Data []byte
}

// Documents makes every document of a priced job, dated date, its artwork drawn as plain emblems.
func Documents(job quote.Job, result quote.Result, date time.Time) ([]File, error) {
	return Pictured(nil).Documents(job, result, date)
}

// making gathers documents and keeps the first error.
type making struct {
	files []File
	err   error
}

func (m *making) pdf(name string, f func(quote.Job, quote.Result, time.Time) ([]byte, error), job quote.Job, r quote.Result, date time.Time) {
	m.add(name)(f(job, r, date))
}

func (m *making) add(name string) func([]byte, error) {
	return func(data []byte, err error) {
		if err != nil && m.err == nil {
			m.err = fmt.Errorf("%s: %w", name, err)
		}
		m.files = append(m.files, File{name, data})
	}
}

// SafeName makes a part of a file name of any text: letters, digits and hyphens; otherwise the fallback.
func SafeName(text, fallback string) string {
	s := strings.Map(func(r rune) rune {
		switch {
		case r < 128 && (unicode.IsLetter(r) || unicode.IsDigit(r)) || r == '-' || r == '_':
			return r
		case unicode.IsSpace(r) || r == '.' || r == '/':
			return '-'
		}
		return -1
	}, text)
	if s = strings.Trim(s, "-_"); s == "" {
		return fallback
	}
	return s[:min(len(s), 60)]
}
