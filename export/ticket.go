package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

// Ticket is the press ticket as a PDF: what goes where, how hot, in which order, with boxes to tick.
func Ticket(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return Pictured(nil).Ticket(job, result, date)
}

func layTicket(d *doc, job quote.Job, result quote.Result, approval Approval, date time.Time) {
	d.letterhead(job, "Press ticket", [2]string{"number", paperOf(job).Number}, [2]string{"printed", day(date.Format(time.DateOnly))},
		[2]string{"needed by", day(paperOf(job).NeededBy)})
	d.addressee(job)
	d.approval(approval)
	d.cautions(append(pressCautions(job), first(6, tooLarge(job, result))...))
	d.counts(job, result)
	d.pressings(job, result)
	if list := roster(job); len(list) > 0 {
		d.heading("Names and numbers, size by size")
		d.bags(job, bySize(job, list), "pressed")
	}
	if vs := d.views(job, result, false); len(vs) > 0 {
		d.need(260)
		d.heading("Where it goes")
		d.pictures(vs, 190)
	}
}

// first keeps a list to n texts and says how many more there are.
func first(n int, texts []string) []string {
	if len(texts) <= n {
		return texts
	}
	return append(slices.Clone(texts[:n]), fmt.Sprintf("… and %d more like these, listed on the cost sheet.", len(texts)-n))
}

// pressCautions are the usual cautions at a heat press. The instructions of the maker and local rules come first.
func pressCautions(job quote.Job) []string {
	out := []string{
		"The platen burns at a touch: wear heat-proof gloves, keep hands and cords clear, never leave a closed press.",
		"Press in moving air: open a window or run the extraction. Give the press a circuit of its own that its plate and an electrician allow.",
		"The transfer maker's instructions and the garment's care label come before every setting here. Press one garment, let it cool, check it, then press the rest.",
	}
	if heat := heatSensitive(job); len(heat) > 0 {
		out = append(out, "Heat-sensitive: "+strings.Join(heat, ", ")+". Polyester dye can migrate into the print and nylon can glaze or shrink: lower heat, a test piece, a day's wait.")
	}
	return out
}

func heatSensitive(job quote.Job) (names []string) {
	for _, g := range job.Garments {
		for _, t := range g.Tags {
			switch strings.ToLower(t) {
			case "polyester", "nylon", "poly", "blend", "triblend", "waterproof", "spandex":
				names = append(names, named(g)+" ("+t+")")
			}
		}
	}
	return names
}

// cautions sets a block on a tint.
func (d *doc) cautions(texts []string) {
	var lines []string
	for _, t := range texts {
		lines = append(lines, letters.Wrap(t, body.Weight, 9, d.right-d.left-24)...)
	}
	h := float64(len(lines))*12.5 + 14
	d.need(h)
	paper.Box(d, d.left, d.y, d.right-d.left, h, paper.Look{Fill: warnOn})
	paper.Box(d, d.left, d.y, 3, h, paper.Look{Fill: warn})
	for i, l := range lines {
		d.Text(d.left+14, d.y+16+float64(i)*12.5, l, paper.Style{Size: 9, Weight: letters.Regular, Color: "#6d3606"})
	}
	d.gap(h + 4)
}

// counts lists pieces by size with a box for each size.
func (d *doc) counts(job quote.Job, r quote.Result) {
	d.heading("Garments")
	d.line("upper box: counted in, lower box: pressed", caption)
	for _, l := range r.Garments {
		if l.Pieces == 0 {
			continue
		}
		g := garmentOf(job, l.ID)
		d.need(64)
		d.gap(5)
		head := named(g)
		if g.FromCustomer {
			head += " – the customer's own"
		}
		d.paragraph(d.left, d.right-d.left, head, strong)
		d.paragraph(d.left, d.right-d.left, strings.TrimSpace(supplierName(job, g.Supplier)+" "+g.Style), small)
		d.gap(3)
		d.boxes(l)
	}
}

