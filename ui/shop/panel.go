package shop

import (
	"errors"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// panel is the sample job beside the form.
type panel struct {
	object  fyne.CanvasObject
	total   *parts.Text
	before  *parts.Text
	margin  *parts.Text
	hour    *parts.Text
	rows    []*parts.BasisRow
	cost    *parts.Text
	hint    *parts.Band
	buttons *fyne.Container
	byLevel *lines
	byCount *lines
	paper   *letterheadView
	days    *parts.Paragraph
	now     func() time.Time
	saved   string // the sample job's total as saved
}

func newPanel(now func() time.Time) *panel {
	p := &panel{
		total: parts.NewText("", parts.DisplayStyle), before: parts.NewText("", parts.MutedStyle.Shortened()),
		margin: parts.NewText("", parts.KeyStyle.Right()), hour: parts.NewText("", parts.KeyStyle.Right()),
		cost: parts.NewText("", parts.StrongStyle.Right()), hint: parts.NewBand(parts.Warning, ""), buttons: parts.Row(8, nil),
		byLevel: newLines("level", "total", "margin"), byCount: newLines("pieces", "each", "total"), paper: newLetterheadView(),
		now: now, days: parts.NewParagraph("", parts.MutedStyle),
	}
	rows := parts.Column(0)
	for _, k := range look.Kinds {
		c := k.Color()
		row := parts.NewBasisRow(parts.BasisText{Name: k.Name(), Mark: &c})
		p.rows = append(p.rows, row)
		rows.Add(row)
	}
	key := func(word string, value *parts.Text) fyne.CanvasObject {
		return parts.Column(0, parts.NewText(word, parts.CaptionStyle.Right()), value)
	}
	body := parts.Column(12,
		parts.Row(8, []parts.Track{parts.Share(1)}, parts.NewText("Sample job", parts.TitleStyle)),
		parts.Column(0, parts.NewText("order total with tax", parts.CaptionStyle), p.total, p.before),
		parts.Row(8, []parts.Track{parts.Share(1), parts.Share(1)}, key("margin", p.margin), key("left per hour", p.hour)),
		parts.NewRule(),
		parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.NewText("Cost", parts.TitleStyle), p.cost), rows, p.hint,
		parts.NewPlainSection("By level", "", p.byLevel.object), parts.NewPlainSection("By quantity", "of the level that is shown", p.byCount.object),
		parts.NewPlainSection("On paper", "", p.paper.object, p.days))
	foot := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, container.NewWithoutLayout(), p.buttons)
	p.object = container.NewStack(parts.NewSheetGround(), parts.Framed(nil, parts.Inset(look.SectionPadX, 12, foot),
		parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, body))))
	return p
}

// show prices the sample job with the record as it stands, and says what it came to before it was changed. It gives what
// the engine finds wrong with the shop's own figures.
func (p *panel) show(sample func(catalog.Shop) (quote.Result, error), r record, level int, changed bool) []quote.Problem {
	result, err := sample(levelFirst(r.Shop, level))
	if err != nil {
		var problems quote.Problems
		if errors.As(err, &problems) {
			p.hint.SetText("The sample job waits until the figures can be used.")
			return problems
		}
		p.hint.SetText("The sample job cannot be priced: " + err.Error())
		return nil
	}
	p.hint.SetText("")
	p.total.SetText(present.Amount(result.Price.Total))
	if !changed {
		p.saved = p.total.Text()
	}
	p.before.SetText("")
	if p.saved != p.total.Text() {
		p.before.SetText("as saved: " + p.saved)
	}
	p.margin.SetText("–")
	if m := result.MarginPercent; m != nil {
		p.margin.SetText(*m + " %")
	}
	p.hour.SetText("–")
	if h := result.LeftPerHour; h != nil {
		p.hour.SetText(present.Amount(*h))
	}
	p.cost.SetText(present.Amount(result.Cost.Total))
	p.kinds(result)
	p.byCount.set(quantities(result))
	p.byLevel.set(comparedLevels(sample, r.Shop, level, result))
	p.paper.show(r, p.now())
	p.days.SetText(inPractice(r, result, p.now()))
	return nil
}

// kinds shows the cost by kind; kinds without cost are hidden.
func (p *panel) kinds(r quote.Result) {
	texts := make([]parts.BasisText, len(look.Kinds))
	lines := make([][]money.Amount, len(look.Kinds))
	for _, l := range r.Cost.Lines {
		k := look.KindOf(l.Kind)
		lines[k] = append(lines[k], l.Amount)
		if texts[k].Basis == "" {
			texts[k].Basis = l.Basis
		} else {
			texts[k].Basis += " + " + l.Basis
		}
	}
	for _, k := range look.Kinds {
		c := k.Color()
		texts[k].Name, texts[k].Mark = k.Name(), &c
		texts[k].Amount = present.Amount(quote.Sum(lines[k]...))
		p.rows[k].Set(texts[k])
		if len(lines[k]) == 0 {
			p.rows[k].Hide()
		} else {
			p.rows[k].Show()
		}
	}
}
