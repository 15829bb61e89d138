package present

import (
	"fmt"
	"strings"
	"testing"
)

func TestPanel_showsTheWorkedExample(t *testing.T) {
	c, _, _ := counter(t, true)
	p := c.View().Panel
	got := fmt.Sprintf("%s | %s | %s | %s | %s", p.Total, p.TotalNote, p.Margin, p.PerHour, p.Next)
	want := "1,261.38 | order total with tax | 42.2 % | 213 | 26 more and each long sleeve drops 3.00."
	if got != want || p.Stale || p.Empty || p.Hint != "" {
		t.Errorf("got %s (stale %v, hint %q), want %s", got, p.Stale, p.Hint, want)
	}
}

func TestPanel_pricesHaveColumnsForSizesThatCostMore(t *testing.T) {
	c, _, _ := counter(t, true)
	prices := c.View().Panel.Prices
	if fmt.Sprint(prices.Columns) != "[2XL]" {
		t.Errorf("got columns %v, want 2XL", prices.Columns)
	}
	var rows []string
	for _, r := range prices.Rows {
		rows = append(rows, fmt.Sprint(r.Name, " ", r.Each, r.More, r.CostEach))
	}
	if got, want := strings.Join(rows, "; "), "Long-sleeve tee 27.25[31.00]15.65; Twill cap 12.50[]7.34"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestPanel_costsAreGatheredByKindAndTheRestComesLast(t *testing.T) {
	c, _, _ := counter(t, true)
	cost := c.View().Panel.Cost
	var rows []string
	for _, r := range cost.Rows {
		rows = append(rows, r.Name+" "+r.Amount)
	}
	want := "Blanks 301.10; Transfers 195.88; Overhead 49.69; Pressing time 44.88; Art 20.00; Freight 17.00; Fold and bag, wear, spoilage 8.30"
	if got := strings.Join(rows, "; "); got != want || cost.Total != "636.85" {
		t.Errorf("got %s of %s, want %s", got, cost.Total, want)
	}
	if got, want := cost.Rows[0].Basis, "27 × 6.85 + 3 × 8.90 + 7 × 6.85 + 10 × 4.15"; got != want {
		t.Errorf("basis: got %s, want %s", got, want)
	}
	if got, want := cost.Rows[0].Lines[1], (Figure{"Long-sleeve tee, white", "7 × 6.85", "47.95"}); got != want {
		t.Errorf("opened: got %v, want %v", got, want)
	}
	sum := 0.0
	for _, r := range cost.Rows {
		sum += r.Fraction
	}
	if sum < 0.9999 || sum > 1.0001 {
		t.Errorf("the stack adds up to %f, want 1", sum)
	}
}

func TestPanel_ladderMergesTheJobsOwnQuantityInAndDropsItsNeighbour(t *testing.T) {
	c, _, _ := counter(t, true)
	l := c.View().Panel.Ladder
	var heads []string
	for _, k := range l.Columns {
		heads = append(heads, k.Pieces+map[bool]string{true: "*"}[k.Own])
	}
	if got, want := strings.Join(heads, " "), "12 24 46* 72 144"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got, want := fmt.Sprint(l.Rows), "[{long sleeve [34.75 30.75 27.25 24.25 20.75]} {cap [15.00 13.50 12.50 12.50 11.75]} {order [424.88 753.69 1,261.38 1,772.86 3,074.03]}]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if len(l.Points) != 6 {
		t.Errorf("the curve has %d points, want all six quantities", len(l.Points))
	}
}

func TestPanel_sheetsAreCaptioned(t *testing.T) {
	c, _, _ := counter(t, true)
	s := c.View().Panel.Sheets
	if len(s) != 1 {
		t.Fatalf("got %d sheets, want 1", len(s))
	}
	got := s[0].Title + " | " + s[0].Detail + " | " + s[0].Left + " | " + s[0].Pieces[0].Label
	if want := "38 sheets of 13 × 9.5 | two inks · 76 % used · best possible | 2 copies left for the shelf | full back 11 × 8.5"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestPanel_saysHowOldThePricesAre(t *testing.T) {
	c, _, _ := counter(t, true)
	notes := c.View().Panel.Notes
	if len(notes) == 0 || notes[0].Text != "Blank prices are 97 days old (limit 90)." || !notes[0].Warning {
		t.Errorf("got %v, want the age of the oldest price", notes)
	}
}

func TestPanel_keepsTheLastGoodFiguresGreyedAndSaysWhatIsMissing(t *testing.T) {
	c, _, _ := counter(t, true)
	c.SetInches("p1", "wide")
	v := c.View()
	if !v.Panel.Stale || v.Panel.Total != "1,261.38" {
		t.Errorf("got stale %v, total %s; want the last good total, stale", v.Panel.Stale, v.Panel.Total)
	}
	if !strings.HasPrefix(v.Panel.Hint, "Full back: enter inches") {
		t.Errorf("got hint %q, want it to name the row and say what would do", v.Panel.Hint)
	}
	if got := v.Form.Artwork[0].Problems.Inches; !strings.Contains(got, "inches") {
		t.Errorf("got %q beside the field, want the problem", got)
	}
	if v.Form.Artwork[0].Inches != "wide" {
		t.Errorf("got %q in the field, want what was typed", v.Form.Artwork[0].Inches)
	}
	c.SetInches("p1", "11 x 8.5")
	if v := c.View(); v.Panel.Stale || v.Panel.Hint != "" || len(v.Problems) != 0 {
		t.Errorf("got stale %v, hint %q, %v; want the figures current again", v.Panel.Stale, v.Panel.Hint, v.Problems)
	}
}

func TestPanel_anEmptyFormAsksForAGarment(t *testing.T) {
	c, _, e := counter(t, false)
	if p := c.View().Panel; !p.Empty || p.Hint != "Add a garment to see a price." || e.priced != 0 {
		t.Errorf("got %+v after %d pricings, want an empty panel that says what to do", p, e.priced)
	}
}
