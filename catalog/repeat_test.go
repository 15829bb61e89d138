package catalog_test

import (
	"testing"

	"pressworth/catalog"
)

// Artwork on file is not drawn again: what is paid for drawing it is no extra of a repeat, unless some artwork is new or
// the shop charges again. What is not about artwork stays.
func TestRepeat_drawingIsNoExtraOfARepeat(t *testing.T) {
	d := catalog.Draft{
		Placements: []catalog.DraftPlacement{{Name: "Full back", Inks: "white"}, {Name: "Sleeve", Inks: "white"}},
		Extras: []catalog.DraftExtra{
			{Key: "redraw", Name: "Redraw artwork", PerOrder: true},
			{Key: "dig", Name: "Digitizing, left chest", PerOrder: true},
			{Key: "vec", Name: "Vectorise logo", PerOrder: true},
			{Key: "bag", Name: "Bagging"},
			{Key: "draw", Name: "Drawstring put in", PerOrder: true},
			{Key: "trace", Name: "Retrace", PerOrder: true},
		},
	}
	known := []catalog.Design{{ID: 1, Name: "Full back", Inks: "white"}, {ID: 2, Name: "sleeve", Inks: "White"}}
	names := func(d catalog.Draft) (out string) {
		for _, x := range d.Extras {
			out += x.Key + " "
		}
		return out
	}
	if got := names(catalog.Repeat(d, known)); got != "bag draw trace " {
		t.Errorf("all on file: extras %s, want bag draw trace", got)
	}
	if got := names(catalog.Repeat(d, known[:1])); got != names(d) {
		t.Errorf("one is new: extras %s, want all", got)
	}
	known[1].ChargeAgain = true
	if got := names(catalog.Repeat(d, known)); got != names(d) {
		t.Errorf("the shop charges one again: extras %s, want all", got)
	}
	if len(d.Extras) != 6 {
		t.Error("the first quote lost extras")
	}
}
