package counter

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"

	"pressworth/quote"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// teamJob opens a job of so many people with names and numbers on the back, on a card of the shop where one is named.
func teamJob(b *testing.B, people int, card string) *desk {
	d := newDesk(b, -1, usual)
	parts.Focus(d.counter.form.garments.search.Field)
	d.typed("ls nav", fyne.KeyReturn)
	var rows [][]string
	for i := range people {
		rows = append(rows, []string{fmt.Sprint(i%99 + 1), fmt.Sprintf("PLAYER%c%d", 'A'+i%26, i*i%1000), []string{"S", "M", "L", "XL"}[i%4]})
	}
	d.p.PasteRoster(0, 0, rows)
	for _, kind := range []string{present.LettersName, present.LettersNumber} {
		d.p.SetMethod(d.p.AddLetters(kind), card)
	}
	if !d.p.Ready() {
		b.Fatalf("not priced: %v", d.p.Problems())
	}
	return d
}

// BenchmarkCounter_teamOf300 is one key in a name of a roster of 300 with names and numbers on the back, through presenter,
// engine, form and panel: on the cards that are cheapest, and on the roll, where every text is a piece of its own.
func BenchmarkCounter_teamOf300(b *testing.B) {
	cards := map[string]string{"cheapest": ""}
	for _, c := range newDesk(b, -1, usual).shop.Demo.Cards {
		if c.Card.Kind == quote.RollCard {
			cards["roll"] = c.Card.ID
		}
	}
	for name, card := range cards {
		b.Run(name, func(b *testing.B) {
			d := teamJob(b, 300, card)
			keystrokes(b, d, func(i int) { d.p.SetRoster(i%300, present.RosterName, fmt.Sprintf("NAME%d", i)) })
		})
	}
}
