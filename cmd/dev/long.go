package main

import (
	"flag"
	"fmt"
)

// long runs the forms of the tests that take an hour or more: 300 kills instead of 20, every write of every chore
// failing instead of some, eight working days instead of two, the window used for ten minutes, ten minutes of fuzzing for
// each target, benchmarks for real.
func long(t *task) error {
	flags := flag.NewFlagSet("long", flag.ContinueOnError)
	kills := flags.Int("kills", 300, "how often the program is killed while it writes")
	rounds := flags.Int("rounds", 40, "how many rounds of work the window goes through")
	fuzzing := flags.String("fuzz", "10m", "how long each fuzz target runs")
	if err := flags.Parse(t.args); err != nil {
		return err
	}
	if err := t.install(buildPackages, runPackages, offscreenPackages, testPackages); err != nil {
		return err
	}
	if err := t.goBuild(); err != nil {
		return err
	}
	cmd := t.command("go", "test", windowTags(), "-v", "-count=1", "-timeout=6h", "-run=Kill", "./cmd/pressworth")
	cmd.Env = append(cmd.Env, "PRESSWORTH_BINARY="+t.binary(), fmt.Sprintf("PRESSWORTH_KILLS=%d", *kills))
	if err := t.openly(fmt.Sprintf("%d kills", *kills), cmd); err != nil {
		return err
	}
	cmd = t.command("go", "test", windowTags(), "-v", "-count=1", "-timeout=6h", "-run=TestFault|TestSoak", "./catalog/store")
	cmd.Env = append(cmd.Env, "PRESSWORTH_ALL_FAULTS=1", "PRESSWORTH_SOAK_DAYS=8")
	if err := t.openly("every write fails once; eight working days", cmd); err != nil {
		return err
	}
	cmd = t.command("go", "test", windowTags(), "-v", "-count=1", "-timeout=6h", "-run=TestSoak", "./cmd/pressworth")
	cmd.Env = append(cmd.Env, "PRESSWORTH_BINARY="+t.binary(), fmt.Sprintf("PRESSWORTH_SOAK_ROUNDS=%d", *rounds))
	if err := t.openly(fmt.Sprintf("the window, %d rounds of work", *rounds), cmd); err != nil {
		return err
	}
	if err := t.fuzz(*fuzzing); err != nil {
		return err
	}
	return t.benchFor("-benchtime=1s")
}
