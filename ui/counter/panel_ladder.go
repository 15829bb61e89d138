package counter

import (
	"reflect"

	"fyne.io/fyne/v2"

	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// ladder is the price at other quantities: a curve over a table.
type ladder struct {
	box   *fyne.Container
	curve *chart.Curve
	table *ladderTable
}

func newLadder() *ladder {
	l := &ladder{curve: chart.NewCurve(), table: &ladderTable{}}
	l.table.SetUp(l.table, l.table.min, l.table.draw)
	head := parts.Row(8, []parts.Track{parts.Fit(), parts.Share(1)}, parts.NewText("Ladder", parts.TitleStyle),
		parts.NewText("each, all garments together", parts.CaptionStyle.Shortened()))
	l.box = parts.Column(6, head, l.curve, l.table)
	return l
}

func (l *ladder) set(v present.Ladder, stale bool) {
	points := make([]chart.Point, len(v.Points))
	for i, p := range v.Points {
		points[i] = chart.Point(p)
	}
	l.curve.Set(points, stale)
	l.table.set(v, stale)
}

// ladderTable is the ladder in figures.
type ladderTable struct {
	parts.Figure
	view  present.Ladder
	stale bool
}

func (t *ladderTable) set(v present.Ladder, stale bool) {
	if t.stale == stale && reflect.DeepEqual(t.view.Columns, v.Columns) && reflect.DeepEqual(t.view.Rows, v.Rows) {
		return
	}
	t.view, t.stale = v, stale
	t.Redraw()
}

const ladderRow = 22

func (t *ladderTable) min() fyne.Size {
	return fyne.NewSize(look.Px(200), look.Px(ladderRow*float32(1+len(t.view.Rows))-4))
}

func (t *ladderTable) draw(p *parts.Pen, size fyne.Size) {
	if len(t.view.Columns) == 0 {
		return
	}
	label := t.label(size.Width)
	edges := t.edges(size.Width, label)
	line := ladderLine{Pen: p, table: t, edges: edges, tall: look.Px(16)}
	p.Text(parts.Box{W: label, H: line.tall}, "pieces", parts.CaptionStyle)
	for i, c := range t.view.Columns {
		line.cell(i, c.Pieces, parts.CaptionStyle)
	}
	line.tall = look.Px(ladderRow)
	for r, row := range t.view.Rows {
		line.y = look.Px(ladderRow*float32(r+1) - 4)
		p.Text(parts.Box{Y: line.y, W: label, H: line.tall}, row.Name, faint(parts.Style{}, t.stale))
		for i, text := range row.Values {
			line.cell(i, text, parts.Style{})
		}
	}
}

// ladderLine draws the cells of one line of the table.
type ladderLine struct {
	*parts.Pen
	table   *ladderTable
	edges   []float32
	y, tall float32
}

// label is how wide the names of the rows are.
func (t *ladderTable) label(width float32) float32 {
	wide := parts.CaptionStyle.Measure("pieces").Width
	for _, r := range t.view.Rows {
		wide = max(wide, parts.Style{}.Measure(r.Name).Width)
	}
	return min(wide+1, width*0.26)
}

// edges are the right edges of the columns: each as wide as its longest figure, the room between them equal. Where not
// all have room, those at the end farther from the job's own quantity are left out: their edge is 0.
func (t *ladderTable) edges(width, label float32) []float32 {
	first, last, own := 0, len(t.view.Columns), 0
	wide := make([]float32, last)
	used := label
	for i, c := range t.view.Columns {
		if c.Own {
			own = i
		}
		wide[i] = parts.StrongStyle.Measure(c.Pieces).Width
		for _, r := range t.view.Rows {
			wide[i] = max(wide[i], parts.StrongStyle.Measure(r.Values[i]).Width)
		}
		used += wide[i]
	}
	for last-first > 1 && used+float32(last-first)*look.Px(9) > width {
		if own-first >= last-1-own {
			used -= wide[first]
			first++
		} else {
			last--
			used -= wide[last]
		}
	}
	edges := make([]float32, len(wide))
	apart := (width - used) / float32(last-first)
	x := label
	for i := first; i < last; i++ {
		x += apart + wide[i]
		edges[i] = min(x, width)
	}
	return edges
}

func (l ladderLine) cell(i int, text string, s parts.Style) {
	if l.edges[i] == 0 {
		return
	}
	if l.table.view.Columns[i].Own {
		s = s.In(look.Accent)
		s.Weight = parts.Semibold
	}
	s = faint(s, l.table.stale)
	w := look.Px(90)
	l.Text(parts.Box{X: l.edges[i] - w, Y: l.y, W: w, H: l.tall}, text, s.Right())
}
