package counter

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// costList is the cost by kind: a stack, and a row for each kind that opens its lines.
type costList struct {
	box     *fyne.Container
	total   *parts.Text
	stack   *chart.Stack
	rows    []*parts.BasisRow
	list    *fyne.Container
	changed func() // a row was opened or closed
}

func newCostList() *costList {
	c := &costList{total: parts.NewText("", parts.StrongStyle.Right()), stack: chart.NewStack(), list: parts.Column(0)}
	head := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.NewText("Cost", parts.TitleStyle), c.total)
	c.box = parts.Column(8, head, c.stack, c.list)
	return c
}

func (c *costList) set(s present.CostStack, stale bool) {
	c.total.Set(s.Total, faint(parts.StrongStyle.Right(), stale))
	slices := make([]chart.Slice, len(s.Rows))
	for len(c.rows) < len(s.Rows) {
		c.add()
	}
	grown := false
	for i, r := range c.rows {
		grown = visible(r, i < len(s.Rows)) || grown
		if i < len(s.Rows) {
			kind := look.KindOf(s.Rows[i].Kind)
			slices[i] = chart.Slice{Kind: kind, Fraction: s.Rows[i].Fraction}
			t := basis(s.Rows[i], kind.Color())
			t.Faint = stale
			r.Set(t)
		}
	}
	c.stack.Set(slices, stale)
	if grown {
		relay(c.list)
	}
}

func (c *costList) add() {
	r := parts.NewBasisRow(parts.BasisText{})
	r.NameWide = 128
	r.OnOpen = func(bool) { c.changed() }
	c.rows = append(c.rows, r)
	c.list.Add(r)
}

// basis is a kind of cost as a row; opened it shows every line with its formula.
func basis(r present.CostRow, mark color.NRGBA) parts.BasisText {
	t := parts.BasisText{Name: r.Name, Basis: r.Basis, Amount: r.Amount, Mark: &mark}
	if len(r.Lines) < 2 {
		return t
	}
	lines := make([]string, len(r.Lines))
	for i, l := range r.Lines {
		lines[i] = l.Name + "   " + l.Basis + " = " + l.Amount
	}
	t.More = strings.Join(lines, "\n")
	return t
}

// faint is a style for figures that no longer hold.
func faint(s parts.Style, stale bool) parts.Style {
	if stale {
		return s.In(look.Muted)
	}
	return s
}
