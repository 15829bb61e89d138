package book

import (
	"fyne.io/fyne/v2"

	"pressworth/quote/money"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// causesSection is why a total changed: its causes one under the other, and their sum.
func causesSection(causes []Cause, sum money.Amount) fyne.CanvasObject {
	rows := parts.Column(0)
	for _, c := range causes {
		rows.Add(parts.Inset(0, 3, parts.Row(12, []parts.Track{parts.Fixed(150), parts.Share(1), parts.Fit()}, parts.NewText(c.Name, parts.Style{Weight: parts.Medium}),
			parts.NewText(c.Why, parts.MutedStyle.Shortened()), parts.NewText(c.Amount, parts.BodyStyle.Right()))))
	}
	rows.Add(parts.NewRule())
	rows.Add(parts.Inset(0, 5, sumRow("together", withSign(sum), parts.StrongStyle.In(look.Accent))))
	return parts.NewSection("Why", "each cause by itself; together they are the difference", rows)
}

func withSign(a money.Amount) string {
	if a.Sign() > 0 {
		return "+" + a.String()
	}
	return a.String()
}
