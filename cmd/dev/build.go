package main

import (
	"os"
	"os/exec"
	"runtime"
)

const linuxTags = "-tags=gles,x11,no_animations"

// windowTags are the build tags of the window, for every build, test and benchmark: another set would compile the
// toolkit's C code once more. OpenGL ES builds in half the time and draws sooner, X11 alone needs no Wayland headers,
// and without animations a focused field does not keep the processor awake.
func windowTags() string {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		return "-tags="
	}
	return linuxTags
}

func (t *task) binary() string {
	if runtime.GOOS == "windows" {
		return t.out("pressworth.exe")
	}
	return t.out("pressworth")
}

func (t *task) goBuild() error {
	return t.quietly("build the program (the first time takes some minutes)",
		t.command("go", "build", windowTags(), "-o", t.binary(), "./cmd/pressworth"))
}

func build(t *task) error {
	if err := t.install(buildPackages, runPackages); err != nil {
		return err
	}
	if err := t.goBuild(); err != nil {
		return err
	}
	t.say("built %s", t.binary())
	return nil
}

func run(t *task) error {
	if err := build(t); err != nil {
		return err
	}
	return t.handOver(t.args...)
}

// handOver runs the built program in the foreground, with the user's own environment.
func (t *task) handOver(args ...string) error {
	cmd := exec.CommandContext(t.ctx, t.binary(), args...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	return cmd.Run()
}
