package export

import (
	"bytes"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// Whatever text is typed, the quote is a PDF that a strict reader takes.
func FuzzQuoteText(f *testing.F) {
	model.ConfigPath = "disable"
	config := model.NewDefaultConfiguration()
	config.ValidationMode = model.ValidationStrict
	for _, s := range []string{"", "Regatta tees", ")\\ (endobj\n%%EOF", "\u202e\u2066\x00\ufeff", "長い名前", "e\u0301\u0301", "\xff\xfe", "{nb}", "\\u0000"} {
		f.Add(s, s)
	}
	job, result := regatta(f)
	f.Fuzz(func(t *testing.T, title, notes string) {
		job, paper := job, *job.Paper
		job.Paper, job.Title, paper.Notes, paper.Customer.Name = &paper, title, notes, title
		data, err := Quote(job, result, date)
		if err != nil {
			t.Fatal(err)
		}
		if err := api.Validate(bytes.NewReader(data), config); err != nil {
			t.Errorf("%q, %q: %v", title, notes, err)
		}
	})
}
