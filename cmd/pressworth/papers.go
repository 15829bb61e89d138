package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"pressworth/export"
	"pressworth/quote"
)

// papers are a document's maker and the name of its file, by what the window calls it.
var papers = map[string]struct {
	file string
	make func(quote.Job, quote.Result, time.Time) ([]byte, error)
}{
	"Quote PDF":    {"quote-%s.pdf", export.Quote},
	"Cost sheet":   {"cost-sheet-%s.pdf", export.CostSheet},
	"E-mail":       {"e-mail-%s.eml", export.Email},
	"Press ticket": {"press-ticket-%s.pdf", export.Ticket},
	"Purchases":    {"purchases-%s.pdf", export.Purchases},
	"Layouts":      {"layouts-%s.pdf", export.Layouts},
}

// writePaper writes one document into a folder and returns its path.
func writePaper(folder, paper string, job quote.Job, result quote.Result, date time.Time) (string, error) {
	p, ok := papers[paper]
	if !ok {
		return "", fmt.Errorf("%s is not made yet", paper)
	}
	data, err := p.make(job, result, date)
	if err != nil {
		return "", err
	}
	number := ""
	if job.Paper != nil {
		number = job.Paper.Number
	}
	return writeFile(folder, export.File{Name: fmt.Sprintf(p.file, export.SafeName(number, "new")), Data: data})
}

// writeFile writes a document beside its place and then moves it there, readable by its owner alone.
func writeFile(folder string, f export.File) (string, error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return "", err
	}
	path := filepath.Join(folder, filepath.Base(f.Name))
	part, err := os.CreateTemp(folder, ".part-*")
	if err != nil {
		return "", err
	}
	_, err = part.Write(f.Data)
	if err = errors.Join(err, part.Close()); err == nil {
		err = os.Rename(part.Name(), path)
	}
	if err != nil {
		return "", errors.Join(err, os.Remove(part.Name()))
	}
	return path, nil
}
