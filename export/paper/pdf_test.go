package paper

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pressworth/export/letters"
)

// Names that are drawn as outlines are still words to programs that copy and search.
func TestPDF_outlinedNamesCanBeFound(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed (`go run ./cmd/dev test` installs it)")
	}
	names := []string{"港湾クラブ", "श्री नौका", "항구 조정 클럽", "Łódź", "ნიჩბოსნობა", "สโมสรเรือ"}
	p := NewPDF("names", "", time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	p.Page(612, 792)
	for i, n := range names {
		p.Text(72, 72+30*float64(i), n, Style{Size: 14, Weight: letters.Weight(i % 3), Color: "#1f2428"})
	}
	data, err := p.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "names.pdf")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.CommandContext(t.Context(), "pdftotext", file, "-").CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	for _, n := range names {
		if !strings.Contains(string(out), n) {
			t.Errorf("%q is not found in %q", n, out)
		}
	}
}
