package export

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"mime"
	"mime/multipart"
	"net/mail"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// The recorded drawing of each document is held to a golden text.
func TestDocuments_drawingsAreGolden(t *testing.T) {
	job, result := regatta(t)
	for name, lay := range map[string]func(*doc){
		"quote":      func(d *doc) { layQuote(d, job, result, date) },
		"cost-sheet": func(d *doc) { layCostSheet(d, job, result, date) },
		"ticket":     func(d *doc) { layTicket(d, job, result, date) },
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

// words are the texts of a recorded drawing.
func words(job quote.Job, lay func(*doc)) string {
	var r paper.Record
	draw(&r, job, footText(job, "Quote"), lay)
	var b strings.Builder
	for line := range strings.SplitSeq(r.String(), "\n") {
		if strings.HasPrefix(line, "text ") {
			b.WriteString(line[strings.IndexByte(line, '"'):] + "\n")
		}
	}
	return b.String()
}

func TestQuote_saysWhatTheCustomerPaysAndNothingInternal(t *testing.T) {
	job, result := regatta(t)
	text := words(job, func(d *doc) { layQuote(d, job, result, date) })
	for _, want := range []string{"1,261.38", "630.69", "27.25", "31.00", "12.50", "96.13", "2026-0147", "9 December 2026", "Ines Halvorsen", "DEMO"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the quote", want)
		}
	}
	banned := []string{"margin", "overhead", "markup", "supplier", "hour", "labour", "636.85", "42.2", "film by area", "plastisol"}
	for _, s := range job.Suppliers {
		banned = append(banned, s.Name, s.ID)
	}
	for _, c := range job.RateCards {
		banned = append(banned, c.Name)
	}
	for _, word := range banned {
		if strings.Contains(strings.ToLower(text), strings.ToLower(word)) {
			t.Errorf("the customer's quote says %q", word)
		}
	}
}

func TestTicket_saysWhatIsTooLargeForASizeAndTheQuoteDoesNot(t *testing.T) {
	job, _ := regatta(t)
	job.Garments[0].Sizes[0].Size = "YS"
	job.Garments[0].Info.Category = "youth long sleeve"
	number, err := money.ParseNumber("12")
	if err != nil {
		t.Fatal(err)
	}
	job.Placements[0].Width = number
	result := resultOf(t, job)
	const want = "Full back on size YS: 12 in wide is wider than the printable"
	if text := words(job, func(d *doc) { layTicket(d, job, result, date) }); !strings.Contains(text, want) {
		t.Errorf("the ticket does not say %q", want)
	}
	if text := words(job, func(d *doc) { layQuote(d, job, result, date) }); strings.Contains(text, "printable") {
		t.Error("the quote speaks of the printable area")
	}
	smaller, err := money.ParseNumber("8")
	if err != nil {
		t.Fatal(err)
	}
	job.Placements[0].Variants = []quote.Variant{{Sizes: []string{"YS"}, Width: smaller, Height: smaller}}
	if text := strings.Join(tooLarge(job, result), "; "); strings.Contains(text, "YS: 12 in") {
		t.Errorf("with a variant of 8 in for YS it still says %q", text)
	}
}

func TestQuote_longListsBreakOverPagesWithTheirHeads(t *testing.T) {
	job, _ := regatta(t)
	first := job.Garments[0]
	for i := range 60 {
		g := first
		g.ID, g.Color = "line-"+string(rune('a'+i%26))+string(rune('a'+i/26)), strings.Repeat("A very long name of a colour ", 3)
		job.Garments = append(job.Garments, g)
	}
	result := resultOf(t, job)
	var r paper.Record
	draw(&r, job, "", func(d *doc) { layQuote(d, job, result, date) })
	if heads := strings.Count(r.String(), `"amount in USD"`); r.Pages < 3 || heads < 3 {
		t.Errorf("got %d pages and %d heads of the table, want at least 3 of both", r.Pages, heads)
	}
}

// Names in any script come out, and currencies without cents have none.
func TestQuote_anyNameAndACurrencyWithoutCents(t *testing.T) {
	job, _ := regatta(t)
	job.Currency = "JPY"
	job.Paper.Customer = quote.Party{Name: "株式会社 海風 · نادي التجديف · Żółć Łódź", Contact: "שרה לוי"}
	for i := range job.Garments {
		for j := range job.Garments[i].Sizes {
			job.Garments[i].Sizes[j].Each = job.Garments[i].Sizes[j].Each[:1]
		}
	}
	job.Extras, job.Art, job.Pricing.Step = nil, quote.Art{}, job.Pricing.Discount
	result := resultOf(t, job)
	if strings.Contains(result.Price.Total.String(), ".") {
		t.Errorf("a total of %s in a currency without minor unit", result.Price.Total)
	}
	pdf, err := Quote(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	if err := api.Validate(bytes.NewReader(pdf), model.NewDefaultConfiguration()); err != nil {
		t.Error(err)
	}
}

// RFC 5322 and RFC 2045, parsed back by the standard library.
func TestEmail_isReadBack(t *testing.T) {
	job, result := regatta(t)
	job.Title = "Regatta\r\nBcc: everyone@example.com"
	job.Paper.Customer.Name = "Ines\nX-Evil: 1"
	data, err := Email(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	m, err := mail.ReadMessage(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range []string{"Bcc", "X-Evil"} {
		if m.Header.Get(h) != "" {
			t.Errorf("a line break in a name or title made a header %s", h)
		}
	}
	if to, err := m.Header.AddressList("To"); err != nil || len(to) != 1 || to[0].Address != "ines@rowing.example" {
		t.Errorf("To is %q: %v", m.Header.Get("To"), err)
	}
	_, params, err := mime.ParseMediaType(m.Header.Get("Content-Type"))
	if err != nil {
		t.Fatal(err)
	}
	parts := multipart.NewReader(m.Body, params["boundary"])
	text, err := parts.NextPart()
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(text)
	if err != nil || !strings.Contains(string(body), "1,261.38") {
		t.Errorf("the text does not say the total: %v\n%s", err, body)
	}
	attached, err := parts.NextRawPart()
	if err != nil {
		t.Fatal(err)
	}
	if name := attached.FileName(); name != "quote-2026-0147.pdf" {
		t.Errorf("the attachment is called %q", name)
	}
}

// RFC 5322, 2.1.1: a line has at most 998 characters.
func TestEmail_linesKeepTheirLength(t *testing.T) {
	job, result := regatta(t)
	job.Title = strings.Repeat("a very long title ", 200)
	job.Paper.Customer.Name = strings.Repeat("Ærøskøbing ", 300)
	job.Paper.Shop.Name = strings.Repeat("--=_pressworth-2026-0147\n", 3)
	data, err := Email(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	for line := range bytes.SplitSeq(data, []byte("\r\n")) {
		if len(line) > 998 || bytes.ContainsAny(line, "\r\n") {
			t.Errorf("a line of %d characters: %.60q", len(line), line)
		}
	}
	m, err := mail.ReadMessage(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	_, params, err := mime.ParseMediaType(m.Header.Get("Content-Type"))
	if err != nil {
		t.Fatal(err)
	}
	parts, n := multipart.NewReader(m.Body, params["boundary"]), 0
	for ; ; n++ {
		if _, err := parts.NextRawPart(); err != nil {
			break
		}
	}
	if n != 2 {
		t.Errorf("got %d parts, want the text and the PDF", n)
	}
}

// RFC 4180, and no cell that a spreadsheet would run.
func TestTables_areReadBackAndHarmless(t *testing.T) {
	job, result := regatta(t)
	job.Garments[0].Name = `=HYPERLINK("x"), "quoted"`
	data, err := CostCSV(job, result)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if rows[1][1] != `'=HYPERLINK("x"), "quoted", navy` {
		t.Errorf("got the cell %q", rows[1][1])
	}
	for _, c := range []struct{ cell, want string }{
		{"=1+1", "'=1+1"}, {"+49 30", "'+49 30"}, {"-12.50", "-12.50"}, {"@x", "'@x"}, {"\tx", "'\tx"}, {"plain", "plain"}, {"-x", "'-x"}, {"", ""},
	} {
		if got := harmless(c.cell); got != c.want {
			t.Errorf("harmless(%q) = %q, want %q", c.cell, got, c.want)
		}
	}
}

func TestLayouts_svgIsTrueToSize(t *testing.T) {
	job, result := regatta(t)
	ls := layouts(job, result)
	if len(ls) == 0 {
		t.Fatal("the regatta has a plan on sheets, but no layout")
	}
	var svg struct {
		Width  string `xml:"width,attr"`
		Height string `xml:"height,attr"`
	}
	if err := xml.Unmarshal(ls[0].svg(), &svg); err != nil {
		t.Fatal(err)
	}
	if svg.Width != "14.5in" || svg.Height != "11in" { // 13 × 9.5 and a border of 0.75 on every side
		t.Errorf("got %s × %s", svg.Width, svg.Height)
	}
}

// ISO 32000-1, annex C.2: a page is at most 14 400 units wide and high.
func TestLayouts_aVeryLongRollStaysWithinWhatAPageMayBe(t *testing.T) {
	job, _ := regatta(t)
	result := quote.Result{Plans: []quote.Plan{{Card: "roll", Runs: []quote.Run{{
		Length: "300", Sheets: 1, Width: "22", Height: "300",
		Pieces: []quote.PlacedPiece{{Placement: "back", X: "0", Y: "0", W: "11", H: "8.5"}},
	}}}}}
	data, err := Layouts(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	sizes, err := api.PageDims(bytes.NewReader(data), nil)
	if err != nil || len(sizes) != 1 || sizes[0].Height > 14400 || sizes[0].Height < 14000 {
		t.Errorf("got pages of %v, %v; want one as long as a page may be", sizes, err)
	}
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
