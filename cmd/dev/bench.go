package main

import (
	"runtime"
	"strings"
)

// bench runs the benchmarks for real: `go run ./cmd/dev bench`.
func bench(t *task) error {
	if err := t.install(buildPackages, runPackages, offscreenPackages); err != nil {
		return err
	}
	if err := t.goBuild(); err != nil {
		return err
	}
	return t.benchFor("-benchtime=1s")
}

// benchFor runs every benchmark, for how long the flags say. Those of the window run the built program, and beside it a bare window of
// the toolkit, which is built here.
func (t *task) benchFor(flags ...string) error {
	bare := t.out("bare")
	if runtime.GOOS == "linux" {
		if err := t.quietly("build a bare window to measure against", t.command("go", "build", windowTags(), "-o", bare, "./cmd/internal/bare")); err != nil {
			return err
		}
	}
	args := append([]string{"test", windowTags(), "-run=^$", "-bench=.", "-benchmem", "-timeout=60m"}, flags...)
	cmd := t.command("go", append(args, "./...")...)
	cmd.Env = append(cmd.Env, "PRESSWORTH_BINARY="+t.binary(), "PRESSWORTH_BARE="+bare)
	return t.openly("go test -bench=. "+strings.Join(flags, " "), cmd)
}
