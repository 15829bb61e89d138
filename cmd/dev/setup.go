package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
)

// Packages of Debian and Ubuntu, by what they are for. The Wayland and EGL headers are for a plain `go build` without
// this command's tags.
var (
	buildPackages = []string{
		"gcc", "libc6-dev", "pkg-config", "libgl1-mesa-dev", "libx11-dev", "libxcursor-dev",
		"libxrandr-dev", "libxinerama-dev", "libxi-dev", "libxxf86vm-dev",
		"libwayland-dev", "libxkbcommon-dev", "libegl-dev", "libgles-dev",
	}
	runPackages = []string{
		"libgl1", "libgles2", "libegl1", "libgl1-mesa-dri", "libx11-6", "libxcursor1", "libxrandr2",
		"libxinerama1", "libxi6", "libxxf86vm1",
	}
	offscreenPackages = []string{"xvfb", "xdotool", "xkb-data"}
	testPackages      = []string{"poppler-utils", "qpdf", "strace", "xclip"}
)

// install sees to it that the packages are there. Where it may not or cannot install them it says what to do.
func (t *task) install(lists ...[]string) error {
	if runtime.GOOS != "linux" {
		return elsewhere(runtime.GOOS)
	}
	if !debianLike() {
		return otherLinux()
	}
	var wanted []string
	for _, l := range lists {
		wanted = append(wanted, l...)
	}
	missing := t.notInstalled(wanted)
	if len(missing) == 0 {
		return nil
	}
	root, err := asRoot()
	if err != nil {
		return fmt.Errorf("these packages are missing; install them and call this again:\n\n  sudo apt-get install %s\n\n(%w)",
			strings.Join(missing, " "), err)
	}
	return t.apt(root, missing)
}

func (t *task) apt(root, missing []string) error {
	t.say("· install %s", strings.Join(missing, " "))
	get := func(step string, args ...string) error {
		all := append(append([]string{}, root...), "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-q", "-y")
		all = append(all, args...)
		return t.quietly(step, t.command(all[0], all[1:]...))
	}
	if err := get("read the lists of packages", "update"); err != nil {
		return err
	}
	return get(fmt.Sprintf("install %d packages", len(missing)), append([]string{"install", "--no-install-recommends"}, missing...)...)
}

// notInstalled are those of the packages that dpkg does not have whole.
func (t *task) notInstalled(packages []string) (missing []string) {
	args := append([]string{"-W", "-f", "${Package} ${Status}\n"}, packages...)
	output, _ := t.command("dpkg-query", args...).Output() // fails if one is unknown, and still lists the others
	here := map[string]bool{}
	for line := range strings.Lines(string(output)) {
		name, status, _ := strings.Cut(strings.TrimSpace(line), " ")
		here[name] = here[name] || status == "install ok installed"
	}
	for _, p := range packages {
		if !here[p] {
			missing = append(missing, p)
		}
	}
	return missing
}

// asRoot is what to put before a command so that it may install: nothing for root, sudo where it asks no password.
func asRoot() ([]string, error) {
	if os.Geteuid() == 0 {
		return nil, nil
	}
	if exec.Command("sudo", "-n", "true").Run() != nil {
		return nil, errors.New("you are not root, and sudo would ask for a password")
	}
	return []string{"sudo", "-n"}, nil
}

func debianLike() bool {
	if _, err := exec.LookPath("apt-get"); err != nil {
		return false
	}
	release, err := os.ReadFile("/etc/os-release")
	return err == nil && strings.Contains(string(release), "debian") || strings.Contains(string(release), "ubuntu")
}
