//go:build linux && cgo

package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"pressworth/cmd/internal/offscreen"
)

// patience is how long one step of the real window may take on a slow machine without a graphics card.
const patience = time.Minute

// drive is the real program in a window of its own, used as a person uses it: by keys and eyes.
type drive struct {
	*offscreen.Program
	*offscreen.Screen
	tb     testing.TB
	server *offscreen.Server
}

// built is the binary under test: the one that was built for the purpose, or this test binary, which acts as the program.
func built(tb testing.TB) string {
	tb.Helper()
	if b := os.Getenv("PRESSWORTH_BINARY"); b != "" {
		return b
	}
	b, err := exec.LookPath("pressworth")
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// openWindowed starts the program with a fresh home on a fresh X server and waits until it has drawn itself.
func openWindowed(tb testing.TB, args ...string) *drive {
	tb.Helper()
	d := startOn(tb, newServer(tb), built(tb), tb.TempDir(), args...)
	d.wait("pressworth: first frame")
	return d
}

func newServer(tb testing.TB) *offscreen.Server {
	tb.Helper()
	if missing := offscreen.Missing("Xvfb", "xdotool"); missing != nil {
		tb.Skipf("needs a window, and these are not installed: %s (`go run ./cmd/dev test` installs them)", strings.Join(missing, ", "))
	}
	server, err := offscreen.Start(tb.Context(), 1400, 900)
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(server.Stop)
	return server
}

func startOn(tb testing.TB, server *offscreen.Server, binary, home string, args ...string) *drive {
	tb.Helper()
	screen, err := offscreen.Connect(server.Display)
	if err != nil {
		tb.Fatal(err)
	}
	program, err := server.Run(tb.Context(), binary, home, args...)
	if err != nil {
		tb.Fatal(err)
	}
	d := &drive{program, screen, tb, server}
	tb.Cleanup(func() {
		d.Kill()
		_ = screen.Close()
	})
	return d
}

// wait returns the rest of the next line on standard error that begins so.
func (d *drive) wait(prefix string) string {
	d.tb.Helper()
	rest, err := d.Wait(prefix, patience)
	if err != nil {
		d.tb.Fatal(err)
	}
	return rest
}

// key presses keys by their names: "ctrl+p", "Tab".
func (d *drive) key(names ...string) {
	d.xdotool(append([]string{"key", "--clearmodifiers"}, names...)...)
}

// text types a text as on a keyboard.
func (d *drive) text(s string) { d.xdotool("type", "--delay", "25", s) }

func (d *drive) xdotool(args ...string) {
	d.tb.Helper()
	cmd := exec.CommandContext(d.tb.Context(), "xdotool", args...)
	cmd.Env = append(os.Environ(), "DISPLAY="+d.server.Display)
	if out, err := cmd.CombinedOutput(); err != nil {
		d.tb.Fatalf("xdotool %v: %v\n%s", args, err, out)
	}
}

// tool runs a program that looks at a file, and returns what it prints.
func tool(tb testing.TB, name string, args ...string) string {
	tb.Helper()
	if offscreen.Missing(name) != nil {
		tb.Skipf("%s is not installed (`go run ./cmd/dev test` installs it)", name)
	}
	out, err := exec.CommandContext(tb.Context(), name, args...).CombinedOutput()
	if err != nil {
		tb.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}
