package drawing

import (
	"fmt"
	"strconv"
	"strings"
)

type rgb [3]float64 // 0 to 255

// plain is the colour of a garment whose colour is not known.
const plain = "#d9d7d2"

func validHex(s string) string {
	if _, ok := parseHex(s); ok {
		return strings.ToLower(s)
	}
	return plain
}

func parseHex(s string) (rgb, bool) {
	if len(s) != 7 || s[0] != '#' {
		return rgb{}, false
	}
	n, err := strconv.ParseUint(s[1:], 16, 32)
	return rgb{float64(n >> 16 & 255), float64(n >> 8 & 255), float64(n & 255)}, err == nil
}

func (c rgb) hex() string {
	return fmt.Sprintf("#%02x%02x%02x", int(c[0]+0.5), int(c[1]+0.5), int(c[2]+0.5))
}

// mix goes from c towards d by a share of 0 to 1.
func (c rgb) mix(d rgb, share float64) rgb {
	for i := range c {
		c[i] += (d[i] - c[i]) * share
	}
	return c
}

// light is how bright a colour looks, 0 to 1 (the weights of Rec. 709 over gamma-encoded values: near enough for choosing lines).
func (c rgb) light() float64 { return (0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2]) / 255 }

var black, white = rgb{20, 22, 26}, rgb{255, 255, 255}

// tone holds the lines and shades that suit a garment's colour on light and on dark ground.
type tone struct {
	edge   string // outline
	seam   string // seams and stitches
	inside string // the inner side of the cloth, seen through a neckline
	deep   string // openings
	shade  float64
	glow   float64
	mark   string // dashed frame of an artwork
}

func toneOf(hex string) tone {
	c, _ := parseHex(hex)
	l := c.light()
	t := tone{inside: c.mix(black, 0.22).hex(), deep: c.mix(black, 0.42).hex(), shade: 0.045 + 0.05*(1-l), glow: 0.05}
	if l < 0.42 {
		t.edge, t.seam = c.mix(white, 0.34).hex(), c.mix(white, 0.24).hex()
		t.inside, t.deep = c.mix(black, 0.38).hex(), c.mix(black, 0.6).hex()
		t.shade = 0.16
		t.mark = "#ffffff"
		return t
	}
	t.edge, t.seam = c.mix(black, 0.36).hex(), c.mix(black, 0.24).hex()
	if l > 0.9 {
		t.inside, t.deep = c.mix(black, 0.12).hex(), c.mix(black, 0.26).hex()
	}
	t.mark = "#33404f"
	return t
}

// inkColors gives the names printers use a plain colour; anything else is read as #rrggbb.
var inkColors = map[string]string{
	"white": "#ffffff", "black": "#16181a", "red": "#c8202f", "cardinal": "#8c1d2f", "maroon": "#6b1f2a", "burgundy": "#6b1f2a",
	"orange": "#e8742a", "gold": "#e8b93a", "old gold": "#c79a3b", "vegas gold": "#c5b783", "yellow": "#f5d523", "lemon": "#f7e463",
	"green": "#1f8a4c", "kelly": "#16945a", "kelly green": "#16945a", "forest": "#1e4a34", "forest green": "#1e4a34", "dark green": "#1e4a34",
	"lime": "#9ccc3c", "mint": "#a8dcc4", "teal": "#12807f", "turquoise": "#35b3b5", "aqua": "#6fcbd3",
	"blue": "#2458b8", "royal": "#1f4fae", "royal blue": "#1f4fae", "navy": "#22335c", "light blue": "#8db9e2", "sky": "#9cc8ea", "sky blue": "#9cc8ea",
	"purple": "#5b3a8e", "violet": "#7752a8", "pink": "#ec8fb2", "magenta": "#c92a84", "brown": "#6b4a33", "tan": "#c9a87c", "cream": "#f3e8cf",
	"grey": "#8b9096", "gray": "#8b9096", "silver": "#b9bec4", "charcoal": "#454a50", "dark grey": "#565b61", "light grey": "#c9cdd1",
}

// InkColor returns a colour, as #rrggbb, to show an ink with; false where its name says none.
func InkColor(ink string) (string, bool) {
	name := strings.ToLower(strings.TrimSpace(ink))
	if _, ok := parseHex(name); ok {
		return name, true
	}
	if hex, ok := inkColors[name]; ok {
		return hex, true
	}
	for _, word := range strings.Fields(name) {
		if hex, ok := inkColors[word]; ok {
			return hex, true
		}
	}
	return "#8b9096", false
}
