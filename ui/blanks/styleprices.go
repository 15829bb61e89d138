package blanks

import (
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
)

// priceSection holds the price table of every colour or of one that has its own.
func (e *stylePage) priceSection() fyne.CanvasObject {
	e.prices = e.grid(cellRows{e.shownPrices, func(rows [][]string) { e.text.prices[e.color()] = rows }}, 110, 72).Words(0)
	e.whose = parts.NewChoice(nil, func(parts.Option) {
		e.fill()
		e.judge()
	})
	s := parts.NewSection("Prices each", "one row a size; a range can be pasted; 49.20/12 is for a dozen",
		parts.Row(8, []parts.Track{parts.Fixed(220)}, parts.NewCaptioned("Prices of", e.whose)), e.form.Around("sizes", "", e.prices))
	return s
}

// shownPrices is the table of the colour that is chosen. A colour without prices of its own begins with the sizes and
// quantities of every colour.
func (e *stylePage) shownPrices() [][]string {
	color := e.color()
	rows, ok := e.text.prices[color]
	if !ok {
		for i, row := range e.text.prices[""] {
			line := make([]string, len(row))
			if i == 0 {
				copy(line, row)
			} else if len(row) > 0 {
				line[0] = row[0]
			}
			rows = append(rows, line)
		}
	}
	return rows
}

func (e *stylePage) color() string {
	if e.whose == nil {
		return ""
	}
	return e.whose.Key()
}

// fillPrices shows the price table with an empty row and an empty column.
func (e *stylePage) fillPrices() {
	rows := e.shownPrices()
	wide := 2
	for _, row := range rows {
		for c, text := range row {
			if text != "" {
				wide = max(wide, c+2)
			}
		}
	}
	heads := make([]string, wide)
	heads[0] = "size"
	e.prices.Set(heads, withBlank(rows))
	e.prices.Cell(0, 0).Disable()
}

// offerColors lists the colours whose prices can be shown.
func (e *stylePage) offerColors() {
	options := []parts.Option{{Name: "every colour"}}
	for _, row := range e.text.colors {
		if name := cells(row)(0); name != "" && !slices.ContainsFunc(options, func(o parts.Option) bool { return o.Key == name }) {
			word := name
			if len(e.text.prices[name]) > 0 {
				word += " (its own)"
			}
			options = append(options, parts.Option{Key: name, Name: word})
		}
	}
	e.whose.SetOptions(options)
}
