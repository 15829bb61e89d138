package main

import "runtime"

// bench runs the benchmarks for real: `go run ./cmd/dev bench`.
func bench(t *task) error {
	if err := t.install(buildPackages, runPackages, offscreenPackages); err != nil {
		return err
	}
	if err := t.goBuild(); err != nil {
		return err
	}
	return t.benchFor("1s")
}

// benchFor runs every benchmark for so long. Those of the window run the built program, and beside it a bare window of
// the toolkit, which is built here.
func (t *task) benchFor(benchtime string) error {
	bare := t.out("bare")
	if runtime.GOOS == "linux" {
		if err := t.quietly("build a bare window to measure against", t.command("go", "build", windowTags(), "-o", bare, "./cmd/internal/bare")); err != nil {
			return err
		}
	}
	cmd := t.command("go", "test", windowTags(), "-run=^$", "-bench=.", "-benchmem", "-benchtime="+benchtime, "-timeout=60m", "./...")
	cmd.Env = append(cmd.Env, "PRESSWORTH_BINARY="+t.binary(), "PRESSWORTH_BARE="+bare)
	return t.openly("go test -bench=. -benchtime="+benchtime, cmd)
}
