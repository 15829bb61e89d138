package catalog

import (
	"fmt"
	"regexp"
	"strings"

	"pressworth/quote"
)

var hexColor = regexp.MustCompile(`^(#[0-9a-f]{6})?$`)

// CheckStyle says what keeps a style from being saved, by the path of its field; nil where nothing does.
func CheckStyle(s Style) []quote.Problem {
	var e entries
	for path, text := range map[string]string{"number": s.Number, "name": s.Name} {
		if strings.TrimSpace(text) == "" {
			e.say(path, "enter the style's "+path)
		}
	}
	if s.SupplierID == 0 {
		e.say("supplier", "choose a supplier")
	}
	if s.Weight.Sign() < 0 {
		e.say("weight", "enter a weight of 0 or more")
	}
	if s.Handling != nil && s.Handling.Sign() < 0 {
		e.say("handling", "enter seconds of 0 or more")
	}
	e.colors(s.Colors)
	e.sizes("sizes", s.Sizes)
	for color, own := range s.ByColor {
		e.sizes("by_color."+color, own)
	}
	return e.problems
}

func (e *entries) colors(colors []Color) {
	seen := make(map[string]bool)
	for i, c := range colors {
		at := fmt.Sprintf("colors[%d]", i)
		switch {
		case strings.TrimSpace(c.Name) == "":
			e.say(at+".name", "enter the colour's name")
		case seen[c.Name]:
			e.say(at+".name", c.Name+" is there already")
		}
		seen[c.Name] = true
		if !hexColor.MatchString(c.Hex) {
			e.say(at+".hex", "enter a colour like #1f2a4a, or leave it empty")
		}
		switch c.Shade {
		case "", "light", "dark", "heather", "neon":
		default:
			e.say(at+".shade", "choose light, dark, heather or neon")
		}
	}
}

func (e *entries) sizes(path string, all []StyleSize) {
	seen := make(map[string]bool)
	for i, z := range all {
		at := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case strings.TrimSpace(z.Size) == "" || strings.ContainsAny(z.Size, " \t"):
			e.say(at+".size", "enter a size without spaces, like 2XL")
		case seen[z.Size]:
			e.say(at+".size", z.Size+" is there already")
		case len(z.Each) == 0:
			e.say(at+".each", "enter a price")
		}
		seen[z.Size] = true
		e.breaks(at+".each", z.Each)
	}
}

// breaks have prices above 0 from rising quantities on.
func (e *entries) breaks(path string, each []quote.Break) {
	for i, b := range each {
		at := fmt.Sprintf("%s[%d]", path, i)
		if b.Each.Sign() <= 0 {
			e.say(at+".each", "enter a price above 0")
		}
		if b.From < 1 || i > 0 && b.From <= each[i-1].From {
			e.say(at+".from", "enter a quantity above the one before")
		}
	}
}
