package store_test

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pressworth/catalog/store"
)

// faults are what a tracer does at the n-th call of a kind: the disk is full, or broken, or the program is killed there.
var faults = []struct{ call, what string }{
	{"pwrite64", "error=ENOSPC"},
	{"pwrite64", "error=EIO"},
	{"fsync", "error=EIO"},
	{"fdatasync", "error=EIO"},
	{"ftruncate", "error=EIO"},
	{"pwrite64", "signal=SIGKILL"},
	{"fsync", "signal=SIGKILL"},
}

// allFaults asks for every n of every fault; the short form takes some of each.
const allFaults = "PRESSWORTH_ALL_FAULTS"

// fewFaults is how many calls of a kind the short form lets fail.
const fewFaults = 3

// The n-th write, sync or cut of each chore fails, once or from then on; and the program is killed there. The file is
// sound afterwards, holds what was said to be done, nothing by half, and what went wrong was said with what to do.
func TestFault_atEachWriteTheShopStaysSoundAndSaysWhy(t *testing.T) {
	canTrace(t)
	for name, c := range chores() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			begin := filepath.Join(t.TempDir(), "begin.db")
			c.shop(t, begin)
			calls := countCalls(t, name, begin)
			if calls["pwrite64"] < 4 || calls["fsync"] == 0 {
				t.Fatalf("the trace shows %v: too little for a chore that writes", calls)
			}
			for _, f := range faults {
				for i, n := range instants(calls[f.call]) {
					when := fmt.Sprintf("%d%s", n, []string{"", "+"}[i%2])
					failAt(t, name, c, begin, fmt.Sprintf("%s:%s:when=%s", f.call, f.what, when))
				}
			}
			t.Logf("calls of the chore: %v", calls)
		})
	}
}

// instants are the calls at which to fail: all of them, or the first, the last and one between.
func instants(calls int) (at []int) {
	if os.Getenv(allFaults) != "" {
		for n := range calls {
			at = append(at, n+1, n+1) // once, and for good
		}
		return at
	}
	few := fewFaults
	if raced {
		few = 1
	}
	for i := range min(few, calls) {
		at = append(at, 1+(i*calls+rand.IntN(calls))/few)
	}
	return at
}

func canTrace(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("strace"); err != nil {
		t.Skip("strace is not installed (`go run ./cmd/dev test` installs it); TestSmallDisk does without")
	}
	if out, err := exec.CommandContext(t.Context(), "strace", "-o", os.DevNull, "true").CombinedOutput(); err != nil {
		t.Skipf("tracing is not permitted here, TestSmallDisk does without: %v %s", err, out)
	}
}

// traced runs a chore under the tracer and returns what it said. Its exit is not looked at: it may have been killed.
func traced(t *testing.T, name, path, inject string) (said string, log []byte) {
	t.Helper()
	trace := filepath.Join(t.TempDir(), "trace")
	args := []string{"-f", "--seccomp-bpf", "-o", trace, "-e", "trace=pwrite64,fsync,fdatasync,ftruncate"}
	if inject != "" {
		args = append(args, "-e", "inject="+inject)
	}
	cmd := exec.CommandContext(t.Context(), "strace", append(args, os.Args[0])...)
	cmd.Env = append(os.Environ(), choreName+"="+name, choreShop+"="+path)
	var out bytes.Buffer
	cmd.Stdout = &out
	var exit *exec.ExitError
	if err := cmd.Run(); err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	log, err := os.ReadFile(trace)
	if err != nil {
		t.Fatal(err)
	}
	return out.String(), log
}

var callOf = regexp.MustCompile(`(?m)^(\d+) +(\w+)\(`)

// countCalls counts the calls of an undisturbed chore by kind. All must come from one thread: a tracer counts by thread.
func countCalls(t *testing.T, name, begin string) map[string]int {
	t.Helper()
	said, log := traced(t, name, copyShop(t, begin), "")
	if c := chores()[name]; c.act != nil && !strings.Contains(said, "done\n") {
		t.Fatalf("undisturbed, the chore said: %s", said)
	}
	calls, threads := map[string]int{}, map[string]bool{}
	for _, m := range callOf.FindAllSubmatch(log, -1) {
		threads[string(m[1])] = true
		calls[string(m[2])]++
	}
	if len(threads) != 1 {
		t.Fatalf("the chore writes from %d threads", len(threads))
	}
	return calls
}

func copyShop(t *testing.T, from string) (path string) {
	t.Helper()
	content, err := os.ReadFile(from)
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "shop.db")
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func failAt(t *testing.T, name string, c chore, begin, inject string) {
	t.Helper()
	path := copyShop(t, begin)
	said, log := traced(t, name, path, inject)
	what := name + ", " + inject
	killed := strings.Contains(inject, "SIGKILL")
	if !killed && !bytes.Contains(log, []byte("(INJECTED)")) {
		t.Errorf("%s: nothing was injected", what)
	}
	if once := !strings.HasSuffix(inject, "+"); once && !killed && c.act != nil && strings.Contains(said, "failed:") && !strings.Contains(said, "done\n") {
		t.Errorf("%s: the disk failed once, and trying again did not help:\n%s", what, said)
	}
	checkSaid(t, what, said)
	checkAfter(t, what, c, path, strings.Contains(said, "done\n"))
}

// checkSaid wants every error to say what happened, what was kept and what to do.
func checkSaid(t *testing.T, what, said string) {
	t.Helper()
	for line := range strings.Lines(said) {
		if !strings.HasPrefix(line, "failed:") && !strings.HasPrefix(line, "error:") {
			continue
		}
		if !slices.ContainsFunc([]error{store.ErrFull, store.ErrDisk}, func(e error) bool { return strings.Contains(line, e.Error()) }) {
			t.Errorf("%s: the error does not say what was kept and what to do: %s", what, line)
		}
	}
}

// checkAfter looks through a shop that went through trouble.
func checkAfter(t *testing.T, what string, c chore, path string, acknowledged bool) {
	t.Helper()
	found, err := store.Check(ctx, path)
	if err != nil || found.Problems != nil {
		t.Errorf("%s: %v, %v", what, found.Problems, err)
		return
	}
	s, err := store.Open(ctx, path, store.Options{Now: clock})
	if err != nil {
		t.Errorf("%s: %v", what, err)
		return
	}
	if err := errors.Join(c.look(s, acknowledged), s.Close()); err != nil {
		t.Errorf("%s: %v", what, err)
	}
	if c.done != nil {
		c.done(t, path, acknowledged)
	}
}
