package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

// families is what to install where this command does not install by itself.
var families = []struct{ release, name, command string }{
	{"fedora", "Fedora, RHEL and their kin", "sudo dnf install gcc pkgconf-pkg-config mesa-libGL-devel libX11-devel libXcursor-devel libXrandr-devel " +
		"libXinerama-devel libXi-devel libXxf86vm-devel xorg-x11-server-Xvfb xdotool poppler-utils qpdf"},
	{"arch", "Arch", "sudo pacman -S --needed gcc pkgconf mesa libx11 libxcursor libxrandr libxinerama libxi libxxf86vm " +
		"xorg-server-xvfb xdotool poppler qpdf"},
	{"suse", "openSUSE", "sudo zypper install gcc pkg-config Mesa-libGL-devel libX11-devel libXcursor-devel libXrandr-devel " +
		"libXinerama-devel libXi-devel libXxf86vm-devel xorg-x11-server-Xvfb xdotool poppler-tools qpdf"},
	{"alpine", "Alpine", "sudo apk add gcc musl-dev pkgconf mesa-dev mesa-dri-gallium libx11-dev libxcursor-dev libxrandr-dev libxinerama-dev " +
		"libxi-dev libxxf86vm-dev xvfb xdotool poppler-utils qpdf"},
}

// headers are the pkg-config names of what the window is built with.
var headers = []string{"gl", "x11", "xcursor", "xrandr", "xinerama", "xi", "xxf86vm"}

// otherLinux is nil where the headers are in place, and else the error that says how to get them.
func otherLinux() error {
	if exec.Command("pkg-config", append([]string{"--exists"}, headers...)...).Run() == nil {
		if _, err := exec.LookPath("gcc"); err == nil {
			return nil
		}
	}
	release, _ := os.ReadFile("/etc/os-release")
	var b strings.Builder
	for _, f := range families {
		if strings.Contains(string(release), f.release) {
			return fmt.Errorf("a C compiler or headers are missing; install them and call this again:\n\n  %s", f.command)
		}
		fmt.Fprintf(&b, "\n%s:\n  %s\n", f.name, f.command)
	}
	return fmt.Errorf("a C compiler or headers are missing; install them and call this again\n%s", b.String())
}

// elsewhere says what systems other than Linux need.
func elsewhere(system string) error {
	if _, err := exec.LookPath("gcc"); err == nil {
		return nil
	}
	if _, err := exec.LookPath("clang"); err == nil {
		return nil
	}
	switch system {
	case "darwin":
		return errors.New("a C compiler is missing; install Apple's command line tools and call this again:\n\n  xcode-select --install")
	case "windows":
		return errors.New("a C compiler is missing: install MSYS2, in its shell `pacman -S mingw-w64-ucrt-x86_64-gcc`, " +
			`put C:\msys64\ucrt64\bin on the PATH, and call this again`)
	}
	return errors.New("a C compiler is missing; install gcc or clang with the headers of OpenGL and X11, and call this again")
}
