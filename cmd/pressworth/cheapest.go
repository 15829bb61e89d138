package main

import (
	"flag"
	"fmt"

	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// mostUpto is the largest quantity that cheapest goes up to: each one is priced.
const mostUpto = 5000

// cheapest prints which card is cheapest over which span of quantities, for one placement of a job file.
func cheapest(s shell) error {
	flags := flag.NewFlagSet("cheapest", flag.ContinueOnError)
	placement := flags.String("placement", "", "")
	upto := flags.Int("upto", 150, "")
	words, err := s.parse(flags, "JOB.json")
	if err == nil {
		err = required(flags, "placement")
	}
	if err != nil {
		return err
	}
	if *upto < 1 || *upto > mostUpto {
		return fmt.Errorf("cheapest: --upto %d: enter 1 to %d", *upto, mostUpto)
	}
	data, err := s.read(words[0])
	if err != nil {
		return err
	}
	job, form := jobfile.Decode(data)
	spans, err := bothProblems(form, func() (quote.CheapestFromTo, error) { return quote.Cheapest(job, *placement, *upto) })
	if err != nil {
		return err
	}
	return s.print(spans)
}
