package export

import (
	"bytes"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"pgregory.net/rapid"
)

// Whatever was typed, the quote is made, and it is a PDF that a strict reader takes.
func TestDocuments_whateverWasTyped(t *testing.T) {
	model.ConfigPath = "disable"
	conf := model.NewDefaultConfiguration()
	conf.ValidationMode = model.ValidationStrict
	job, result := regatta(t)
	text := rapid.OneOf(rapid.String(), rapid.Just(strings.Repeat("長い名前", 60)), rapid.Just(")\\ (endobj\n%%EOF"),
		rapid.Just("\u202e\u2066\x00\ufeff"), rapid.Just("e\u0301\u0301\u0301 \U0001F6A3\u200d♀️"), rapid.Just(strings.Repeat("W", 900)))
	for seed := range 40 {
		paper := *job.Paper
		job.Paper = &paper
		at := func(n int) string { return text.Example(seed*10 + n) }
		job.Title, paper.Customer.Name, paper.Shop.Name = at(0), at(1), at(2)
		paper.Shop.Address, paper.Notes, paper.Number = at(3), at(4), at(5)
		data, err := Quote(job, result, date)
		if err != nil {
			t.Fatalf("%+v: %v", paper, err)
		}
		if err := api.Validate(bytes.NewReader(data), conf); err != nil {
			t.Errorf("%+v: %v", paper, err)
		}
	}
	if _, err := Documents(job, result, date); err != nil {
		t.Error(err)
	}
}
