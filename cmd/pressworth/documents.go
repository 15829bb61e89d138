package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"pressworth/export"
	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// documents writes every document of a job file into a folder, and prints their names.
func documents(s shell) error {
	flags := flag.NewFlagSet("documents", flag.ContinueOnError)
	folder := flags.String("out", "", "")
	day := flags.String("date", "", "")
	words, err := s.parse(flags, "JOB.json")
	if err == nil {
		err = required(flags, "out")
	}
	if err != nil {
		return err
	}
	date, err := dateOf(*day)
	if err != nil {
		return err
	}
	data, err := s.read(words[0])
	if err != nil {
		return err
	}
	job, result, err := jobfile.Price(data)
	if err != nil {
		return err
	}
	files, err := export.Documents(job, result, date)
	if err != nil {
		return err
	}
	names, err := writeAll(*folder, files)
	if err != nil {
		return err
	}
	return s.print(map[string]any{"files": names})
}

// dateOf reads a day; empty is today.
func dateOf(text string) (time.Time, error) {
	if text == "" {
		text = time.Now().Format(time.DateOnly)
	}
	day, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return day, quote.Problems{{Path: "--date", Problem: "enter a day as year-month-day, like 2026-05-31"}}
	}
	return day, nil
}

func writeAll(folder string, files []export.File) (names []string, err error) {
	for _, f := range files {
		if _, err := writeFile(folder, f); err != nil {
			return nil, err
		}
		names = append(names, f.Name)
	}
	return names, nil
}

// writeFile writes a document that its owner alone can read, whole or not at all, and returns its path. The name is one
// of export's; it never leads out of the folder, whatever the data.
func writeFile(folder string, f export.File) (path string, err error) {
	if f.Name != filepath.Base(f.Name) {
		return "", fmt.Errorf("document %q: not a plain file name", f.Name)
	}
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return "", err
	}
	temp, err := os.CreateTemp(folder, ".pressworth-*") // mode 0600
	if err != nil {
		return "", err
	}
	_, err = temp.Write(f.Data)
	if err = errors.Join(err, temp.Close()); err == nil {
		path = filepath.Join(folder, f.Name)
		err = os.Rename(temp.Name(), path)
	}
	if err != nil {
		return "", errors.Join(err, os.Remove(temp.Name()))
	}
	return path, nil
}
