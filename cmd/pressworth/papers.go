package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"os/exec"
	"path/filepath"
	"runtime"
	"time"

	"pressworth/catalog"
	"pressworth/export"
	"pressworth/quote"
	"pressworth/ui"
	"pressworth/ui/present/artwork"
)

// papers writes the window's documents into a folder beside the shop file, dated today.
type papers struct {
	folder string
	logo   func(context.Context) (catalog.Logo, error)   // the picture of the letterhead; nil: none
	letter func(context.Context) (catalog.Letter, error) // how an e-mail is written; nil: as usual

	approved func(context.Context, string) (catalog.Step, error) // how the artwork of a quote was approved, by its number; nil: unknown
}

// paperKinds are the documents that the window can ask for.
var paperKinds = map[ui.Paper]struct {
	name, ending string
	make         maker
}{
	ui.QuotePaper:   {"quote", ".pdf", ofJob(export.Pictured.Quote)},
	ui.CostPaper:    {"cost-sheet", ".pdf", withoutPictures(export.CostSheet)},
	ui.EmailPaper:   {"e-mail", ".eml", papers.email},
	ui.TicketPaper:  {"press-ticket", ".pdf", papers.ticket},
	ui.ProofPaper:   {"proof", ".pdf", ofJob(export.Pictured.Proof)},
	ui.BuyPaper:     {"purchases", ".pdf", withoutPictures(export.Purchases)},
	ui.LayoutPaper:  {"layouts", ".pdf", withoutPictures(export.Layouts)},
	ui.ConfirmPaper: {"order-confirmation", ".pdf", ofJob(export.Pictured.Confirmation)},
	ui.InvoicePaper: {"invoice", ".pdf", ofJob(export.Pictured.Invoice)},
	ui.PackingPaper: {"packing-list", ".pdf", ofJob(export.Pictured.PackingList)},
	ui.BagPaper:     {"bag-list", ".pdf", withoutPictures(export.BagList)},
	ui.LabelPaper:   {"labels", ".pdf", withoutPictures(export.Labels)},
}

// maker makes a document of a job, with what the shop file knows beside it.
type maker func(papers, export.Pictured, quote.Job, quote.Result, time.Time) ([]byte, error)

// ofJob makes a document of the job alone.
func ofJob(f func(export.Pictured, quote.Job, quote.Result, time.Time) ([]byte, error)) maker {
	return func(_ papers, pictures export.Pictured, job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
		return f(pictures, job, result, date)
	}
}

// withoutPictures makes a document that shows no pictures.
func withoutPictures(f func(quote.Job, quote.Result, time.Time) ([]byte, error)) maker {
	return func(_ papers, _ export.Pictured, job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
		return f(job, result, date)
	}
}

// pictured reads the pictures that a job's artwork names. One that cannot be read is drawn as an emblem: the form has said so already.
func pictured(job quote.Job) export.Pictured {
	pictures := export.Pictured{}
	for _, p := range job.Placements {
		if p.Info.Artwork == "" {
			continue
		}
		data, err := readArtwork(p.Info.Artwork)
		if err != nil {
			continue
		}
		if look, err := artwork.Read(data); err == nil {
			pictures[p.ID] = look.Image
		}
	}
	return pictures
}

// head adds the picture of the letterhead, where there is one.
func (p papers) head(pictures export.Pictured) error {
	if p.logo == nil {
		return nil
	}
	l, err := p.logo(context.Background())
	if err != nil || len(l.Data) == 0 {
		return err
	}
	img, _, err := image.Decode(bytes.NewReader(l.Data)) // the catalog has registered what a logo may be
	if err != nil {
		return fmt.Errorf("logo %s: %w", l.Name, err)
	}
	pictures[export.LogoKey] = img
	return nil
}

// Write writes a document and returns its path.
func (p papers) Write(kind ui.Paper, job quote.Job, result quote.Result) (string, error) {
	k, ok := paperKinds[kind]
	if !ok {
		return "", fmt.Errorf("there is no %s yet", kind)
	}
	today, err := dateOf("")
	if err != nil {
		return "", err
	}
	pictures := pictured(job)
	if err := p.head(pictures); err != nil {
		return "", err
	}
	data, err := k.make(p, pictures, job, result, today)
	if err != nil {
		return "", err
	}
	number := ""
	if job.Paper != nil {
		number = job.Paper.Number
	}
	return writeFile(p.folder, export.File{Name: k.name + "-" + export.SafeName(number, "job") + k.ending, Data: data})
}

// email is a quote as an e-mail in the shop's words.
func (p papers) email(pictures export.Pictured, job quote.Job, result quote.Result, today time.Time) ([]byte, error) {
	l, err := p.words()
	if err != nil {
		return nil, err
	}
	return pictures.EmailAs(l, job, result, today)
}

// ticket is the press ticket with who approved the artwork, as far as the book knows.
func (p papers) ticket(pictures export.Pictured, job quote.Job, result quote.Result, today time.Time) ([]byte, error) {
	approval := export.Approval{}
	if p.approved != nil && job.Paper != nil {
		s, err := p.approved(context.Background(), job.Paper.Number)
		if err != nil {
			return nil, err
		}
		approval = approvalOf([]catalog.Step{s})
	}
	return pictures.ApprovedTicket(job, result, approval, today)
}

// words are those that the shop writes an e-mail with.
func (p papers) words() (export.Letter, error) {
	if p.letter == nil {
		return export.Letter{}, nil
	}
	l, err := p.letter(context.Background())
	return export.Letter(l), err
}

// Open hands a file to the system's viewer. The path goes as one argument to a program; no shell reads it.
func (p papers) Open(path string) error {
	opener := map[string][]string{"windows": {"rundll32", "url.dll,FileProtocolHandler"}, "darwin": {"open"}}[runtime.GOOS]
	if opener == nil {
		opener = []string{"xdg-open"}
	}
	cmd := exec.Command(opener[0], append(opener[1:], filepath.Clean(path))...)
	if err := cmd.Start(); err != nil {
		return err
	}
	go func() { _ = cmd.Wait() }() // how the viewer ends is its own affair
	return nil
}

// Text is the quote as plain text.
func (p papers) Text(job quote.Job, result quote.Result) string {
	today, err := dateOf("")
	if err != nil {
		return ""
	}
	return export.Text(job, result, today)
}
