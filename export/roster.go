package export

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

var errNobody = errors.New("there are no names or numbers on this job")

// bag is one garment with what is printed on it for one person.
type bag struct {
	garment quote.Garment
	size    string
	person  string
	texts   []string // by personal placement, in their order; empty: none
}

// words are a bag's texts in one line: RIVERA, 24.
func (b bag) words() string { return strings.Join(nonEmpty(b.texts...), ", ") }

// personal are the placements with a text of its own on each garment.
func personal(job quote.Job) (ps []quote.Placement) {
	for _, p := range job.Placements {
		if p.Personal && len(p.Texts) > 0 {
			ps = append(ps, p)
		}
	}
	return ps
}

// roster is what goes to whom, in the order of the list: the roster that the job rides along, each line with its texts. Texts that
// belong to no line of it are paired garment by garment: the first name on a size goes with the first number on it.
func roster(job quote.Job) (bags []bag) {
	ps := personal(job)
	if len(ps) == 0 {
		return nil
	}
	for _, w := range paperOf(job).Roster {
		bags = append(bags, bag{garment: garmentOf(job, w.Garment), size: w.Size, person: w.Person, texts: make([]string, len(ps))})
	}
	listed := len(bags)
	for k, p := range ps {
		for _, t := range p.Texts {
			i := bagFor(bags, listed, k, t)
			if i < 0 {
				i = len(bags)
				bags = append(bags, bag{garment: garmentOf(job, t.Garment), size: t.Size, texts: make([]string, len(ps))})
			}
			bags[i].texts[k] = t.Text
		}
	}
	return bags
}

// bagFor is the bag that a text of the k-th personal placement belongs to: its line of the list, or one without a line on which
// that placement is still free; -1 where there is none.
func bagFor(bags []bag, listed, k int, t quote.Text) int {
	if row := t.Row - 1; row >= 0 && row < listed && bags[row].texts[k] == "" {
		return row
	}
	for i := listed; i < len(bags); i++ {
		if b := bags[i]; b.garment.ID == t.Garment && b.size == t.Size && b.texts[k] == "" {
			return i
		}
	}
	return -1
}

// textColumns are the heads of a list of bags, each with its placements: names for adults and for youth stand in one column.
func textColumns(ps []quote.Placement) (titles []string, of [][]int) {
	for k, p := range ps {
		title, _, _ := strings.Cut(lower(p.Name), ", ")
		i := slices.Index(titles, title)
		if i < 0 {
			i = len(titles)
			titles, of = append(titles, title), append(of, nil)
		}
		of[i] = append(of[i], k)
	}
	return titles, of
}

// bySize puts bags in the order of pressing: line by line, size by size, else as they are listed.
func bySize(job quote.Job, bags []bag) []bag {
	place := func(b bag) int {
		line := slices.IndexFunc(job.Garments, func(g quote.Garment) bool { return g.ID == b.garment.ID })
		size := slices.IndexFunc(b.garment.Sizes, func(s quote.Size) bool { return s.Size == b.size })
		return line*1000 + size
	}
	sorted := slices.Clone(bags)
	slices.SortStableFunc(sorted, func(a, b bag) int { return place(a) - place(b) })
	return sorted
}

// BagList is what goes to whom, in the order of the roster, as a PDF.
func BagList(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	if len(roster(job)) == 0 {
		return nil, errNobody
	}
	return render(job, "Bag list "+paperOf(job).Number, footText(job, "Bag list"), date, func(d *doc) {
		d.letterhead(job, "Bag list", [2]string{"number", paperOf(job).Number}, [2]string{"date", day(date.Format(time.DateOnly))})
		d.addressee(job)
		d.bags(job, roster(job), "packed")
	})
}

// bags lists garments with their texts, a box to tick beside each.
func (d *doc) bags(job quote.Job, list []bag, tick string) {
	titles, of := textColumns(personal(job))
	known := slices.ContainsFunc(list, func(b bag) bool { return b.person != "" })
	specs, styles := []columnSpec{{title: "", width: 24, right: true}}, []paper.Style{small}
	column := func(c columnSpec, st paper.Style) { specs, styles = append(specs, c), append(styles, st) }
	if known {
		column(columnSpec{title: "for", share: 3}, body)
	}
	for _, title := range titles {
		column(columnSpec{title: title, share: 3}, strong)
	}
	column(columnSpec{title: "size", width: 48}, strong)
	column(columnSpec{title: "garment", share: 4}, body)
	column(columnSpec{title: tick, width: 40}, body)
	t := d.table(specs...)
	for i, b := range list {
		cells := []string{fmt.Sprint(i + 1)}
		if known {
			cells = append(cells, b.person)
		}
		for _, ks := range of {
			cells = append(cells, b.of(ks))
		}
		t.tick(len(specs)-1, t.row(append(cells, sizeWord(b.size), named(b.garment), ""), styles))
	}
	t.end()
}

