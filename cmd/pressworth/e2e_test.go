//go:build linux && cgo

package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote/jobfile"
)

// teamQuote is what a person types for a known customer, from an empty counter: what each step is, and the keys.
var teamQuote = []struct{ what, text, then string }{
	{"the customer", "harb", "Return"},
	{"the garment", "ls nav", "Return"},
	{"the size run", "6/11/9/0/3", "Return"},
	{"no other garment", "", "Return"},
	{"the first placement", "fb", "Return"},
	{"its inks", "2", "Return"},
	{"the second placement", "sl", "Return"},
	{"its inks", "2", "Return"},
}

// The whole way: the built program, a job typed on the keyboard, the PDF, and the total that stands on it.
func TestWindow_aTypedJobComesOutAsItsPDF(t *testing.T) {
	d := openWindowed(t, "--demo")
	d.key("ctrl+n")
	for _, step := range teamQuote {
		if step.text != "" {
			d.text(step.text)
		}
		d.key(step.then)
	}
	d.still()
	d.key("ctrl+p")
	pdf := d.wait("pressworth: wrote")
	checkPDF(t, pdf)
	total := lastPriced(t, d.Said())
	text := tool(t, "pdftotext", "-layout", pdf, "-")
	if printed := totalOn(t, text); printed != total {
		t.Errorf("the PDF says %s, the window %s:\n%s", printed, total, text)
	}
	for _, want := range []string{"Harbour Rowing Club", "S 6", "M 11", "L 9", "2XL 3", "Full back", "Sleeve"} {
		if !strings.Contains(text, want) {
			t.Errorf("the PDF does not say %q:\n%s", want, text)
		}
	}
	d.key("ctrl+q")
	if err := d.Ended(patience); err != nil {
		t.Fatal(err)
	}
	if again := pricedFromShop(t, d.Home, pdf); again != plain(total) {
		t.Errorf("the shell prices the saved quote at %s, the window at %s", again, total)
	}
	onlyForItsOwner(t, filepath.Join(d.Home, "data", "pressworth"))
}

var (
	pricedLine = regexp.MustCompile(`(?m)^pressworth: priced (.*)$`)
	totalLine  = regexp.MustCompile(`(?m)\bTotal\s+(?:[A-Z]{3}\s+)?([0-9.,]+)\s*$`)
)

func lastPriced(t *testing.T, said string) string {
	t.Helper()
	all := pricedLine.FindAllStringSubmatch(said, -1)
	if len(all) < 2 {
		t.Fatalf("the window priced %d times while a job was typed; it said:\n%s", len(all), said)
	}
	return all[len(all)-1][1]
}

func totalOn(t *testing.T, text string) string {
	t.Helper()
	m := totalLine.FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("no total on the PDF:\n%s", text)
	}
	return m[1]
}

// plain is an amount as a job's result has it, without the commas for people.
func plain(amount string) string { return strings.ReplaceAll(amount, ",", "") }

// checkPDF holds a PDF to two judges of the format, and wants every font in the file itself.
func checkPDF(t *testing.T, file string) {
	t.Helper()
	tool(t, "qpdf", "--check", file)
	model.ConfigPath = "disable"
	config := model.NewDefaultConfiguration()
	config.ValidationMode = model.ValidationStrict
	if err := api.ValidateFile(file, config); err != nil {
		t.Errorf("%s: %v", file, err)
	}
	fonts := strings.Split(strings.TrimSpace(tool(t, "pdffonts", file)), "\n")[2:]
	if len(fonts) == 0 {
		t.Errorf("%s has no fonts", file)
	}
	for _, line := range fonts {
		fields := strings.Fields(line)
		if embedded := fields[len(fields)-5]; embedded != "yes" {
			t.Errorf("%s: a font that is not in the file: %s", file, line)
		}
	}
}

// pricedFromShop takes the quote that was printed out of the shop file and prices it from the shell.
func pricedFromShop(t *testing.T, home, pdf string) string {
	t.Helper()
	shop, err := store.Open(t.Context(), filepath.Join(home, "data", "pressworth", "demo.db"), store.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer shop.Close()
	number := strings.TrimSuffix(strings.TrimPrefix(filepath.Base(pdf), "quote-"), ".pdf")
	rows, err := shop.Quotes(t.Context(), store.QuoteFilter{Words: number})
	if err != nil || len(rows) != 1 {
		t.Fatalf("quote %s: %d found, %v", number, len(rows), err)
	}
	draft, err := shop.Draft(t.Context(), rows[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	book, err := shop.Book(t.Context(), draft, draft.QuotedOn)
	if err != nil {
		t.Fatal(err)
	}
	job, problems := catalog.Freeze(draft, book, draft.QuotedOn)
	if problems != nil {
		t.Fatal(problems)
	}
	file := filepath.Join(t.TempDir(), "job.json")
	if err := os.WriteFile(file, jobfile.Encode(job), 0o600); err != nil {
		t.Fatal(err)
	}
	result, err := jobfile.DecodeResult([]byte(tool(t, built(t), "price", file)))
	if err != nil {
		t.Fatal(err)
	}
	return result.Price.Total.String()
}

// onlyForItsOwner wants nothing at or below a folder to be open to other users.
func onlyForItsOwner(t *testing.T, folder string) {
	t.Helper()
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := d.Info()
		if err == nil && info.Mode().Perm()&0o077 != 0 {
			t.Errorf("%s has mode %v: others can read it", path, info.Mode().Perm())
		}
		return err
	})
	if err != nil {
		t.Error(err)
	}
}
