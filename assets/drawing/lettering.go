package drawing

import "unicode"

// glyphs are block letters on a grid 4 wide and 6 high, as strokes: each string is one stroke of points "xy". They are for
// drawings of names and numbers, not for print.
var glyphs = map[rune][]string{
	'A': {"0601103041460", "0343"}, 'B': {"06003041324303", "3243453606"}, 'C': {"4130100105163645"}, 'D': {"003041453606", "0006"},
	'E': {"40000646", "0333"}, 'F': {"400006", "0333"}, 'G': {"413010010516364543", "2343"}, 'H': {"0006", "4046", "0343"},
	'I': {"1030", "2026", "1636"}, 'J': {"4045361605"}, 'K': {"0006", "400346"}, 'L': {"000646"}, 'M': {"0600234046"}, 'N': {"06004640"},
	'O': {"103041453616050110"}, 'P': {"06003041423303"}, 'Q': {"103041453616050110", "2446"}, 'R': {"06003041423303", "2346"},
	'S': {"413010010213334445361605"}, 'T': {"0040", "2026"}, 'U': {"000516364540"}, 'V': {"002640"}, 'W': {"0016233640"},
	'X': {"0046", "4006"}, 'Y': {"002340", "2326"}, 'Z': {"00400646"},
	'0': {"103041453616050110"}, '1': {"112026", "1636"}, '2': {"0110304142060646"}, '3': {"0040223243453616050"}, '4': {"36300444"},
	'5': {"4000023243453616050"}, '6': {"413010010516364544331304"}, '7': {"004016"}, '8': {"1030414233130201101", "13041505163645443313"},
	'9': {"0516364541301001021333"}, '-': {"1333"}, '.': {"2626"}, '\'': {"2021"},
}

// lettering draws a text in block letters that fill the frame; letters that the grid has not are shown as open boxes.
func (p *pen) lettering(a Art, f Frame) {
	runes := []rune(a.Text)
	color := p.inkHexes(a)[0]
	if near(color, p.color) {
		color = p.tone.mark
	}
	pitch := 5.6 // of the grid, letter and space
	grid := float64(len(runes))*pitch - 1.6
	sx, sy := f.W*0.94/max(grid, 4), f.H*0.86/6
	sx = min(sx, sy*1.15)
	x0 := f.CX - grid*sx/2
	for i, r := range runes {
		if r == ' ' {
			continue
		}
		strokes, ok := glyphs[unicode.ToUpper(r)]
		if !ok {
			strokes = []string{"0040460600"}
		}
		for _, s := range strokes {
			path := stroke(s, x0+float64(i)*pitch*sx, f.CY-3*sy, sx, sy).turned(f.Angle, f.CX, f.CY)
			p.add(Shape{Path: path, Stroke: color, Width: min(sx, sy) * 0.95})
		}
	}
}

func stroke(s string, x, y, sx, sy float64) Path {
	var p Path
	for i := 0; i+1 < len(s); i += 2 {
		px, py := x+float64(s[i]-'0')*sx, y+float64(s[i+1]-'0')*sy
		if i == 0 {
			p.MoveTo(px, py)
		} else {
			p.LineTo(px, py)
		}
	}
	return p
}