// of is what a bag has of some placements.
func (b bag) of(ks []int) string {
	var texts []string
	for _, k := range ks {
		texts = append(texts, b.texts[k])
	}
	return strings.Join(nonEmpty(texts...), ", ")
}

// LabelSheet is a sheet of labels by its dimensions in inches: where the first label's corner is, how far the next ones are, and how
// large a label is.
type LabelSheet struct {
	Width, Height   float64
	Columns, Rows   int
	Left, Top       float64
	AcrossX, DownY  float64
	LabelW, LabelH  float64
	FirstToBeFilled int // labels already used up on the first sheet
}

// ThirtyLabels is a letter sheet of 3 × 10 labels of 2.625 × 1 in, TwentyOneLabels an A4 sheet of 3 × 7 of 63.5 × 38.1 mm. Common
// practice, no source: measure the sheet before printing.
var (
	ThirtyLabels    = LabelSheet{Width: 8.5, Height: 11, Columns: 3, Rows: 10, Left: 0.1875, Top: 0.5, AcrossX: 2.75, DownY: 1, LabelW: 2.625, LabelH: 1}
	TwentyOneLabels = LabelSheet{
		Width: 210 / 25.4, Height: 297 / 25.4, Columns: 3, Rows: 7, Left: 7.25 / 25.4, Top: 15.15 / 25.4, AcrossX: 66 / 25.4,
		DownY: 38.1 / 25.4, LabelW: 63.5 / 25.4, LabelH: 38.1 / 25.4,
	}
)

// Labels are the bag list on a label sheet that suits the job's country, as a PDF.
func Labels(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	if w, _ := size(job.Currency); w < 600 {
		return LabelsOn(TwentyOneLabels, job, date)
	}
	return LabelsOn(ThirtyLabels, job, date)
}

// LabelsOn are the bag list on a sheet of labels of any dimensions.
func LabelsOn(sheet LabelSheet, job quote.Job, date time.Time) ([]byte, error) {
	if len(roster(job)) == 0 {
		return nil, errNobody
	}
	perPage := sheet.Columns * sheet.Rows
	if perPage < 1 || sheet.FirstToBeFilled < 0 || sheet.FirstToBeFilled >= perPage {
		return nil, fmt.Errorf("label sheet: %d columns, %d rows, %d used: no label is left", sheet.Columns, sheet.Rows, sheet.FirstToBeFilled)
	}
	pdf := paper.NewPDF("Labels "+paperOf(job).Number, shopName(job), date)
	pdf.Page(sheet.Width*inch, sheet.Height*inch)
	for i, b := range roster(job) {
		n := (i + sheet.FirstToBeFilled) % perPage
		if n == 0 && i > 0 {
			pdf.Page(sheet.Width*inch, sheet.Height*inch)
		}
		x := (sheet.Left + float64(n%sheet.Columns)*sheet.AcrossX) * inch
		y := (sheet.Top + float64(n/sheet.Columns)*sheet.DownY) * inch
		label(pdf, job, b, i+1, [4]float64{x, y, sheet.LabelW * inch, sheet.LabelH * inch})
	}
	return pdf.Bytes()
}

// label sets one label into a box of x, y, width and height in points.
func label(s paper.Sheet, job quote.Job, b bag, number int, box [4]float64) {
	x, y, w, h := box[0]+9, box[1], box[2]-18, box[3]
	big := paper.Style{Size: min(17, h/4), Weight: letters.Semibold, Color: ink}
	for big.Size > 9 && big.Width(b.words()) > w-34 {
		big.Size--
	}
	mid := y + h/2
	s.Text(x, mid-1, letters.Clip(b.words(), big.Weight, big.Size, w-34), big)
	paper.Right(s, x+w, mid-1, sizeWord(b.size), paper.Style{Size: 13, Weight: letters.Medium, Color: accent})
	s.Text(x, mid+12, letters.Clip(named(b.garment), small.Weight, small.Size, w), small)
	p := paperOf(job)
	foot := joined(b.person, p.Number, p.Customer.Name)
	if p.Demo {
		foot = "DEMO · " + foot
	}
	s.Text(x, mid+23, letters.Clip(foot, caption.Weight, caption.Size, w-24), caption)
	paper.Right(s, x+w, mid+23, fmt.Sprint(number), caption)
}
