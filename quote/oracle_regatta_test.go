package quote_test

import (
	"encoding/json"
	"os"
	"testing"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/jobfile"
)

// readJob reads a job file of testdata/jobs.
func readJob(t testing.TB, name string) quote.Job {
	t.Helper()
	data, err := os.ReadFile("../testdata/jobs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	job, err := jobfile.Decode(data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return job
}

// The oracle itself is held to the worked case, so that engine and oracle cannot agree on a common mistake there.
func TestOracle_regatta(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	got, err := plain.Price(job, newPlanner(job))
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile("../testdata/jobs/regatta.expected.json")
	if err != nil {
		t.Fatal(err)
	}
	var want quote.Result
	if err := json.Unmarshal(data, &want); err != nil {
		t.Fatal(err)
	}
	for _, d := range differences(got, want, 2) {
		t.Error(d)
	}
}
