package export

import (
	"fmt"
	"strings"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

func (d *doc) methods(job quote.Job, r quote.Result) {
	if len(r.Methods) == 0 {
		return
	}
	d.heading("Methods")
	t := d.table(columnSpec{title: "placement", share: 3}, columnSpec{title: "size and inks", share: 5}, columnSpec{title: "rate card", share: 3},
		columnSpec{title: "next best", share: 4}, columnSpec{title: "transfers", width: 40, right: true}, columnSpec{title: "amount", width: 48, right: true})
	for _, m := range r.Methods {
		p := placementOf(job, m.Placement)
		next := "none"
		if m.Difference != nil {
			next = fmt.Sprintf("%s, job costs %s more", cardOf(job, m.RunnerUp).Name, grouped(m.Difference))
		}
		t.row([]string{p.Name, inches(job, p.Width, p.Height) + ", " + inkWords(p), cardOf(job, m.Card).Name, next, fmt.Sprint(m.Needed), grouped(m.Transfers)},
			plain(6, body))
	}
	t.end()
}

// plans draws each run to scale beside its figures.
func (d *doc) plans(job quote.Job, r quote.Result) {
	if len(r.Plans) == 0 {
		return
	}
	d.heading("Sheets and lengths")
	for _, p := range r.Plans {
		for _, run := range p.Runs {
			d.need(110)
			h := d.thumbnail(job, run, 90, 120)
			x, y := d.left+140, d.y+10
			d.Text(x, y, runWords(job, run), strong)
			for i, t := range []string{
				cardOf(job, p.Card).Name + " · " + supplierName(job, cardOf(job, p.Card).Supplier),
				fmt.Sprintf("%d × %s%s", run.Sheets, run.Each, setupWords(run)),
				run.UsedPercent + " % used · " + boundWords(p),
				leftoverWords(job, r, run),
			} {
				d.Text(x, y+13*float64(i+1), letters.Clip(t, small.Weight, small.Size, d.right-x), small)
			}
			d.gap(max(h, 64) + 12)
		}
	}
}

func runWords(job quote.Job, run quote.Run) string {
	if run.Length != "" {
		return fmt.Sprintf("%s of %s × %s", plural(run.Sheets, "length", "lengths"), run.Width, run.Height) + unitWord(job)
	}
	return fmt.Sprintf("%s of %s × %s", plural(run.Sheets, "sheet", "sheets"), run.Width, run.Height) + unitWord(job) + ", " + plural(run.Inks, "ink", "inks")
}

func unitWord(job quote.Job) string {
	if job.Unit == "mm" {
		return " mm"
	}
	return " in"
}

func setupWords(run quote.Run) string {
	if zero(run.Setup) {
		return ""
	}
	return " + setup " + run.Setup.String()
}

// boundWords says how far a plan is from the best that can be.
func boundWords(p quote.Plan) string {
	if p.Cost.Cmp(p.Bound) <= 0 {
		return "best possible"
	}
	cost, bound := number(p.Cost), number(p.Bound)
	return fmt.Sprintf("within %.1f %% of the best possible", (cost-bound)/max(bound, 0.01)*100)
}

func leftoverWords(job quote.Job, r quote.Result, run quote.Run) string {
	var parts []string
	for _, l := range r.Leftovers {
		for _, p := range run.Pieces {
			if p.Placement == l.Placement && p.Variant == l.Variant {
				parts = append(parts, fmt.Sprintf("%d × %s left for the shelf", l.Copies, lower(placementOf(job, l.Placement).Name)))
				break
			}
		}
	}
	return strings.Join(parts, ", ")
}

// thumbnail draws a run into a box of w × h at the left and returns its height.
func (d *doc) thumbnail(job quote.Job, run quote.Run, h, w float64) float64 {
	sw, sh := inchesOf(job, run.Width), inchesOf(job, run.Height)
	scale := min(w/sw, h/sh)
	x, y := d.left, d.y+2
	paper.Box(d, x, y, sw*scale, sh*scale, paper.Look{Fill: white, Stroke: "#bfb9ad", Width: 0.6})
	for i, p := range run.Pieces {
		px, py := x+inchesOf(job, p.X)*scale, y+inchesOf(job, p.Y)*scale
		pw, ph := inchesOf(job, p.W)*scale, inchesOf(job, p.H)*scale
		paper.Box(d, px, py, pw, ph, paper.Look{Fill: "#f5dfae", Stroke: "#c98f10", Width: 0.4})
		if i < 60 && pw > 26 && ph > 8 {
			name := letters.Clip(lower(placementOf(job, p.Placement).Name), caption.Weight, 6, pw-3)
			d.Text(px+2, py+ph/2+2, name, paper.Style{Size: 6, Weight: letters.Regular, Color: ink})
		}
	}
	return sh * scale
}
