// Package quote is the engine: it works out what a heat-press job costs, by which method each placement is made, what
// is bought and what the customer pays. Values in, values out: the same job gives the same figures on every machine.
//
// Not in this package: reading or writing files (quote/jobfile has the form of a job file), a clock, a catalog of
// prices, anything of a window or a document.
package quote

import "strings"

// Format names of the two documents that the engine reads and gives.
const (
	JobFormat    = "pressworth.job/1"
	ResultFormat = "pressworth.result/1"
)

// Problems are all the things wrong with a job; it is the error that Price returns for bad input.
type Problems []Problem

// Error joins all problems.
func (p Problems) Error() string {
	var b strings.Builder
	for i, x := range p {
		if i > 0 {
			b.WriteString("; ")
		}
		b.WriteString(x.Path + ": " + x.Problem)
	}
	return b.String()
}

// Price works a job out in full. The error, if any, is Problems.
func Price(job Job) (Result, error) { return Result{}, Problems{{Path: "", Problem: "not yet"}} }

// Cheapest finds, for one placement, the spans of quantities from 1 to upto over which each card is the choice. The
// error, if any, is Problems.
func Cheapest(job Job, placement string, upto int) (CheapestFromTo, error) {
	return CheapestFromTo{}, Problems{{Path: "", Problem: "not yet"}}
}
