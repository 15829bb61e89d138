package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"pressworth/quote/jobfile"
	"pressworth/ui"
)

func TestPapers_everyKindIsWrittenForItsOwnerAlone(t *testing.T) {
	data, err := os.ReadFile("testdata/tees.json")
	if err != nil {
		t.Fatal(err)
	}
	job, result, err := jobfile.Price(data)
	if err != nil {
		t.Fatal(err)
	}
	p := papers{folder: filepath.Join(t.TempDir(), "documents")}
	for kind, k := range paperKinds {
		path, err := p.Write(kind, job, result)
		if err != nil {
			t.Errorf("%s: %v", kind, err)
			continue
		}
		content, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if isPDF := bytes.HasPrefix(content, []byte("%PDF-")); isPDF != (k.ending == ".pdf") {
			t.Errorf("%s was written to %s and begins with %q", kind, path, content[:min(len(content), 8)])
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s has mode %v, %v, want 0600", path, info.Mode().Perm(), err)
		}
	}
	if _, err := p.Write(ui.Paper("Poem"), job, result); err == nil {
		t.Error("a document that there is not was written")
	}
}
