package drawing

// pen gathers the shapes of a picture in garment coordinates.
type pen struct {
	color string
	tone  tone
	quiet bool
	list  []Shape
}

// Line widths in inches, right for a picture some three inches wide on paper.
const (
	edgeWidth   = 0.11
	seamWidth   = 0.08
	stitchWidth = 0.06
)

var stitches = []float64{0.28, 0.2}

func (p *pen) add(s Shape) { p.list = append(p.list, s) }

// cloth is filled with the garment's colour and outlined.
func (p *pen) cloth(path Path) {
	p.add(Shape{Path: path, Fill: p.color, Stroke: p.tone.edge, Width: edgeWidth})
}

// both draws a path and its mirror image.
func (p *pen) both(s Shape) {
	p.add(s)
	s.Path = s.Path.mirrored()
	p.add(s)
}

func (p *pen) seam(path Path) {
	p.add(Shape{Path: path, Stroke: p.tone.seam, Width: seamWidth})
}

func (p *pen) seams(path Path) {
	p.both(Shape{Path: path, Stroke: p.tone.seam, Width: seamWidth})
}

func (p *pen) stitched(path Path) {
	p.both(Shape{Path: path, Stroke: p.tone.seam, Width: stitchWidth, Dash: stitches})
}

// shade darkens; strength 1 is the usual.
func (p *pen) shade(path Path, strength float64) {
	p.add(Shape{Path: path, Fill: "#000000", Opacity: p.tone.shade * strength})
}

func (p *pen) shades(path Path, strength float64) {
	p.both(Shape{Path: path, Fill: "#000000", Opacity: p.tone.shade * strength})
}

// margin is the paper around a garment, inches.
const margin = 0.4

// picture moves everything onto paper that is just large enough.
func (p *pen) picture(frames []Frame) Picture {
	var all Path
	for _, s := range p.list {
		all = append(all, s.Path...)
	}
	x0, y0, x1, y1 := all.Box()
	dx, dy := margin-x0, margin-y0
	for i := range p.list {
		p.list[i].Path = p.list[i].Path.Shift(dx, dy)
	}
	for i := range frames {
		frames[i].CX += dx
		frames[i].CY += dy
	}
	return Picture{W: x1 - x0 + 2*margin, H: y1 - y0 + 2*margin, Shapes: p.list, Frames: frames}
}
