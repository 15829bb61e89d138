package export

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"pressworth/export/paper"
	"pressworth/quote"
)

// disc is a picture with a round shape on a transparent ground.
func disc(w, h int, c color.NRGBA) image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			dx, dy := float64(2*x-w)/float64(w), float64(2*y-h)/float64(h)
			if dx*dx+dy*dy < 1 {
				img.SetNRGBA(x, y, c)
			}
		}
	}
	return img
}

func TestPictured_realArtworkLiesInItsFrameAndBytesStayTheSame(t *testing.T) {
	job, result := regatta(t)
	art := Pictured{"back": disc(440, 340, color.NRGBA{232, 185, 58, 255}), "front": disc(440, 200, color.NRGBA{200, 32, 47, 255})}
	var r paper.Record
	draw(&r, job, "", func(d *doc) { d.artworks = art; layQuote(d, job, result, date) })
	if n := strings.Count(r.String(), "\nimage "); n != 3 { // the back on two colours, the cap's front
		t.Errorf("got %d pictures, want 3", n)
	}
	first, err := art.Quote(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	for range 5 {
		again, err := art.Quote(job, result, date)
		if err != nil || !bytes.Equal(first, again) {
			t.Fatalf("the second time differs: %v", err)
		}
	}
	conf := model.NewDefaultConfiguration()
	conf.ValidationMode = model.ValidationStrict
	if err := api.Validate(bytes.NewReader(first), conf); err != nil {
		t.Errorf("pdfcpu: %v", err)
	}
	empty := Pictured{"back": image.NewNRGBA(image.Rectangle{})}
	if _, err := empty.Quote(job, result, date); err != nil {
		t.Errorf("a picture without pixels: %v", err)
	}
}

func TestLetterhead_logoStandsBeforeTheNameOnEveryPaperOfTheCustomer(t *testing.T) {
	job, result := regatta(t)
	plain := Pictured{}
	with := Pictured{LogoKey: disc(600, 200, color.NRGBA{11, 110, 105, 255})}
	for name, make := range map[string]func(Pictured) ([]byte, error){
		"quote":        func(a Pictured) ([]byte, error) { return a.Quote(job, result, date) },
		"proof":        func(a Pictured) ([]byte, error) { return a.Proof(job, result, date) },
		"confirmation": func(a Pictured) ([]byte, error) { return a.Confirmation(job, result, date) },
		"invoice":      func(a Pictured) ([]byte, error) { return a.Invoice(job, result, date) },
		"packing list": func(a Pictured) ([]byte, error) { return a.PackingList(job, result, date) },
		"receipt":      func(a Pictured) ([]byte, error) { return a.Receipt(job, result, Paid{}, date) },
	} {
		bare, err := make(plain)
		headed, err2 := make(with)
		if err != nil || err2 != nil {
			t.Fatal(name, err, err2)
		}
		if b, h := bytes.Count(bare, []byte("/Subtype /Image")), bytes.Count(headed, []byte("/Subtype /Image")); h <= b {
			t.Errorf("%s: got %d pictures with a logo and %d without", name, h, b)
		}
	}
	var r paper.Record
	draw(&r, job, "", func(d *doc) { d.artworks = with; layQuote(d, job, result, date) })
	var bare paper.Record
	draw(&bare, job, "", func(d *doc) { layQuote(d, job, result, date) })
	mark := fmt.Sprintf("image %q", LogoKey)
	if !strings.Contains(r.String(), mark) || strings.Contains(bare.String(), mark) {
		t.Error("the logo is not drawn where there is one, or drawn where there is none")
	}
}

func TestCostSheet_oldPricesAreMarkedWithTheirAge(t *testing.T) {
	job, _ := regatta(t)
	page := func(limit int) string {
		p := *job.Paper
		p.StaleDays = limit
		own := job
		own.Paper = &p
		for i, g := range own.Garments {
			for k := range g.Sizes {
				for b := range g.Sizes[k].Each {
					own.Garments[i].Sizes[k].Each[b].Info = quote.Info{EntryID: "spring", PricedOn: date.AddDate(0, 0, -100).Format("2006-01-02")}
				}
			}
		}
		var r paper.Record
		draw(&r, own, "", func(d *doc) { layCostSheet(d, own, resultOf(t, own), date) })
		return r.String()
	}
	if got := page(90); !strings.Contains(got, "Prices older than 90 days") || !strings.Contains(got, "100 days old") {
		t.Error("prices of 100 days with a limit of 90 are not marked")
	}
	for _, limit := range []int{0, 100} {
		if got := page(limit); strings.Contains(got, "Prices older than") {
			t.Errorf("with a limit of %d prices of 100 days are marked", limit)
		}
	}
}
