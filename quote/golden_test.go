package quote_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// checkExpected holds a result against the figures of a worked case: every figure that the case gives has to be there.
// Lists of things with a name (id, ref, placement, size, pieces) are matched by it, in any order.
func checkExpected(t *testing.T, got quote.Result, name string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("../testdata/jobs", name))
	if err != nil {
		t.Fatal(err)
	}
	var want, have any
	if err := json.Unmarshal(data, &want); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if err := json.Unmarshal(jobfile.EncodeResult(got), &have); err != nil {
		t.Fatal(err)
	}
	for _, d := range missing(want, have, "") {
		t.Errorf("%s: %s", name, d)
	}
}

// missing lists what of want is not in have.
func missing(want, have any, path string) []string {
	switch w := want.(type) {
	case map[string]any:
		h, _ := have.(map[string]any)
		var found []string
		for k, x := range w {
			if strings.HasPrefix(k, "why") {
				continue // how a figure comes about, for the reader
			}
			y, ok := h[k]
			if !ok {
				found = append(found, path+"."+k+": not in the result")
				continue
			}
			found = append(found, missing(x, y, path+"."+k)...)
		}
		return found
	case []any:
		h, _ := have.([]any)
		return missingItems(w, h, path)
	}
	if fmt.Sprint(want) != fmt.Sprint(have) {
		return []string{fmt.Sprintf("%s: want %v, got %v", path, want, have)}
	}
	return nil
}

func missingItems(want, have []any, path string) []string {
	if len(want) == 0 && len(have) > 0 {
		return []string{path + ": want an empty list"}
	}
	var found []string
	for _, x := range want {
		i := slices.IndexFunc(have, func(y any) bool { return nameOf(x) == nameOf(y) })
		if i < 0 {
			found = append(found, fmt.Sprintf("%s: no %s", path, nameOf(x)))
			continue
		}
		found = append(found, missing(x, have[i], path+"["+nameOf(x)+"]")...)
	}
	return found
}

func nameOf(item any) string {
	m, ok := item.(map[string]any)
	if !ok {
		return fmt.Sprint(item)
	}
	for _, keys := range [][]string{{"id"}, {"kind", "ref"}, {"placement"}, {"card"}, {"code", "path"}, {"from", "to"}, {"size"}, {"what"}, {"pieces"}} {
		if x, ok := m[keys[0]]; ok {
			return fmt.Sprint(x, " ", m[keys[len(keys)-1]])
		}
	}
	return ""
}

// The worked cases of testdata/jobs: NAME.job.json with NAME.expected.json.
func TestPrice_workedCases(t *testing.T) {
	files, _ := filepath.Glob("../testdata/jobs/*.job.json")
	if len(files) < 8 {
		t.Fatalf("%d worked cases found, want 8 or more", len(files))
	}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".job.json")
		t.Run(name, func(t *testing.T) {
			got, err := quote.Price(readJob(t, name+".job.json"))
			if err != nil {
				t.Fatal(err)
			}
			checkExpected(t, got, name+".expected.json")
		})
	}
}

// The bad files of testdata/bad: NAME.json with NAME.paths, the path of every problem on a line of its own.
func TestPrice_badInput(t *testing.T) {
	files, _ := filepath.Glob("../testdata/bad/*.json")
	if len(files) < 8 {
		t.Fatalf("%d bad files found, want 8 or more", len(files))
	}
	for _, f := range files {
		t.Run(strings.TrimSuffix(filepath.Base(f), ".json"), func(t *testing.T) {
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			list, err := os.ReadFile(strings.TrimSuffix(f, ".json") + ".paths")
			if err != nil {
				t.Fatal(err)
			}
			want := strings.Fields(string(bytes.TrimSpace(list)))
			_, _, err = jobfile.Price(data)
			var problems quote.Problems
			errors.As(err, &problems)
			var got []string
			for _, p := range problems {
				got = append(got, p.Path)
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("paths\n got %q\nwant %q\n%v", got, want, err)
			}
		})
	}
}