// boxes sets one box a size: to be ticked when counted, and when pressed.
func (d *doc) boxes(l quote.GarmentLine) {
	const w, h = 92, 30
	x := d.left
	for _, s := range l.Sizes {
		if s.Qty == 0 {
			continue
		}
		if x+w > d.right {
			x = d.left
			d.gap(h + 5)
			d.need(h)
		}
		paper.Box(d, x, d.y, w-6, h, paper.Look{Stroke: "#bfb9ad", Width: 0.7})
		d.Text(x+7, d.y+13, sizeWord(s.Size), strong)
		count := fmt.Sprint(s.Qty)
		if s.Spares > 0 {
			count += fmt.Sprintf(" + %d spare", s.Spares)
		}
		d.Text(x+7, d.y+25, count, small)
		for i := range 2 {
			paper.Box(d, x+w-24, d.y+4+float64(i)*12.5, 9.5, 9.5, paper.Look{Stroke: ink, Width: 0.8})
		}
		x += w
	}
	d.gap(h + 6)
}

// pressings lists the placements in the order of pressing with their settings.
func (d *doc) pressings(job quote.Job, r quote.Result) {
	if len(r.Methods) == 0 {
		return
	}
	d.heading("Order of pressing")
	if printedTwice(job, r) {
		d.paragraph(d.left, d.right-d.left, "Cover a print that is already on with a silicone sheet or parchment whenever the platen comes down over it again; seams, zips and pockets lie off the platen.", small)
	}
	spared := ", spares included"
	if len(r.Groups) == 0 { // pieces to be pressed again have none
		spared = ""
	}
	for i, m := range r.Methods {
		p, c := placementOf(job, m.Placement), cardOf(job, m.Card)
		d.need(74)
		d.gap(8)
		d.line(fmt.Sprintf("%d   %s   %s   %s", i+1, p.Name, inches(job, p.Width, p.Height), inkWords(p)), strong)
		for _, t := range pressWords(job, p, c, m, spared) {
			d.paragraph(d.left+16, d.right-d.left-16, t, body)
		}
	}
}

// printedTwice says whether the platen comes down again on a garment that has a print already.
func printedTwice(job quote.Job, r quote.Result) bool {
	for _, l := range r.Garments {
		n := 0
		for _, m := range r.Methods {
			if on := placementOf(job, m.Placement).On; (on == nil || slices.Contains(on, l.ID)) && cardOf(job, m.Card).Press != nil {
				n++
			}
		}
		if l.Pieces > 0 && n > 1 {
			return true
		}
	}
	return false
}

func pressWords(job quote.Job, p quote.Placement, c quote.RateCard, m quote.Method, spared string) (out []string) {
	if p.Info.Position != "" {
		out = append(out, "Place: "+p.Info.Position)
	}
	for _, v := range p.Variants {
		out = append(out, fmt.Sprintf("On %s: %s", strings.Join(v.Sizes, ", "), inches(job, v.Width, v.Height)))
	}
	if c.Press == nil {
		return append(out, fmt.Sprintf("%s: done by %s, not pressed here.", c.Name, supplierName(job, c.Supplier)))
	}
	settings := nonEmpty(c.Info.Temperature, prefixed("pressure ", c.Info.Pressure), secondsWords("dwell ", c.Press.Dwell.String()),
		prefixed("peel ", c.Info.Peel), secondsWords("second press ", c.Press.Second.String()))
	out = append(out, c.Name+": "+strings.Join(settings, " · "))
	if p.Personal {
		return append(out, fmt.Sprintf("%s, each one of a kind: there are no spares. Settings are a starting point (common practice) until the shop has confirmed them.", plural(len(p.Texts), "text", "texts")))
	}
	return append(out, fmt.Sprintf("%s. Settings are a starting point (common practice) until the shop has confirmed them.", plural(m.Needed, "transfer", "transfers")+spared))
}

func prefixed(before, s string) string {
	if s == "" {
		return ""
	}
	return before + s
}

func secondsWords(before, s string) string {
	if s == "0" {
		return ""
	}
	return before + s + " s"
}
