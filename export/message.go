package export

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"mime"
	"mime/quotedprintable"
	"net/mail"
	"strings"
	"time"
	"unicode"

	"pressworth/quote"
)

// Text is the quote in plain words, for a message.
func Text(job quote.Job, result quote.Result, date time.Time) string {
	var b strings.Builder
	p := paperOf(job)
	fmt.Fprintln(&b, joined(p.Shop.Name, strings.TrimSpace("quote "+p.Number), job.Title))
	fmt.Fprintln(&b)
	for _, l := range result.Garments {
		for _, r := range byPrice(l) {
			fmt.Fprintf(&b, "%d × %s (%s) at %s = %s\n", r.pieces, named(garmentOf(job, l.ID)), r.sizes, grouped(r.each), grouped(r.amount()))
		}
	}
	for _, r := range totalRows(job, result) {
		if r.name == printedGarments { // they have lines of their own above
			continue
		}
		fmt.Fprintf(&b, "%s: %s\n", r.name, strings.TrimSpace(r.amount+currencyOf(r, job)))
	}
	if p.ValidDays > 0 {
		fmt.Fprintf(&b, "Valid until %s.\n", day(date.AddDate(0, 0, p.ValidDays).Format(time.DateOnly)))
	}
	return b.String()
}

func currencyOf(r sumRow, job quote.Job) string {
	if r.big {
		return " " + job.Currency
	}
	return ""
}

// Email is an unsent message with the quote's PDF attached, as a file that the system's mail program opens
// (RFC 5322, RFC 2045).
func Email(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return Pictured(nil).Email(job, result, date)
}

// Email is an unsent message with the quote's PDF attached.
func (a Pictured) Email(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.EmailAs(Letter{}, job, result, date)
}

// EmailAs is Email in the shop's own words.
func (a Pictured) EmailAs(l Letter, job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	pdf, err := a.Quote(job, result, date)
	if err != nil {
		return nil, err
	}
	return compose(job, l.filled([]Offer{{Job: job, Result: result}}, date), Text(job, result, date), pdf, date), nil
}

// compose makes the message: the quote in plain words within a letter, and its PDF attached.
func compose(job quote.Job, l Letter, text string, pdf []byte, date time.Time) []byte {
	p := paperOf(job)
	// No part can hold the boundary: "=" never stands before "_" in quoted-printable (RFC 2045, 6.7), nor in base64.
	m := message{boundary: "=_pressworth-" + SafeName(p.Number, "quote")}
	m.header("From", address(p.Shop.Name, p.Shop.Email))
	m.header("To", address(p.Customer.Name, p.Customer.Email))
	m.header("Subject", mime.QEncoding.Encode("utf-8", l.Subject))
	m.header("Date", date.Format(time.RFC1123Z))
	m.header("X-Unsent", "1") // asks mail programs to open it for sending
	m.header("MIME-Version", "1.0")
	m.header("Content-Type", fmt.Sprintf("multipart/mixed; boundary=%q", m.boundary))
	m.text(strings.TrimLeft(l.Before+"\n\n", "\n") + text + strings.TrimRight("\n"+l.After, "\n") + "\n")
	m.attach("quote-"+SafeName(p.Number, "new")+".pdf", pdf)
	return m.bytes()
}

// oneLine keeps a header field from growing further ones: controls become blanks.
func oneLine(s string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, ""))), " ")
}

// brief is one line that a header can hold: a line of a message has at most 998 characters (RFC 5322, 2.1.1).
func brief(s string) string {
	r := []rune(oneLine(s))
	return string(r[:min(len(r), 150)])
}

// address is a mailbox, or nothing where there is no usable address.
func address(name, email string) string {
	box, err := mail.ParseAddress(oneLine(email))
	if err != nil {
		return ""
	}
	box.Name = brief(name)
	return box.String()
}

// message builds a multipart message.
type message struct {
	b        bytes.Buffer
	boundary string
	begun    bool
}

func (m *message) header(name, value string) {
	if value != "" {
		m.b.WriteString(name + ": " + value + "\r\n")
	}
}

func (m *message) part(headers ...[2]string) {
	if !m.begun {
		m.begun = true
		m.b.WriteString("\r\n")
	}
	m.b.WriteString("--" + m.boundary + "\r\n")
	for _, h := range headers {
		m.header(h[0], h[1])
	}
	m.b.WriteString("\r\n")
}

func (m *message) text(s string) {
	m.part([2]string{"Content-Type", "text/plain; charset=utf-8"}, [2]string{"Content-Transfer-Encoding", "quoted-printable"})
	w := quotedprintable.NewWriter(&m.b)
	_, _ = w.Write([]byte(strings.ReplaceAll(s, "\n", "\r\n"))) // a buffer takes everything
	_ = w.Close()
	m.b.WriteString("\r\n")
}

func (m *message) attach(name string, data []byte) {
	m.part([2]string{"Content-Type", fmt.Sprintf("application/pdf; name=%q", name)},
		[2]string{"Content-Disposition", fmt.Sprintf("attachment; filename=%q", name)}, [2]string{"Content-Transfer-Encoding", "base64"})
	text := base64.StdEncoding.EncodeToString(data)
	for len(text) > 76 {
		m.b.WriteString(text[:76] + "\r\n")
		text = text[76:]
	}
	m.b.WriteString(text + "\r\n")
}

func (m *message) bytes() []byte {
	m.b.WriteString("--" + m.boundary + "--\r\n")
	return m.b.Bytes()
}
