package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

type fuzzTarget struct{ pkg, name string }

// fuzz runs every fuzz target for so long, one after the other. What one finds lies in its package's testdata/fuzz.
func (t *task) fuzz(each string) error {
	targets, err := t.fuzzTargets()
	if err != nil {
		return err
	}
	var failed []error
	for _, f := range targets {
		cmd := t.command("go", "test", windowTags(), "-run=^$", "-fuzz=^"+f.name+"$", "-fuzztime="+each, "-parallel=2", f.pkg)
		failed = append(failed, t.quietly(f.pkg+" "+f.name, cmd))
	}
	return errors.Join(failed...)
}

var fuzzFunc = regexp.MustCompile(`(?m)^func (Fuzz\w+)\(`)

// fuzzTargets reads the test files: asking `go test -list` would compile every package to hear the same.
func (t *task) fuzzTargets() (targets []fuzzTarget, err error) {
	err = filepath.WalkDir(t.root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		source, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		dir, err := filepath.Rel(t.root, filepath.Dir(path))
		for _, m := range fuzzFunc.FindAllSubmatch(source, -1) {
			targets = append(targets, fuzzTarget{"./" + filepath.ToSlash(dir), string(m[1])})
		}
		return err
	})
	return targets, err
}
