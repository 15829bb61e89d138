package quote_test

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/jobfile"
)

func places(job quote.Job) int {
	if job.Currency == "JPY" {
		return 0
	}
	return 2
}

// Every figure of a random job, from the split of a cost line to the cliffs, has to be what the oracle makes of it.
func TestPrice_isWhatTheOracleSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		want, unserved := plain.Price(job, newPlanner(job))
		got, err := quote.Price(job)
		if (err != nil) != (unserved != nil) {
			t.Fatalf("oracle: %v, engine: %v\n%s", unserved, err, jobfile.Encode(job))
		}
		var problems quote.Problems
		if err != nil && (!errors.As(err, &problems) || !strings.HasPrefix(problems[0].Path, "placements[")) {
			t.Fatalf("a placement that no card serves, engine: %v\n%s", err, jobfile.Encode(job))
		}
		if err != nil {
			return
		}
		if d := differences(want, got, places(job)); len(d) > 0 {
			t.Fatalf("%s\n%s", strings.Join(d, "\n"), jobfile.Encode(job))
		}
	})
}
