package catalog

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"

	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// Revision is a frozen version of a quote: the job file with every price used and what was searched for, and the
// result it gave. It is never changed.
type Revision struct {
	RevisionRow
	Job    []byte // pressworth.job/1, with its methods and plans frozen
	Result []byte // pressworth.result/1
}

// RevisionRow is a revision without its two documents.
type RevisionRow struct {
	ID         int64
	QuoteID    int64
	Number     int    // counts the sendings of a quote: 1, 2, 3
	Option     int    // 1 to 4; 0: a quote without options
	OptionName string // like "with back print"
	MadeAt     string // RFC 3339
	SentHow    string // one of SentWays
	SHA256     string // of the two documents, by Seal
	Pieces     int
	Total      string // amounts with the currency's places
	Deposit    string // asked for
	Subtotal   string
	Cost       string
	Margin     string // percent, one place; empty: none
	Hours      string // two places
}

// SentWays are how a quote is given to the customer.
var SentWays = []string{"PDF", "e-mail", "message", "at the counter", "kept"}

// ErrAltered is a revision whose documents are not those that were frozen.
var ErrAltered = errors.New("altered since it was frozen")

// Altered names the revision whose documents are not those that were frozen, with both hashes.
type Altered struct {
	Quote        string // number of the quote
	Number       int
	Frozen, Read string // SHA-256
}

// Error says which revision it is and what still holds.
func (a Altered) Error() string {
	return fmt.Sprintf("revision %d of quote %s does not match its SHA-256: it was frozen as %.12s… and reads as %.12s…; "+
		"what it holds has been altered or damaged outside the program, everything else is untouched", a.Number, a.Quote, a.Frozen, a.Read)
}

// Is makes it ErrAltered.
func (a Altered) Is(target error) bool { return target == ErrAltered }

// Seal is the SHA-256 of a job file and its result, in hexadecimal: of the length of the first as a line, the first,
// and the second, so that nothing can pass from one to the other.
func Seal(job, result []byte) string {
	h := sha256.New()
	fmt.Fprintf(h, "%d\n", len(job))
	h.Write(job)
	h.Write(result)
	return hex.EncodeToString(h.Sum(nil))
}

// NewRevision freezes a job: it works it out in full, keeps what was searched for in the job file, and seals both. The
// error, if any, is quote.Problems.
func NewRevision(job quote.Job) (Revision, quote.Result, error) {
	frozen, result, err := quote.Freeze(job)
	if err != nil {
		return Revision{}, result, err
	}
	return SealRevision(frozen, result), result, nil
}

// SealRevision makes a revision of a job that quote.Freeze gave, with its result.
func SealRevision(frozen quote.Job, result quote.Result) Revision {
	r := Revision{Job: jobfile.Encode(frozen), Result: jobfile.EncodeResult(result)}
	r.SHA256 = Seal(r.Job, r.Result)
	r.Pieces = result.Pieces
	r.Total, r.Subtotal, r.Cost = result.Price.Total.String(), result.Price.Subtotal.String(), result.Cost.Total.String()
	r.Deposit, r.Hours = result.Price.Deposit.String(), result.Hours
	if result.MarginPercent != nil {
		r.Margin = *result.MarginPercent
	}
	return r
}

// Open reads both documents of a revision. The result is the one that was frozen: nothing is worked out anew.
func (r Revision) Open() (quote.Job, quote.Result, error) {
	job, err := jobfile.Decode(r.Job)
	if err != nil {
		return job, quote.Result{}, fmt.Errorf("revision %d: job: %w", r.Number, err)
	}
	result, err := jobfile.DecodeResult(r.Result)
	if err != nil {
		return job, result, fmt.Errorf("revision %d: result: %w", r.Number, err)
	}
	return job, result, nil
}

// Recheck prices a frozen revision anew with the engine as it is today and compares the whole result with the one that
// was frozen. What was searched for is not searched again: runner-ups, bounds, cliffs and the room left on sheets are
// what they were found to be when it was frozen.
func (r Revision) Recheck() error {
	job, was, err := r.Open()
	if err != nil {
		return err
	}
	now, err := quote.Price(job)
	if err != nil {
		return fmt.Errorf("revision %d: %w", r.Number, err)
	}
	asSearched(&now, was)
	if got := jobfile.EncodeResult(now); !bytes.Equal(got, r.Result) {
		return fmt.Errorf("revision %d: %w: %s", r.Number, ErrOtherFigures, firstDifference(string(r.Result), string(got)))
	}
	return nil
}

// ErrOtherFigures is a frozen revision that does not come to what it was frozen as.
var ErrOtherFigures = errors.New("comes to other figures than it was frozen with")

// asSearched puts what only a search finds from one result into another.
func asSearched(now *quote.Result, was quote.Result) {
	now.Cliffs, now.Heuristic = was.Cliffs, was.Heuristic
	for i := range min(len(now.Methods), len(was.Methods)) {
		m := was.Methods[i]
		now.Methods[i].RunnerUp, now.Methods[i].RunnerUpCost, now.Methods[i].Difference = m.RunnerUp, m.RunnerUpCost, m.Difference
	}
	for i := range min(len(now.Plans), len(was.Plans)) {
		now.Plans[i].Bound = was.Plans[i].Bound
		for k := range min(len(now.Plans[i].Runs), len(was.Plans[i].Runs)) {
			now.Plans[i].Runs[k].Room = was.Plans[i].Runs[k].Room
		}
	}
}

// firstDifference shows where two texts part.
func firstDifference(was, now string) string {
	const around = 60
	i := 0
	for i < len(was) && i < len(now) && was[i] == now[i] {
		i++
	}
	from := max(0, i-around)
	return fmt.Sprintf("was …%s…, is …%s…", was[from:min(len(was), i+around)], now[from:min(len(now), i+around)])
}
