package drawing

import (
	"fmt"
	"strconv"
)

// Check says, for each artwork, what is in its way on this garment: wider than the garment or its printable area, over a seam,
// a pocket, a zip or a placket. Both sides are looked at.
func Check(g Garment, arts []Art) []string {
	var list []string
	for _, side := range []Side{Front, Back} {
		g.Side = side
		b := newBody(g)
		for _, a := range arts {
			s := spotOf(b.kind, a)
			if s.side != side && !(s.side == "" && side == Front) || a.W <= 0 || a.H <= 0 {
				continue
			}
			f := b.frame(s, a)
			f.W, f.H = a.W, a.H
			for _, c := range b.complaints(s, a, f) {
				list = append(list, fmt.Sprintf("%s on size %s: %s", a.Name, sizeName(g.Size), c))
			}
		}
	}
	return list
}

func sizeName(s string) string {
	if s == "" {
		return "M"
	}
	return s
}

func inches(x float64) string { return strconv.FormatFloat(float64(int(x*4))/4, 'f', -1, 64) + " in" }

// complaints are about one artwork in its place.
func (b body) complaints(s spot, a Art, f Frame) []string {
	switch s.name {
	case "left sleeve", "right sleeve":
		return b.sleeveComplaints(a)
	case "hood", "nape", "hip", "cap left", "cap right":
		return nil
	}
	var list []string
	area := b.area()
	width := area.x1 - area.x0
	switch {
	case b.upper() && a.W > b.chest:
		list = append(list, fmt.Sprintf("%s wide is wider than the garment, %s", inches(a.W), inches(b.chest)))
	case a.W > width:
		list = append(list, fmt.Sprintf("%s wide is wider than the printable %s", inches(a.W), inches(width)))
	case f.CX+a.W/2 > b.chest/2 || f.CX-a.W/2 < -b.chest/2:
		list = append(list, "reaches over the side seam")
	}
	if f.CY+a.H/2 > area.y1 || a.H > area.y1-area.y0 {
		list = append(list, fmt.Sprintf("%s high reaches below the printable area", inches(a.H)))
	}
	for _, o := range b.obstacles() {
		if f.CX-a.W/2 < o.x1 && f.CX+a.W/2 > o.x0 && f.CY-a.H/2 < o.y1 && f.CY+a.H/2 > o.y0 {
			list = append(list, "runs over the "+o.name)
		}
	}
	return list
}

func (b body) sleeveComplaints(a Art) []string {
	if !b.upper() || b.kind == tank {
		return []string{"there is no sleeve"}
	}
	width := dist(b.cuffTop, b.cuffIn) - 1*b.k
	length := dist(b.shoulder, b.cuffTop) - 3*b.k
	var list []string
	if !b.short() {
		width = 0.19*b.chest + 0.4
	}
	if a.W > width {
		list = append(list, fmt.Sprintf("%s across the sleeve is wider than its flat %s: over the seam", inches(a.W), inches(width)))
	}
	if a.H > length {
		list = append(list, fmt.Sprintf("%s along the sleeve is longer than its printable %s", inches(a.H), inches(length)))
	}
	return list
}
