package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
)

// Proof is what the customer approves before anything is bought: drawing, spelling, inks, inches, sizes and counts, and
// a place to sign.
func Proof(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return Pictured(nil).Proof(job, result, date)
}

func layProof(d *doc, job quote.Job, result quote.Result, date time.Time) {
	d.letterhead(job, "Proof", [2]string{"number", paperOf(job).Number}, [2]string{"date", day(date.Format(time.DateOnly))},
		[2]string{"needed by", day(paperOf(job).NeededBy)})
	d.addressee(job)
	d.pictures(d.views(job, result, true), 122)
	if vs := extremes(job); len(vs) > 0 {
		d.heading("Longest and shortest, on the smallest and the largest size")
		d.pictures(vs, 170)
	}
	d.printed(job, result)
	d.spellings(job)
	d.pieces(job, result)
	d.signature([]string{
		"Please check spelling, inks, sizes and places, and the counts by size: what is shown here is what is pressed.",
		"Colours on paper and screen are a guide, not a match. Changes after approval may cost time and material.",
		"By signing you confirm that you own the artwork or have its owner's permission to print it.",
	})
}

// printed lists what is printed where, in which inks and how large.
func (d *doc) printed(job quote.Job, result quote.Result) {
	d.heading("What is printed")
	t := d.table(columnSpec{title: "placement", share: 3}, columnSpec{title: "size", share: 3}, columnSpec{title: "inks", share: 4}, columnSpec{title: "on", share: 5})
	for _, m := range result.Methods {
		p := placementOf(job, m.Placement)
		size := inches(job, p.Width, p.Height)
		for _, v := range p.Variants {
			size += fmt.Sprintf("; %s on %s", inches(job, v.Width, v.Height), strings.Join(v.Sizes, ", "))
		}
		t.row([]string{p.Name, size, inkWords(p), onWords(job, result, p)}, []paper.Style{strong, body, body, body})
	}
	t.end()
}

func onWords(job quote.Job, result quote.Result, p quote.Placement) string {
	var names []string
	for _, l := range result.Garments {
		if l.Pieces > 0 && (p.On == nil || slices.Contains(p.On, l.ID)) {
			names = append(names, lower(named(garmentOf(job, l.ID))))
		}
	}
	return strings.Join(names, "; ")
}

// spellings lists every name and number beside its size.
func (d *doc) spellings(job quote.Job) {
	for _, p := range job.Placements {
		if len(p.Texts) == 0 {
			continue
		}
		d.heading(p.Name + ", every spelling")
		t := d.table(columnSpec{title: "text", share: 4}, columnSpec{title: "size", width: 60}, columnSpec{title: "garment", share: 4}, columnSpec{title: "right?", width: 40})
		for _, x := range p.Texts {
			top := t.row([]string{x.Text, x.Size, named(garmentOf(job, x.Garment)), ""}, []paper.Style{strong, body, body, body})
			t.tick(3, top)
		}
		t.end()
	}
}

// pieces lists the counts by size, without prices.
func (d *doc) pieces(job quote.Job, result quote.Result) {
	d.heading("Garments and sizes")
	t := d.table(columnSpec{title: "garment", share: 4}, columnSpec{title: "sizes", share: 6}, columnSpec{title: "pieces", width: 50, right: true})
	for _, l := range result.Garments {
		if l.Pieces == 0 {
			continue
		}
		var sizes []string
		for _, s := range l.Sizes {
			if s.Qty > 0 {
				sizes = append(sizes, fmt.Sprintf("%s %d", sizeWord(s.Size), s.Qty))
			}
		}
		t.row([]string{named(garmentOf(job, l.ID)), strings.Join(sizes, " · "), fmt.Sprint(l.Pieces)}, []paper.Style{strong, body, body})
	}
	t.row([]string{"Together", "", fmt.Sprint(result.Pieces)}, plain(3, strong))
	t.end()
}

// signature leaves lines to sign on.
func (d *doc) signature(texts []string) {
	d.need(104)
	d.gap(12)
	for _, t := range texts {
		d.gap(2)
		d.paragraph(d.left, d.right-d.left, t, small)
	}
	d.need(54)
	d.gap(36)
	third := (d.right - d.left) / 3
	for i, what := range []string{"name", "date", "signature"} {
		x := d.left + third*float64(i)
		paper.Rule(d, x, d.y, x+third-18, d.y, paper.Look{Stroke: ink, Width: 0.7})
		d.Text(x, d.y+11, what, caption)
	}
	d.gap(14)
}

// PackingList goes into the box: what is in it, to be ticked off, and no prices.
func (a Pictured) PackingList(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return a.render(job, "Packing list "+paperOf(job).Number, footText(job, "Packing list"), date, func(d *doc) {
		d.letterhead(job, "Packing list", [2]string{"number", paperOf(job).Number}, [2]string{"date", day(date.Format(time.DateOnly))})
		d.addressee(job)
		t := d.table(columnSpec{title: "garment", share: 5}, columnSpec{title: "size", width: 60}, columnSpec{title: "pieces", width: 60, right: true}, columnSpec{title: "packed", width: 50})
		for _, l := range result.Garments {
			for _, s := range l.Sizes {
				if s.Qty == 0 {
					continue
				}
				top := t.row([]string{named(garmentOf(job, l.ID)), sizeWord(s.Size), fmt.Sprint(s.Qty), ""}, []paper.Style{body, strong, body, body})
				t.tick(3, top)
			}
		}
		t.row([]string{"Together", "", fmt.Sprint(result.Pieces), ""}, plain(4, strong))
		t.end()
	})
}
