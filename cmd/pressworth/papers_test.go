package main

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/export"
	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/ui"
)

func TestPapers_everyKindIsWrittenForItsOwnerAlone(t *testing.T) {
	data, err := os.ReadFile("testdata/tees.json")
	if err != nil {
		t.Fatal(err)
	}
	job, result, err := jobfile.Price(data)
	if err != nil {
		t.Fatal(err)
	}
	text := quote.Text{Garment: job.Garments[0].ID, Size: job.Garments[0].Sizes[0].Size, Text: "Åse"}
	job.Placements = append(job.Placements, quote.Placement{ID: "name", Name: "Name", Personal: true, Texts: []quote.Text{text}})
	p := papers{folder: filepath.Join(t.TempDir(), "documents")}
	for kind, k := range paperKinds {
		path, err := p.Write(kind, job, result)
		if err != nil {
			t.Errorf("%s: %v", kind, err)
			continue
		}
		content, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if isPDF := bytes.HasPrefix(content, []byte("%PDF-")); isPDF != (k.ending == ".pdf") {
			t.Errorf("%s was written to %s and begins with %q", kind, path, content[:min(len(content), 8)])
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s has mode %v, %v, want 0600", path, info.Mode().Perm(), err)
		}
	}
	job.Placements = nil
	if _, err := p.Write(ui.BagPaper, job, result); err == nil {
		t.Error("a bag list of nobody was written")
	}
	if _, err := p.Write(ui.Paper("Poem"), job, result); err == nil {
		t.Error("a document that there is not was written")
	}
}

// Artwork that can be read is drawn; what cannot be read does not stop a document.
func TestPapers_artworkIsReadWhereItCanBe(t *testing.T) {
	folder := t.TempDir()
	good, bad := filepath.Join(folder, "blade.png"), filepath.Join(folder, "notes.txt")
	img := image.NewNRGBA(image.Rect(0, 0, 40, 20))
	for i := range img.Pix {
		img.Pix[i] = byte(i * 7)
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{good: b.Bytes(), bad: []byte("no picture")} {
		if err := os.WriteFile(name, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job := quote.Job{Placements: []quote.Placement{
		{ID: "back", Info: quote.Info{Artwork: good}},
		{ID: "front", Info: quote.Info{Artwork: bad}},
		{ID: "sleeve", Info: quote.Info{Artwork: filepath.Join(folder, "gone.png")}},
		{ID: "nape"},
	}}
	got := pictured(job)
	if len(got) != 1 || got["back"] == nil {
		t.Errorf("got pictures of %d placements, want that of the back alone", len(got))
	}
}

// What the shop may write in braces is all filled in, and a new shop writes as one does that never set anything.
func TestLetter_everyWordThatMayBeUsedIsFilled(t *testing.T) {
	if got := export.Letter(catalog.DefaultLetter()); got != export.UsualLetter {
		t.Errorf("a new shop writes %+v, without a shop it is %+v", got, export.UsualLetter)
	}
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, "2026-05-04")
	if err != nil {
		t.Fatal(err)
	}
	b := catalog.Book{Shop: d.Shop, Suppliers: d.Suppliers, Cards: d.Cards, Styles: map[int64]catalog.Style{}}
	for _, s := range d.Styles {
		b.Styles[s.ID] = s
	}
	d.Drafts[0].Number = "2026-0001"
	job, problems := catalog.Freeze(d.Drafts[0], b, "2026-05-04")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	result, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range catalog.LetterWords {
		l := export.Letter{Subject: "nothing", Before: "(" + "{" + w + "}" + ")"}
		data, err := export.Pictured{}.EmailAs(l, job, result, time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC))
		if err != nil {
			t.Fatal(err)
		}
		if text := string(data); strings.Contains(text, "{"+w+"}") || strings.Contains(text, "()") {
			t.Errorf("{%s} is not filled", w)
		}
	}
}
