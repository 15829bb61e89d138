package letters

import (
	"sync"
	"unicode"

	"github.com/go-text/typesetting/di"
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/shaping"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/bidi"
)

// Run is a part of a line, placed. A run without Outline is text in the family's font; one with an Outline is to be
// filled as drawn, Text saying what it reads.
type Run struct {
	Text    string
	X       float64
	Width   float64
	Outline []Segment
}

// Segment is one step of an outline: 'M' one point, 'L' one point, 'C' three points, 'Z' none.
type Segment struct {
	Op byte
	P  [3]Point
}

// Point is a place in points, y downwards.
type Point struct{ X, Y float64 }

// Line is a line of text with its runs from left to right.
type Line struct {
	Runs  []Run
	Width float64
}

var setting sync.Mutex // faces and the shaper keep caches

// Set sets one line of text at a size in points.
func Set(s string, w Weight, size float64) Line { return set(s, w, size, true) }

// set leaves the outlines out where a line is only measured.
func set(s string, w Weight, size float64, outlines bool) Line {
	s = Clean(s)
	setting.Lock()
	defer setting.Unlock()
	f := loaded()
	if width, ok := f.plainWidth(s, w, size); ok {
		return Line{Runs: []Run{{Text: s, Width: width}}, Width: width}
	}
	sh := shaper{faces: f, w: w, size: size, outlines: outlines}
	return sh.line(s)
}

// Width measures a line at a size in points.
func Width(s string, w Weight, size float64) float64 { return set(s, w, size, false).Width }

// plainWidth measures text that needs no shaping: every character in the family, nothing from right to left, no marks.
func (f *faces) plainWidth(s string, w Weight, size float64) (float64, bool) {
	face, sum := f.plex[w], float64(0)
	for _, r := range s {
		g, ok := face.NominalGlyph(r)
		if !ok || r > 0xffff || unicode.Is(unicode.M, r) || rightToLeft(r) || r == '\u200c' || r == '\u200d' {
			return 0, false
		}
		sum += float64(face.HorizontalAdvance(g))
	}
	return sum * size / float64(face.Upem()), true
}

func rightToLeft(r rune) bool {
	p, _ := bidi.LookupRune(r)
	c := p.Class()
	return c == bidi.R || c == bidi.AL
}

// resolver picks the font of a character; joiners and marks stay with the face before them.
type resolver struct {
	*faces
	w    Weight
	last *font.Face
}

func (m *resolver) ResolveFace(r rune) *font.Face {
	if m.last != nil && (unicode.Is(unicode.M, r) || unicode.Is(unicode.Cf, r) || r == ' ') {
		if _, ok := m.last.NominalGlyph(r); ok {
			return m.last
		}
	}
	face := m.find(r, m.w)
	if face == nil {
		face = m.plex[m.w] // Clean leaves only joiners here, which are not drawn
	}
	m.last = face
	return face
}

// shaper shapes one line; outlines are left out where it is only measured.
type shaper struct {
	*faces
	hb       shaping.HarfbuzzShaper
	w        Weight
	size     float64
	outlines bool
}

func (sh *shaper) line(s string) Line {
	runes := []rune(s)
	base := di.DirectionLTR
	if baseRTL(runes) {
		base = di.DirectionRTL
	}
	var seg shaping.Segmenter
	in := shaping.Input{Text: runes, RunEnd: len(runes), Direction: base}
	parts := append([]shaping.Input(nil), seg.Split(in, &resolver{faces: sh.faces, w: sh.w})...)
	var line Line
	for _, i := range visual(parts, base == di.DirectionRTL) {
		run := sh.run(parts[i])
		run.X = line.Width
		line.Width += run.Width
		line.Runs = append(line.Runs, run)
	}
	return line
}

// baseRTL: a line reads from right to left when its first letter does.
func baseRTL(runes []rune) bool {
	for _, r := range runes {
		if unicode.IsLetter(r) {
			return rightToLeft(r)
		}
	}
	return false
}

func (sh *shaper) run(in shaping.Input) Run {
	text := string(in.Text[in.RunStart:in.RunEnd])
	if in.Face == sh.plex[sh.w] && in.Direction == di.DirectionLTR {
		if width, ok := sh.plainWidth(text, sh.w, sh.size); ok {
			return Run{Text: text, Width: width}
		}
	}
	in.Size = fixed.I(int(in.Face.Upem()))
	out := sh.hb.Shape(in)
	k := sh.size / float64(in.Face.Upem())
	run := Run{Text: text, Outline: []Segment{}}
	for _, g := range out.Glyphs {
		if sh.outlines {
			x := run.Width + float64(g.XOffset)/64*k
			run.Outline = appendGlyph(run.Outline, in.Face, g.GlyphID, x, -float64(g.YOffset)/64*k, k)
		}
		run.Width += float64(g.Advance) / 64 * k
	}
	return run
}
