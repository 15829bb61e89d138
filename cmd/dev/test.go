package main

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"time"
)

// check is one thing that has to hold before a change goes in.
type check struct {
	name string
	run  func(*task) error
}

func checks() []check {
	return []check{
		{"formatted by gofmt", gofmt},
		{"go.mod and go.sum are tidy", tidy},
		{"go vet", vet},
		{"linters", lint},
		{"program builds", (*task).goBuild},
		{"shell commands build without a C compiler", buildPlain},
		{"tests", goTests},
		// by inputs, not by time: a fuzzer that runs out of time sometimes ends in «context deadline exceeded»
		{"fuzzing, some thousand inputs each", func(t *task) error { return t.fuzz("3000x") }},
		{"benchmarks run", func(t *task) error { return t.benchFor("-benchtime=1x", "-short") }},
	}
}

// test runs all checks, also after one has failed, and sums up.
func test(t *task) error {
	if err := t.install(buildPackages, runPackages, offscreenPackages, testPackages); err != nil {
		return err
	}
	began := time.Now()
	var failed []string
	for _, c := range checks() {
		t.say("\n== %s", c.name)
		if err := c.run(t); err != nil {
			t.say("%v\n-- %s: FAILED", err, c.name)
			failed = append(failed, c.name)
		}
		if t.ctx.Err() != nil {
			return t.ctx.Err()
		}
	}
	t.say("\n%d checks in %s", len(checks()), time.Since(began).Round(time.Second))
	if failed != nil {
		return fmt.Errorf("failed: %s", strings.Join(failed, "; "))
	}
	t.say("all checks hold")
	return nil
}

func gofmt(t *task) error {
	output, err := t.command("gofmt", "-l", ".").Output()
	if err != nil {
		return err
	}
	if len(output) > 0 {
		return fmt.Errorf("run gofmt -w on:\n%s", output)
	}
	return nil
}

func tidy(t *task) error {
	return t.quietly("go mod tidy -diff", t.command("go", "mod", "tidy", "-diff"))
}

func vet(t *task) error {
	return t.quietly("go vet ./... (the first time compiles everything)", t.command("go", "vet", windowTags(), "./..."))
}

// lint runs the linter that .ci/tools.mod names, a module file apart, so that its dependencies stay out of the product.
func lint(t *task) error {
	binary := t.out("golangci-lint")
	if err := t.quietly("build the linter", t.command("go", "build", "-modfile=.ci/tools.mod", "-o", binary,
		"github.com/golangci/golangci-lint/v2/cmd/golangci-lint")); err != nil {
		return err
	}
	return t.quietly("golangci-lint", t.command(binary, "run", "--timeout=15m", "--build-tags="+strings.TrimPrefix(windowTags(), "-tags=")))
}

// buildPlain builds what there is without cgo: everything but the window.
func buildPlain(t *task) error {
	cmd := t.command("go", "build", "-o", t.out("pressworth-shell"), "./cmd/pressworth")
	cmd.Env = append(cmd.Env, "CGO_ENABLED=0")
	return t.quietly("CGO_ENABLED=0 go build", cmd)
}

// goTests runs every test, under the race detector where there is a C compiler. The end-to-end tests drive the binary
// that was just built.
func goTests(t *task) error {
	args := []string{"test", windowTags(), "-timeout=20m"}
	if _, err := exec.LookPath("gcc"); err == nil {
		args = append(args, "-race")
	}
	cmd := t.command("go", append(args, "./...")...)
	if _, err := os.Stat(t.binary()); err == nil {
		cmd.Env = append(cmd.Env, "PRESSWORTH_BINARY="+t.binary())
	}
	return t.openly("go "+strings.Join(cmd.Args[1:], " "), cmd)
}
