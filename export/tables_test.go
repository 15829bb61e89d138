package export

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"

	"pressworth/quote"
)

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
