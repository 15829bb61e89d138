package cards

import (
	"strconv"

	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/chart"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// tryBox answers "what would this card charge?" on the spot, and draws the price each by quantity.
type tryBox struct {
	section *parts.Section
	form    *form.Form
	words   *parts.Paragraph
	curve   *chart.Curve
	editor  *editor
	card    quote.RateCard
	sound   bool
}

func newTryBox(e *editor) *tryBox {
	t := &tryBox{form: form.New(), words: parts.NewParagraph("", parts.Style{}), curve: chart.NewCurve(), editor: e}
	t.form.OnChanged = func(string) { t.say() }
	line := measures(t.form.Number("width", "Width", "in"), t.form.Number("height", "Height", "in"),
		t.form.Number("inks", "Inks, 0: full colour", ""), t.form.Number("stitches", "Thousand stitches", ""), t.form.Number("pieces", "Pieces", ""))
	for path, text := range map[string]string{"width": "11", "height": "9", "inks": "2", "stitches": "8", "pieces": "50"} {
		t.form.Set(path, text)
	}
	t.section = parts.NewSection("Try it", "what would this card charge?", line, t.words, t.curve)
	return t
}

// answer takes over a card that was changed.
func (t *tryBox) answer(card quote.RateCard, sound bool) {
	t.card, t.sound = card, sound
	if sound && card.MaxInks == 0 && card.FullColor && t.form.Get("inks") == "2" && card.Kind != quote.PieceCard {
		t.form.Set("inks", "0")
	}
	t.say()
}

func (t *tryBox) say() {
	r := form.Reader{Get: t.form.Get}
	q := question{width: r.Length("width"), height: r.Length("height"), inks: r.Count("inks"), stitches: r.Number("stitches"), pieces: r.Count("pieces")}
	if q.pieces < 1 && len(r.Problems) == 0 {
		r.Say("pieces", "enter 1 or more")
	}
	t.form.Show(r.Problems)
	if len(r.Problems) > 0 || !t.sound {
		t.words.SetText("Waits until everything above can be read.")
		t.curve.Set(nil, true)
		return
	}
	cost, basis, err := ask(t.card, q)
	t.words.SetText(sentence(q, cost, basis, err))
	t.draw(q)
}

// draw shows the price each at usual quantities and at the one asked for.
func (t *tryBox) draw(q question) {
	var points []chart.Point
	for _, n := range withOwn(q.pieces) {
		own := q
		own.pieces = n
		cost, _, err := ask(t.card, own)
		if err != nil {
			continue
		}
		each := eachOf(cost, n)
		points = append(points, chart.Point{Pieces: n, Each: each, Label: strconv.FormatFloat(each, 'f', 2, 64), Own: n == q.pieces})
	}
	t.curve.Set(points, false)
}

func withOwn(n int) []int {
	var out []int
	for _, s := range steps {
		if n > 0 && n < s && (len(out) == 0 || out[len(out)-1] < n) {
			out = append(out, n)
		}
		out = append(out, s)
	}
	if n > steps[len(steps)-1] {
		out = append(out, n)
	}
	return out
}

// eachOf is a height in the chart, not an amount of money.
func eachOf(cost money.Amount, n int) float64 {
	f, _ := cost.Rat().Float64()
	return f / float64(n)
}
