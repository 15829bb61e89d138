package main

import (
	"flag"
	"time"

	"pressworth/export"
	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// documents writes every document of a job into a folder and prints their names.
func documents(s shell) error {
	flags := flag.NewFlagSet("documents", flag.ContinueOnError)
	folder := flags.String("out", "", "folder")
	on := flags.String("date", "", "date of the documents")
	words, err := s.parse(flags, "JOB.json")
	if err != nil {
		return err
	}
	if err := required(flags, "out"); err != nil {
		return err
	}
	date, err := dateOf(*on)
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
	names := []string{}
	for _, f := range files {
		if _, err := writeFile(*folder, f); err != nil {
			return err
		}
		names = append(names, f.Name)
	}
	return s.print(struct {
		Files []string `json:"files"`
	}{names})
}

// dateOf reads a day; empty is today.
func dateOf(text string) (time.Time, error) {
	if text == "" {
		y, m, d := time.Now().Date()
		return time.Date(y, m, d, 0, 0, 0, 0, time.UTC), nil
	}
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return t, quote.Problems{{Path: "--date", Problem: "enter a day as YYYY-MM-DD"}}
	}
	return t, nil
}
