package export

import (
	"bytes"
	"io"
	"mime"
	"mime/multipart"
	"net/mail"
	"strings"
	"testing"

	"pressworth/quote"
)

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

// What a shop writes is filled in, without gaps where a quote says nothing.
func TestEmail_isWrittenInTheShopsWords(t *testing.T) {
	job, result := regatta(t)
	l := Letter{
		Subject: "{shop}: your quote {number} over {total}",
		Before:  "Dear {customer},\nit holds until {valid until}.\nIt comes to {total}.",
		After:   "Yours, {shop}",
	}
	got := l.filled([]Offer{{Job: job, Result: result}}, date)
	if want := job.Paper.Shop.Name + ": your quote 2026-0147 over 1,261.38 USD"; got.Subject != want {
		t.Errorf("subject %q, want %q", got.Subject, want)
	}
	valid := day(date.AddDate(0, 0, job.Paper.ValidDays).Format("2006-01-02"))
	if want := "Dear " + job.Paper.Customer.Contact + ",\nit holds until " + valid + ".\nIt comes to 1,261.38 USD."; got.Before != want {
		t.Errorf("above: %q, want %q", got.Before, want)
	}
	paper := *job.Paper
	paper.ValidDays, paper.Customer.Name, paper.Customer.Contact = 0, "", ""
	job.Paper, job.Title = &paper, ""
	if got = l.filled([]Offer{{Job: job, Result: result}}, date); got.Before != "Dear,\nIt comes to 1,261.38 USD." {
		t.Errorf("above, of a quote without a customer and an end: %q", got.Before)
	}
	if got = UsualLetter.filled([]Offer{{Job: job, Result: result}}, date); got.Subject != "Quote 2026-0147" {
		t.Errorf("subject of a quote without a title: %q", got.Subject)
	}
	two := []Offer{{Name: "one", Job: job, Result: result}, {Name: "two", Job: job, Result: result}}
	two[1].Result.Price.Total = quote.Sum(result.Price.Total, result.Price.Total)
	if got = (Letter{Subject: "{total}"}).filled(two, date); got.Subject != "1,261.38 USD or 2,522.76 USD" {
		t.Errorf("the totals of two options: %q", got.Subject)
	}
}
