package drawing

import "math"

// fullColor stands for artwork in full colour.
var fullColor = []string{"#c8202f", "#e8742a", "#e8b93a", "#1f8a4c", "#2458b8", "#5b3a8e"}

// art draws an artwork's frame, to scale, and in it a plain emblem that shows the inks (or the text of names and numbers).
func (p *pen) art(a Art, f Frame) {
	frame := p.tone.mark
	width := 0.09
	if f.Restricted && !p.quiet {
		frame, width = p.warning(), 0.14
	}
	box := Rect(f.CX-f.W/2, f.CY-f.H/2, f.W, f.H).turned(f.Angle, f.CX, f.CY)
	p.add(Shape{Path: box, Stroke: frame, Width: width, Dash: []float64{0.34, 0.24}})
	switch {
	case a.Pictured:
		return
	case a.Text != "":
		p.lettering(a, f)
		return
	}
	for _, s := range p.emblem(a, f.W, f.H) {
		s.Path = s.Path.Map(func(q Point) Point { return Point{q.X + f.CX, q.Y + f.CY} }).turned(f.Angle, f.CX, f.CY)
		p.add(s)
	}
}

func (p *pen) warning() string {
	if rgbOf(p.color).light() < 0.42 {
		return "#f0a85a"
	}
	return "#b4560a"
}

// inkHexes are the colours an artwork is shown in.
func (p *pen) inkHexes(a Art) []string {
	if a.FullColor {
		return fullColor
	}
	var list []string
	for _, ink := range a.Inks {
		hex, _ := InkColor(ink)
		list = append(list, hex)
	}
	if list == nil {
		list = []string{p.tone.mark}
	}
	return list
}

// emblem is two bars of lettering over an arc, and a bar more for every further ink; around 0, 0, within w × h. Tall artwork is laid
// along its height.
func (p *pen) emblem(a Art, w, h float64) []Shape {
	tall := h > 1.7*w
	if tall {
		w, h = h, w
	}
	inks := p.inkHexes(a)
	n := max(3, len(inks))
	use := 0.74 * h
	row := use / float64(n)
	var list []Shape
	for i := range n {
		hex := inks[i*len(inks)/n]
		y := -use/2 + (float64(i)+0.5)*row
		list = append(list, p.element(i, n, w, row, y, hex))
	}
	if tall {
		for i := range list {
			list[i].Path = list[i].Path.turned(-90, 0, 0)
		}
	}
	return list
}

var barWidths = []float64{0.40, 0.66, 0, 0.54, 0.34, 0.46, 0.28}

func (p *pen) element(i, n int, w, row, y float64, hex string) Shape {
	s := Shape{Fill: hex}
	if i == 2 {
		thick, half, rise := row*0.42, w*0.36, row*0.55
		var r Path
		r.MoveTo(-half, y+rise)
		r.CurveTo(-half*0.5, y-rise*1.1, half*0.5, y-rise*1.1, half, y+rise)
		r.LineTo(half-thick*0.5, y+rise+thick*0.5)
		r.CurveTo(half*0.45, y-rise*1.1+thick*1.5, -half*0.45, y-rise*1.1+thick*1.5, -half+thick*0.5, y+rise+thick*0.5)
		r.Close()
		s.Path = r
	} else {
		share := barWidths[i%len(barWidths)]
		t := row * 0.5
		s.Path = RoundRect(-w*share/2, y-t/2, w*share, t, t*0.18)
	}
	if near(hex, p.color) { // an ink on cloth of its own colour still has to be seen
		s.Stroke, s.Width = p.tone.mark, stitchWidth
	}
	return s
}

func near(a, b string) bool {
	x, y := rgbOf(a), rgbOf(b)
	return math.Sqrt((x[0]-y[0])*(x[0]-y[0])+(x[1]-y[1])*(x[1]-y[1])+(x[2]-y[2])*(x[2]-y[2])) < 42
}
