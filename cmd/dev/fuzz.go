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
		args := append([]string{"test", windowTags(), "-run=^$", "-fuzz=^" + f.name + "$", "-parallel=2"}, f.span(each)...)
		cmd := t.command("go", append(args, f.pkg)...)
		failed = append(failed, t.quietly(f.pkg+" "+f.name, cmd))
	}
	return errors.Join(failed...)
}

// wholeDocuments are the targets that make a document of every input, a few dozen a second.
var wholeDocuments = map[string]bool{"FuzzQuoteText": true}

// span is how long a target runs where others run so long. Fewer inputs do for one that makes whole documents, and less
// trying to make them shorter.
func (f fuzzTarget) span(each string) []string {
	if strings.HasSuffix(each, "x") && wholeDocuments[f.name] {
		return []string{"-fuzztime=100x", "-fuzzminimizetime=10x"}
	}
	return []string{"-fuzztime=" + each}
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
