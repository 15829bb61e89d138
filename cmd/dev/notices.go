package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
)

// module is one module whose code is linked into the program.
type module struct{ Path, Version, Dir string }

// notices writes assets/NOTICES: the licence of every module that is linked in on any of the systems the program is
// built for, of Go itself, and of every font.
func notices(t *task) error {
	modules, err := t.linkedModules()
	if err != nil {
		return err
	}
	goroot, err := t.command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	modules = append([]module{{Path: "Go: standard library and runtime", Dir: strings.TrimSpace(string(goroot))}}, modules...)
	modules = append(modules, module{Path: "Fonts of the window and of the documents", Dir: filepath.Join(t.root, "assets", "fonts")})
	var b strings.Builder
	b.WriteString("Pressworth is made with the works below, each under its own licence.\n\n")
	for _, m := range modules {
		b.WriteString("  " + m.title() + "\n")
	}
	for _, m := range modules {
		if err := licences(&b, m); err != nil {
			return err
		}
	}
	t.say("assets/NOTICES: %d works, %d KiB", len(modules), b.Len()>>10)
	return os.WriteFile(filepath.Join(t.root, "assets", "NOTICES"), []byte(b.String()), 0o644)
}

func (m module) title() string { return strings.TrimSpace(m.Path + " " + m.Version) }

// linkedModules asks for the dependencies on each system, for they differ, and joins them by path.
func (t *task) linkedModules() ([]module, error) {
	all := map[string]module{}
	for _, system := range []string{"linux", "windows", "darwin"} {
		args := []string{"list", "-deps", "-json=Module", "./cmd/pressworth"}
		if system == "linux" {
			args = slices.Insert(args, 1, linuxTags)
		}
		cmd := t.command("go", args...)
		cmd.Env = append(cmd.Env, "GOOS="+system, "CGO_ENABLED=1")
		output, err := cmd.Output()
		if err != nil {
			return nil, fmt.Errorf("go list for %s: %w", system, err)
		}
		if err := addModules(all, output); err != nil {
			return nil, err
		}
	}
	var list []module
	for _, m := range all {
		list = append(list, m)
	}
	sort.Slice(list, func(i, j int) bool { return list[i].Path < list[j].Path })
	return list, nil
}

func addModules(all map[string]module, listed []byte) error {
	in := json.NewDecoder(strings.NewReader(string(listed)))
	for {
		var p struct{ Module *module }
		err := in.Decode(&p)
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if p.Module != nil && p.Module.Version != "" {
			all[p.Module.Path] = *p.Module
		}
	}
}

// licences appends the licence files of a module and of what it carries in turn, each text once. A module without one
// is an error: nothing is shipped whose terms are not known.
func licences(b *strings.Builder, m module) error {
	seen := map[string]bool{}
	err := filepath.WalkDir(m.Dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			return skip(m, path, d.Name())
		}
		if !isLicence(d.Name()) {
			return nil
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		text := strings.TrimSpace(strings.ReplaceAll(string(content), "\r\n", "\n"))
		if name, err := filepath.Rel(m.Dir, path); err == nil && !seen[text] {
			seen[text] = true
			fmt.Fprintf(b, "\n%s\n%s: %s\n\n%s\n", strings.Repeat("=", 100), m.title(), filepath.ToSlash(name), text)
		}
		return nil
	})
	if err == nil && len(seen) == 0 {
		err = fmt.Errorf("%s: no licence file in %s", m.title(), m.Dir)
	}
	return err
}

// skip leaves out folders that are not linked in. Of Go itself only the top folder counts: the rest repeats it.
func skip(m module, path, name string) error {
	if name == "testdata" || name == "cmd" || m.Version == "" && strings.HasPrefix(m.Path, "Go") && path != m.Dir {
		return filepath.SkipDir
	}
	return nil
}

func isLicence(file string) bool {
	upper := strings.ToUpper(file)
	if strings.HasSuffix(upper, ".GO") {
		return false
	}
	for _, start := range []string{"LICENSE", "LICENCE", "COPYING", "NOTICE", "PATENTS", "OFL"} {
		if strings.HasPrefix(upper, start) {
			return true
		}
	}
	return strings.HasSuffix(upper, "-OFL.TXT") || strings.HasSuffix(upper, "-2.0.TXT")
}
