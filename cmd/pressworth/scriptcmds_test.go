package main

import (
	"encoding/json"
	"errors"
	"os/exec"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// exits runs a command and wants its exit code: exits 2 pressworth price bad.json.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	code := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		code = exit.ExitCode()
	}
	if code != want {
		ts.Fatalf("%s: exit code %d, want %d", strings.Join(args[1:], " "), code, want)
	}
}

// jsonValue reads one value of a JSON file and wants it so: json stdout price.total 1261.38.
// A step of the path that is a number is an index of a list; len is its length.
func jsonValue(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 3 {
		ts.Fatalf("usage: json FILE PATH VALUE")
	}
	var tree any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(args[0])), &tree))
	got, ok := valueAt(tree, args[1])
	if !ok {
		ts.Fatalf("%s has no %s", args[0], args[1])
	}
	if (got == args[2]) == neg {
		ts.Fatalf("%s: %s is %q, wanted %q: %v", args[0], args[1], got, args[2], !neg)
	}
}

func valueAt(tree any, path string) (string, bool) {
	for step := range strings.SplitSeq(path, ".") {
		switch t := tree.(type) {
		case map[string]any:
			v, ok := t[step]
			if !ok {
				return "", false
			}
			tree = v
		case []any:
			if step == "len" {
				return strconv.Itoa(len(t)), true
			}
			i, err := strconv.Atoi(step)
			if err != nil || i >= len(t) {
				return "", false
			}
			tree = t[i]
		default:
			return "", false
		}
	}
	if s, ok := tree.(string); ok {
		return s, true
	}
	b, err := json.Marshal(tree)
	return string(b), err == nil
}
