package main

import (
	"flag"

	"pressworth/quote/jobfile"
)

// price prints the result of a job file.
func price(s shell) error {
	words, err := s.parse(flag.NewFlagSet("price", flag.ContinueOnError), "JOB.json")
	if err != nil {
		return err
	}
	data, err := s.read(words[0])
	if err != nil {
		return err
	}
	_, result, err := jobfile.Price(data)
	if err != nil {
		return err
	}
	_, err = s.out.Write(jobfile.EncodeResult(result))
	return err
}
