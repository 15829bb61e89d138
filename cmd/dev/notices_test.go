package main

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestNotices_nameWhatIsLinkedIn(t *testing.T) {
	task, err := newTask(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	modules, err := task.linkedModules()
	if err != nil {
		t.Fatal(err)
	}
	content, err := os.ReadFile(filepath.Join(task.root, "assets", "NOTICES"))
	if err != nil {
		t.Fatal(err)
	}
	var linked []string
	for _, m := range modules {
		linked = append(linked, m.title())
	}
	listed := listedModules(string(content))
	for _, m := range linked {
		if !slices.Contains(listed, m) {
			t.Errorf("%s is linked in and not in assets/NOTICES: run `go run ./cmd/dev notices`", m)
		}
	}
	for _, m := range listed {
		if !slices.Contains(linked, m) {
			t.Errorf("%s is in assets/NOTICES and not linked in: run `go run ./cmd/dev notices`", m)
		}
	}
	if len(linked) < 10 {
		t.Errorf("found %d modules: the list does not see the program", len(linked))
	}
}

// listedModules reads the list at the top of the notices, without Go itself and the fonts.
func listedModules(notices string) (modules []string) {
	for line := range strings.Lines(notices) {
		if strings.HasPrefix(line, "====") {
			break
		}
		path, version, ok := strings.Cut(strings.TrimSpace(line), " ")
		if ok && strings.HasPrefix(line, "  ") && strings.HasPrefix(version, "v") {
			modules = append(modules, path+" "+version)
		}
	}
	return modules
}
