package cards

import (
	"regexp"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote/measure"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// heat says beside the temperature what it is in the other unit, and turns it into that.
type heat struct {
	object fyne.CanvasObject
	words  *parts.Text
	turn   *parts.Button
	other  string // the temperature in the other unit
}

func newHeat(e *editor) *heat {
	h := &heat{words: parts.NewText("", parts.MutedStyle)}
	h.turn = parts.NewSmallButton(parts.Quiet, "", func() {
		e.form.Set(at("temperature"), h.other)
		e.touched("")
	})
	h.object = parts.Flow(8, h.words, h.turn)
	return h
}

// show reads a temperature as it is typed.
func (h *heat) show(text, unit string) {
	h.other = ""
	n, unit, ok := temperature(text, unit)
	if ok {
		h.other = inOther(n, unit)
		h.words.SetText(degrees(n, unit) + " is " + h.other)
		h.turn.SetText("Write it in " + map[string]string{catalog.Fahrenheit: "°C", catalog.Celsius: "°F"}[unit])
	}
	if ok {
		h.object.Show()
	} else {
		h.object.Hide()
	}
}

var temperatureForm = regexp.MustCompile(`^(-?[0-9]{1,4}(?:\.[0-9]{1,2})?)\s*(?:°|deg\.?)?\s*([fFcC]?)$`)

// temperature reads 320, 320 F or 160 °C; usual is the unit where none is written.
func temperature(text, usual string) (n money.Number, unit string, ok bool) {
	m := temperatureForm.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return n, "", false
	}
	n, err := money.ParseNumber(m[1])
	if unit = strings.ToUpper(m[2]); unit == "" {
		unit = usual
	}
	if unit == "" {
		unit = catalog.Fahrenheit
	}
	return n, unit, err == nil
}

func inOther(n money.Number, unit string) string {
	if unit == catalog.Celsius {
		return degrees(measure.Fahrenheit(n, 1), catalog.Fahrenheit)
	}
	return degrees(measure.Celsius(n, 1), catalog.Celsius)
}

func degrees(n money.Number, unit string) string { return n.String() + " °" + unit }

// hottest is more than any press reaches, in °F.
const hottest = 600

// heatText reads the temperature for the card: with its unit, and as it stands where it is in words.
func heatText(r *form.Reader, usual string) string {
	text := r.Text(at("temperature"))
	n, unit, ok := temperature(text, usual)
	if !ok {
		return text
	}
	f := n
	if unit == catalog.Celsius {
		f = measure.Fahrenheit(n, 1)
	}
	if f.Cmp(money.Int(hottest)) > 0 || f.Sign() <= 0 {
		r.Say(at("temperature"), "no press is that hot: enter it like 320 °F or 160 °C")
	}
	return degrees(n, unit)
}
