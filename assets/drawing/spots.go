package drawing

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// spot is where an artwork goes. The side is empty where it can be seen from either.
type spot struct {
	name string
	side Side
}

// spotWords decide the spot by words in the placement's name or position; the first that is found counts. A word with a
// kind counts for those kinds only.
var spotWords = []struct {
	word string
	spot spot
	cap  int // 1: caps only, -1: not on caps
}{
	{"back", spot{"cap back", Back}, 1},
	{"left side", spot{"cap left", Front}, 1},
	{"right side", spot{"cap right", Front}, 1},
	{"side", spot{"cap left", Front}, 1},
	{"", spot{"cap front", Front}, 1},
	{"hood", spot{"hood", Back}, -1},
	{"right sleeve", spot{"right sleeve", ""}, -1},
	{"sleeve", spot{"left sleeve", ""}, -1},
	{"cuff", spot{"left sleeve", ""}, -1},
	{"left chest", spot{"left chest", Front}, -1},
	{"right chest", spot{"right chest", Front}, -1},
	{"pocket", spot{"left chest", Front}, -1},
	{"number front", spot{"number front", Front}, -1},
	{"front number", spot{"number front", Front}, -1},
	{"nape", spot{"nape", Back}, -1},
	{"neck", spot{"nape", Back}, -1},
	{"locker", spot{"nape", Back}, -1},
	{"yoke", spot{"nape", Back}, -1},
	{"upper back", spot{"upper back", Back}, -1},
	{"lower back", spot{"lower back", Back}, -1},
	{"tail", spot{"lower back", Back}, -1},
	{"number", spot{"number back", Back}, -1},
	{"full front", spot{"front", Front}, -1},
	{"name", spot{"name back", Back}, -1},
	{"back", spot{"back", Back}, -1},
	{"hip", spot{"hip", Front}, -1},
	{"hem", spot{"hip", Front}, -1},
	{"", spot{"front", Front}, -1},
}

func spotOf(k kind, a Art) spot {
	text := strings.ToLower(a.Name + " / " + a.Position)
	for _, w := range spotWords {
		if (k == cap) == (w.cap == 1) && strings.Contains(text, w.word) {
			return w.spot
		}
	}
	return spot{"front", Front}
}

// Spot names where an artwork goes, in plain words: left chest, front, back, nape, left sleeve, cap front ...
func Spot(category string, a Art) string { return spotOf(kindOf(category), a).name }

var below = regexp.MustCompile(`([0-9]+(?:\.[0-9]+)?)\s*(in|inch|inches|cm|mm)\s+(?:below|under|from)`)

// down reads "3 in below the collar": inches below the neckline.
func down(a Art) (float64, bool) {
	m := below.FindStringSubmatch(strings.ToLower(a.Position))
	if m == nil {
		return 0, false
	}
	d, _ := strconv.ParseFloat(m[1], 64)
	switch m[2] {
	case "cm":
		d /= 2.54
	case "mm":
		d /= 25.4
	}
	return d, d < 30
}

// place puts artworks on the side of a body that is seen.
func place(b body, arts []Art) []Frame {
	var frames []Frame
	for i, a := range arts {
		s := spotOf(b.kind, a)
		if s.side != "" && s.side != b.side || a.W <= 0 || a.H <= 0 {
			continue
		}
		f := b.frame(s, a)
		f.Art, f.W, f.H = i, a.W, a.H
		f.Restricted = len(b.complaints(s, a, f)) > 0
		frames = append(frames, f)
	}
	return frames
}

// frame finds the centre and the angle of an artwork. Distances from the collar are common practice, no source.
func (b body) frame(s spot, a Art) Frame {
	mid := func(x, top float64) Frame { return Frame{CX: x, CY: top + a.H/2} }
	collar := b.drop + 0.9*b.k
	gap := func(usual float64) float64 {
		if d, ok := down(a); ok {
			return d
		}
		return usual * min(b.k, 1.1)
	}
	switch s.name {
	case "left sleeve", "right sleeve":
		return b.onSleeve(s.name, a)
	case "left chest":
		return mid(0.2*b.chest, b.shoulder.Y+0.20*b.chest)
	case "right chest":
		return mid(-0.2*b.chest, b.shoulder.Y+0.20*b.chest)
	case "hip":
		return Frame{CX: 0.25 * b.chest, CY: b.length - b.rib - 2*b.k - a.H/2}
	case "nape":
		return mid(0, collar+gap(0.6))
	case "name back", "upper back":
		return mid(0, b.backTop()+gap(2))
	case "lower back":
		return Frame{CY: b.length - b.rib - 3*b.k - a.H/2}
	case "number back":
		return mid(0, b.backTop()+gap(5.5))
	case "back":
		return mid(0, b.backTop()+gap(3))
	case "hood":
		return Frame{CY: (b.hoodHang() + 0.025*b.chest) / 2}
	}
	return b.frontFrame(s, a, mid, gap, collar)
}

func (b body) frontFrame(s spot, a Art, mid func(x, top float64) Frame, gap func(float64) float64, collar float64) Frame {
	switch {
	case s.name == "cap back":
		return Frame{CY: -3.65}
	case s.name == "cap left":
		return Frame{CX: 2.55, CY: -1.9}
	case s.name == "cap right":
		return Frame{CX: -2.55, CY: -1.9}
	case b.kind == cap:
		return Frame{CY: -1.95}
	case b.kind == tote:
		return Frame{CY: 1.6 + (b.length-1.6)/2}
	case b.kind == polo:
		return mid(0, b.placket()+gap(1))
	case b.kind == hoodie || b.kind == zipHoodie:
		return mid(0, collar+gap(3.4))
	}
	return mid(0, collar+gap(2))
}

// backTop is from where a back print is measured: the collar, or the end of a hood.
func (b body) backTop() float64 {
	if b.kind == hoodie || b.kind == zipHoodie {
		return b.hoodHang() - 1*b.k
	}
	if b.kind == tote {
		return 0
	}
	return b.drop + 0.9*b.k
}

// onSleeve lays an artwork along the sleeve. The wearer's left sleeve is on the viewer's right seen from the front, on the viewer's left
// seen from behind.
func (b body) onSleeve(name string, a Art) Frame {
	if !b.upper() || b.kind == tank {
		return Frame{CY: b.length / 2}
	}
	mid := Point{(b.cuffTop.X + b.cuffIn.X) / 2, (b.cuffTop.Y + b.cuffIn.Y) / 2}
	up := Point{(b.shoulder.X*0.75 + b.armpit.X*0.25), (b.shoulder.Y*0.72 + b.armpit.Y*0.28)}
	ux, uy := mid.X-up.X, mid.Y-up.Y
	l := math.Hypot(ux, uy)
	ux, uy = ux/l, uy/l
	angle := math.Atan2(-ux, uy) * 180 / math.Pi // the artwork's upright runs along the sleeve
	from := 1.3*b.k + a.H/2                      // hem of a short sleeve
	if !b.short() {
		from = 0.52 * l
		if bottom := 3.2*b.k + b.rib + a.H/2; from < bottom {
			from = bottom
		}
	}
	f := Frame{CX: mid.X - ux*from, CY: mid.Y - uy*from, Angle: angle}
	if b.short() { // a little nearer the upper edge, where the eye sees it
		f.CX += uy * 0.2
		f.CY -= ux * 0.2
	}
	viewersRight := (name == "left sleeve") == (b.side == Front)
	if !viewersRight {
		f.CX, f.Angle = -f.CX, -f.Angle
	}
	return f
}
