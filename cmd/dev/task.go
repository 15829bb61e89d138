package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// task is one call of a command: where the project lies and how its steps are run and told.
type task struct {
	ctx  context.Context
	root string
	args []string // after the command's name
}

func newTask(ctx context.Context, args []string) (*task, error) {
	root, err := projectRoot()
	if err != nil {
		return nil, err
	}
	if cache, err := os.UserCacheDir(); err == nil {
		if err := os.MkdirAll(cache, 0o700); err != nil {
			return nil, err
		}
	}
	if err := os.MkdirAll(filepath.Join(root, "out"), 0o755); err != nil {
		return nil, err
	}
	return &task{ctx: ctx, root: root, args: args}, nil
}

// command makes a command that runs in the project's folder, in a locale that every system has.
func (t *task) command(name string, args ...string) *exec.Cmd {
	cmd := exec.CommandContext(t.ctx, name, args...)
	cmd.Dir = t.root
	cmd.Env = append(os.Environ(), "LANG=C.UTF-8", "LC_ALL=C.UTF-8")
	return cmd
}

func (t *task) out(name string) string { return filepath.Join(t.root, "out", name) }

func (t *task) say(format string, args ...any) { fmt.Printf(format+"\n", args...) }

// quietly runs a command whose output matters only if it fails; meanwhile it says every few seconds that the step goes
// on, for a first build takes minutes.
func (t *task) quietly(step string, cmd *exec.Cmd) error {
	var output bytes.Buffer
	cmd.Stdout, cmd.Stderr = &output, &output
	began := time.Now()
	t.say("· %s", step)
	if err := cmd.Start(); err != nil {
		return fmt.Errorf("%s: %w", step, err)
	}
	err := t.tell(step, began, cmd)
	if err != nil {
		return fmt.Errorf("%s: %w\n%s", step, err, tail(output.String(), 300))
	}
	if took := time.Since(began); took > 2*time.Second {
		t.say("  done in %s", took.Round(time.Second))
	}
	return nil
}

func (t *task) tell(step string, began time.Time, cmd *exec.Cmd) error {
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	tick := time.NewTicker(10 * time.Second)
	defer tick.Stop()
	for {
		select {
		case err := <-ended:
			return err
		case <-tick.C:
			t.say("  %s: %s so far", step, time.Since(began).Round(time.Second))
		}
	}
}

// openly runs a command whose output is for the reader.
func (t *task) openly(step string, cmd *exec.Cmd) error {
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	t.say("· %s", step)
	began := time.Now()
	if err := cmd.Start(); err != nil {
		return fmt.Errorf("%s: %w", step, err)
	}
	if err := t.tell(step, began, cmd); err != nil {
		return fmt.Errorf("%s: %w", step, err)
	}
	t.say("  done in %s", time.Since(began).Round(time.Second))
	return nil
}

func tail(text string, lines int) string {
	all := strings.Split(strings.TrimRight(text, "\n"), "\n")
	return strings.Join(all[max(0, len(all)-lines):], "\n")
}
