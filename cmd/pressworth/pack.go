package main

import (
	"flag"
	"time"

	"pressworth/quote/packfile"
)

// pack lays the rectangles of a pack file. The search ends by its effort, not by the clock; the clock only keeps the
// promise that the answer comes within the seconds asked for, of which a tenth is left for reading and writing.
func pack(s shell) error {
	began := time.Now()
	words, err := s.parse(flag.NewFlagSet("pack", flag.ContinueOnError), "PACK.json")
	if err != nil {
		return err
	}
	data, err := s.read(words[0])
	if err != nil {
		return err
	}
	request, form := packfile.Decode(data)
	late := func() bool { return form != nil || time.Since(began) > request.Ceiling()*9/10 }
	answer, err := bothProblems(form, func() (packfile.Answer, error) { return packfile.Run(request, late) })
	if err != nil {
		return err
	}
	_, err = s.out.Write(packfile.Encode(answer))
	return err
}
