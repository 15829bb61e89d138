package main

import (
	"archive/tar"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"
)

// packed is what the archive holds: name inside, file here, mode.
type packed struct {
	name, file string
	mode       int64
}

// pack builds the archive for Linux: the program stripped, its licences, its icon and a menu entry.
func pack(t *task) error {
	if runtime.GOOS != "linux" {
		return errors.New("the Linux archive is built on Linux; DEVELOPERS.md has the other systems")
	}
	if err := t.install(buildPackages, runPackages); err != nil {
		return err
	}
	binary := t.out("pressworth-release")
	if err := t.quietly("build for release", t.command("go", "build", linuxTags+",migrated_fynedo", "-trimpath", "-ldflags=-s -w",
		"-o", binary, "./cmd/pressworth")); err != nil {
		return err
	}
	version, err := t.version()
	if err != nil {
		return err
	}
	name := fmt.Sprintf("pressworth-%s-linux-%s", version, runtime.GOARCH)
	files := []packed{
		{"pressworth", binary, 0o755},
		{"README.md", filepath.Join(t.root, "README.md"), 0o644},
		{"LICENSE", filepath.Join(t.root, "LICENSE"), 0o644},
		{"NOTICES", filepath.Join(t.root, "assets", "NOTICES"), 0o644},
		{"pressworth.png", filepath.Join(t.root, "assets", "icon.png"), 0o644},
	}
	if err := archive(t.out(name+".tar.gz"), name, files); err != nil {
		return err
	}
	t.say("%s\nwhere it is to run, these packages of Debian's are enough: %s", t.out(name+".tar.gz"), strings.Join(runPackages, " "))
	return nil
}

// version is the one of FyneApp.toml.
func (t *task) version() (string, error) {
	content, err := os.ReadFile(filepath.Join(t.root, "FyneApp.toml"))
	if err != nil {
		return "", err
	}
	for line := range strings.Lines(string(content)) {
		if name, value, ok := strings.Cut(line, "="); ok && strings.TrimSpace(name) == "Version" {
			return strings.Trim(strings.TrimSpace(value), `"`), nil
		}
	}
	return "", errors.New("FyneApp.toml names no Version")
}

const menuEntry = `[Desktop Entry]
Type=Application
Name=Pressworth
Comment=Price heat-press jobs
Exec=pressworth
Icon=pressworth
Categories=Office;
`

func archive(file, folder string, files []packed) (err error) {
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	zip := gzip.NewWriter(f)
	out := tar.NewWriter(zip)
	defer func() { err = errors.Join(err, out.Close(), zip.Close(), f.Close()) }()
	for _, p := range files {
		content, err := os.ReadFile(p.file)
		if err != nil {
			return err
		}
		if err := add(out, folder+"/"+p.name, string(content), p.mode); err != nil {
			return err
		}
	}
	return add(out, folder+"/pressworth.desktop", menuEntry, 0o644)
}

func add(out *tar.Writer, name, content string, mode int64) error {
	head := &tar.Header{Name: name, Mode: mode, Size: int64(len(content)), ModTime: time.Unix(0, 0)}
	if err := out.WriteHeader(head); err != nil {
		return err
	}
	_, err := io.WriteString(out, content)
	return err
}
