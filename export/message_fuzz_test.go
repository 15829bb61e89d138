package export

import (
	"bytes"
	"io"
	"mime"
	"mime/multipart"
	"net/mail"
	"slices"
	"strings"
	"testing"
)

// mailHeaders are the header fields that a message of ours has, and no other.
var mailHeaders = []string{"Content-Type", "Date", "From", "Mime-Version", "Subject", "To", "X-Unsent"}

// Whatever was typed into the fields that go into an e-mail, it is one message with our header fields and one document
// attached, as Go's own reader of mail sees it.
func FuzzEmailFields(f *testing.F) {
	for _, s := range []string{"", "Åse", "a\r\nBcc: someone@example.com", "x\"; filename=\"y", "--=_pressworth-1\r\n\r\n", strings.Repeat("w", 1200), "\u2028\x00"} {
		f.Add(s, "someone@example.com", s, s)
		f.Add("Northgate", s, "Quote", "2026-0001")
	}
	job, result := regatta(f)
	pdf := []byte("%PDF-1.4 a document")
	f.Fuzz(func(t *testing.T, name, email, title, number string) {
		job, paper := job, *job.Paper
		job.Paper, job.Title = &paper, title
		paper.Customer.Name, paper.Customer.Contact, paper.Customer.Email, paper.Shop.Name, paper.Shop.Email, paper.Number = name, name, email, name, email, number
		letter := Letter{Subject: title + " {customer} {number}", Before: name + "\n{total} {valid until}", After: "{shop} " + email}
		read, err := mail.ReadMessage(bytes.NewReader(compose(job, letter.filled([]Offer{{Job: job, Result: result}}, date), Text(job, result, date), pdf, date)))
		if err != nil {
			t.Fatal(err)
		}
		for h := range read.Header {
			if !slices.Contains(mailHeaders, h) {
				t.Errorf("the header grew a field %q", h)
			}
		}
		_, values, err := mime.ParseMediaType(read.Header.Get("Content-Type"))
		if err != nil {
			t.Fatal(err)
		}
		checkParts(t, multipart.NewReader(read.Body, values["boundary"]))
	})
}

func checkParts(t *testing.T, in *multipart.Reader) {
	t.Helper()
	parts := 0
	for ; ; parts++ {
		p, err := in.NextRawPart()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if name := p.FileName(); strings.ContainsAny(name, "/\\") {
			t.Errorf("the document is called %q", name)
		}
	}
	if parts != 2 {
		t.Errorf("%d parts, want the words and the document", parts)
	}
}
