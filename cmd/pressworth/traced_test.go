//go:build linux && cgo

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pressworth/cmd/internal/offscreen"
)

// canTrace skips where the system does not let one program look at another's system calls.
func canTrace(t *testing.T) {
	t.Helper()
	if offscreen.Missing("strace") != nil {
		t.Skip("strace is not installed (`go run ./cmd/dev test` installs it)")
	}
	if out, err := exec.CommandContext(t.Context(), "strace", "-o", "/dev/null", "true").CombinedOutput(); err != nil {
		t.Skipf("tracing is not permitted here: %v %s", err, out)
	}
}

var drivers = regexp.MustCompile(`lib(GL|EGL|GLES|GLX|X11|xcb|wayland|drm|gallium)[^"/]*\.so|_dri\.so`)

// A shell command needs no display and loads none of the graphics libraries, not even where they are installed.
func TestShell_loadsNoGraphicsLibrary(t *testing.T) {
	canTrace(t)
	log := filepath.Join(t.TempDir(), "calls")
	tool(t, "strace", "-f", "-e", "trace=openat", "-o", log, built(t), "price", "testdata/tees.json")
	calls, err := os.ReadFile(log)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(calls), "tees.json") {
		t.Fatal("the trace does not show that the job file was opened")
	}
	if found := drivers.FindString(string(calls)); found != "" {
		t.Errorf("`pressworth price` opened %s", found)
	}
	if drivers.FindString(`openat(AT_FDCWD, "/usr/lib/libGL.so.1", O_RDONLY)`) == "" {
		t.Error("the check does not know libGL when it sees it")
	}
}

var farConnect = regexp.MustCompile(`connect\(\d+, \{sa_family=AF_INET`)

// The program opens no network connection, from its start to a printed quote.
func TestWindow_opensNoConnection(t *testing.T) {
	canTrace(t)
	log := filepath.Join(t.TempDir(), "calls")
	d := startOn(t, newServer(t), "strace", t.TempDir(), "-f", "-e", "trace=connect", "-o", log, built(t), "--demo")
	d.wait("pressworth: priced")
	d.wait("pressworth: first frame")
	d.key("ctrl+p")
	d.wait("pressworth: wrote")
	d.key("ctrl+q")
	if err := d.Ended(patience); err != nil {
		t.Fatal(err)
	}
	calls, err := os.ReadFile(log)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(calls), "sa_family=AF_UNIX") {
		t.Fatal("the trace does not show the connection to the X server")
	}
	if found := farConnect.FindString(string(calls)); found != "" {
		t.Errorf("the program connected to another machine: %s\n%s", found, calls)
	}
	if farConnect.FindString("connect(5, {sa_family=AF_INET6, sin6_port=htons(443)") == "" {
		t.Error("the check does not know a connection when it sees one")
	}
}
