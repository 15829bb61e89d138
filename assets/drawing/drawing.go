// Package drawing holds Pressworth's own outlines of garments, in inches, and puts artwork on them to scale: the same picture
// for the window, the customer's side and paper. A Picture is a list of filled and stroked paths, so that any
// surface that knows curves can show it.
//
// The sizes of garments are common practice, no source: a real garment differs by its mill, and its size chart wins.
//
// Not in this package: prices, fonts, files, any surface to draw on.
package drawing

// Side is the face of a garment that is seen.
type Side string

// The two faces.
const (
	Front Side = "front"
	Back  Side = "back"
)

// Garment is what is drawn.
type Garment struct {
	Category string // tee, long sleeve, hoodie, zip hoodie, crew, polo, tank, cap, tote, youth tee; anything else: tee
	Size     string // like M, 2XL, YS, 4T, OS; unknown: M
	Side     Side   // empty: Front
	Color    string // #rrggbb; anything else: a light grey
	Quiet    bool   // for the customer's eyes: what Check says is not shown in colour
}

// Art is one artwork on a garment.
type Art struct {
	Name      string   // of the placement, like Full back
	Position  string   // where it goes, if the name does not say so
	W, H      float64  // inches
	Inks      []string // names or #rrggbb
	FullColor bool
	Text      string // names and numbers: the text itself, drawn in block letters
	Pictured  bool   // a real picture is laid over the frame: nothing is drawn in it
}

// Picture is a drawing in inches, the corner of its paper at 0, 0 and y downwards.
type Picture struct {
	W, H   float64
	Shapes []Shape
	Frames []Frame
}

// Shape is one path of a picture. Colours are #rrggbb, empty: none.
type Shape struct {
	Path    Path
	Fill    string
	Stroke  string
	Width   float64   // of the stroke, inches
	Dash    []float64 // inches
	Opacity float64   // 0 counts as 1
}

// Frame is where an artwork lies, so that a real picture can be laid over it. The rectangle is turned by Angle
// degrees, clockwise, about its centre.
type Frame struct {
	Art        int // index into the artworks given
	CX, CY     float64
	W, H       float64
	Angle      float64
	Restricted bool // Check has something to say about it
}

// Alpha is the shape's opacity, 1 where nothing is said.
func (s Shape) Alpha() float64 {
	if s.Opacity == 0 {
		return 1
	}
	return s.Opacity
}

// Draw draws a garment with those of the artworks that are seen on its side.
func Draw(g Garment, arts []Art) Picture {
	b := newBody(g)
	p := &pen{color: validHex(g.Color), quiet: g.Quiet}
	p.tone = toneOf(p.color)
	b.draw(p)
	frames := place(b, arts)
	for _, f := range frames {
		p.art(arts[f.Art], f)
	}
	return p.picture(frames)
}

// Sides says which sides of a garment have to be drawn to show every artwork: front, back or both; front where there is
// none. Sleeves are seen from either side.
func Sides(category string, arts []Art) []Side {
	var front, back bool
	for _, a := range arts {
		switch spotOf(kindOf(category), a).side {
		case Front:
			front = true
		case Back:
			back = true
		}
	}
	switch {
	case front && back:
		return []Side{Front, Back}
	case back:
		return []Side{Back}
	}
	return []Side{Front}
}
