package drawing

import (
	"bytes"
	"fmt"
	"strconv"
)

// pixels are 96 to the inch in SVG, where no unit is named.
const pixels = 96

// SVG writes a picture as an SVG file of its true size: filled paths and nothing else, so that the simplest reader draws it alike at any
// size.
func SVG(p Picture) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %[1]s %[2]s">`+"\n",
		num(p.W*pixels), num(p.H*pixels))
	for _, s := range p.Outlined() {
		s.Path = s.Path.Map(func(q Point) Point { return Point{q.X * pixels, q.Y * pixels} })
		fmt.Fprintf(&b, `<path fill="%s"`, s.Fill)
		if s.Alpha() < 1 {
			fmt.Fprintf(&b, ` fill-opacity="%s"`, num(s.Alpha()))
		}
		fmt.Fprintf(&b, ` d="%s"/>`+"\n", PathData(s.Path))
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// num writes a length with at most three places.
func num(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// PathData writes a path as an SVG path's d attribute.
func PathData(p Path) string {
	var b bytes.Buffer
	for _, s := range p {
		b.WriteByte(s.Op)
		for i, q := range s.P[:s.Points()] {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(num(q.X) + " " + num(q.Y))
		}
	}
	return b.String()
}
