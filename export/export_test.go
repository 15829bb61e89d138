package export

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"pressworth/export/paper"
	"pressworth/quote/jobfile"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// The recorded drawing of each document is held to a golden text.
func TestDocuments_drawingsAreGolden(t *testing.T) {
	job, result := regatta(t)
	for name, lay := range map[string]func(*doc){
		"quote":      func(d *doc) { layQuote(d, job, result, date) },
		"cost-sheet": func(d *doc) { layCostSheet(d, job, result, date) },
		"ticket":     func(d *doc) { layTicket(d, job, result, Approval{}, date) },
		"purchases":  func(d *doc) { layPurchases(d, job, result, date) },
	} {
		t.Run(name, func(t *testing.T) {
			var r paper.Record
			draw(&r, job, footText(job, name), lay)
			file := filepath.Join("..", "testdata", "documents", name+".txt")
			if *update {
				if err := errors.Join(os.MkdirAll(filepath.Dir(file), 0o755), os.WriteFile(file, []byte(r.String()), 0o644)); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if got := r.String(); got != string(want) {
				t.Errorf("%s differs from %s at line %d (go test ./export -update writes it anew)", name, file, firstDifference(got, string(want)))
			}
		})
	}
}

func firstDifference(a, b string) int {
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range as {
		if i >= len(bs) || as[i] != bs[i] {
			return i + 1
		}
	}
	return len(as)
}

func TestDocuments_sameInputSameBytes(t *testing.T) {
	job, result := regatta(t)
	first, err := Documents(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	for range 3 {
		again, err := Documents(job, result, date)
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range first {
			if f.Name != again[i].Name || !bytes.Equal(f.Data, again[i].Data) {
				t.Errorf("%s differs from one time to the next", f.Name)
			}
		}
	}
}

// Every PDF is read by a validator in strict mode, by qpdf, and its fonts are all inside.
func TestDocuments_pdfsAreSound(t *testing.T) {
	model.ConfigPath = "disable"
	job, result := regatta(t)
	files, err := Documents(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if filepath.Ext(f.Name) != ".pdf" {
			continue
		}
		t.Run(f.Name, func(t *testing.T) {
			conf := model.NewDefaultConfiguration()
			conf.ValidationMode = model.ValidationStrict
			if err := api.Validate(bytes.NewReader(f.Data), conf); err != nil {
				t.Errorf("pdfcpu: %v", err)
			}
			path := filepath.Join(t.TempDir(), f.Name)
			if err := os.WriteFile(path, f.Data, 0o600); err != nil {
				t.Fatal(err)
			}
			tool(t, "qpdf", "--check", path)
			for _, line := range strings.Split(strings.TrimSpace(tool(t, "pdffonts", path)), "\n")[2:] {
				if !strings.Contains(line, " yes ") {
					t.Errorf("a font is not embedded: %s", line)
				}
			}
		})
	}
}

// tool runs a program on a file; where it is not installed the test says so and is skipped.
func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed (`go run ./cmd/dev test` installs it)", name)
	}
	out, err := exec.CommandContext(t.Context(), name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

func TestSafeName_neverLeavesItsFolder(t *testing.T) {
	for in, want := range map[string]string{"2026-0147": "2026-0147", "../../etc/passwd": "etc-passwd", "": "x", "a b": "a-b", "名": "x", "..": "x"} {
		if got := SafeName(in, "x"); got != want {
			t.Errorf("SafeName(%q) = %q, want %q", in, got, want)
		}
	}
}

// Documents are made off the window's goroutine; two at a time must not disturb one another.
func TestDocuments_severalAtATime(t *testing.T) {
	job, result := regatta(t)
	job.Paper.Customer.Name = "港湾クラブ نادي"
	want, err := Quote(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			if got, err := Quote(job, result, date); err != nil || !bytes.Equal(got, want) {
				t.Errorf("differs from the one made alone: %v", err)
			}
		})
	}
	all.Wait()
}

func TestDocuments_ofEveryJobThereIs(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.job.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("got the jobs %v, %v, want several", files, err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		job, result, err := jobfile.Price(data)
		if err != nil {
			t.Fatal(err)
		}
		papers, err := Documents(job, result, date)
		if err != nil {
			t.Errorf("%s: %v", file, err)
		}
		seen := map[string]bool{}
		for _, p := range papers {
			if seen[p.Name] || len(p.Data) == 0 || filepath.Base(p.Name) != p.Name {
				t.Errorf("%s: document %q comes twice, is empty or leads elsewhere", file, p.Name)
			}
			seen[p.Name] = true
		}
	}
}
