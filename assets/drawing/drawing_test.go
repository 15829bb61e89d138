package drawing

import (
	"encoding/xml"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var (
	categories = []string{"tee", "long sleeve", "hoodie", "zip hoodie", "crew", "polo", "tank", "cap", "tote", "youth tee"}
	sizes      = []string{"XS", "S", "M", "L", "XL", "2XL", "5XL", "YS", "YM", "YXL", "2T", "5T", "OS", "", "no such size"}
)

func TestDraw_everythingStaysOnItsPaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Garment{
			Category: rapid.SampledFrom(categories).Draw(t, "category"), Size: rapid.SampledFrom(sizes).Draw(t, "size"),
			Side: rapid.SampledFrom([]Side{Front, Back, ""}).Draw(t, "side"), Color: rapid.SampledFrom([]string{"#000000", "#ffffff", "#22335c", "", "red"}).Draw(t, "color"),
		}
		arts := []Art{{
			Name: rapid.SampledFrom([]string{"Full back", "Left chest", "Sleeve", "Hood", "Number", ""}).Draw(t, "name"),
			W:    rapid.Float64Range(-1, 40).Draw(t, "w"), H: rapid.Float64Range(-1, 40).Draw(t, "h"), Text: rapid.String().Draw(t, "text"),
			Inks: rapid.SliceOfN(rapid.SampledFrom([]string{"white", "gold", "odd", "#123456"}), 0, 7).Draw(t, "inks"),
		}}
		p := Draw(g, arts)
		for _, s := range p.Shapes {
			x0, y0, x1, y1 := s.Path.Box()
			if !(x0 >= 0 && y0 >= 0 && x1 <= p.W && y1 <= p.H) {
				t.Fatalf("%+v: a shape reaches %.2f %.2f %.2f %.2f on paper of %.2f × %.2f", g, x0, y0, x1, y1, p.W, p.H)
			}
		}
		Check(g, arts)
	})
}

// area is what a path covers, by the shoelace formula over its straight pieces: a check that shares no code with drawing a rectangle.
func area(p Path) float64 {
	sum := 0.0
	for _, line := range flatten(p) {
		for i := 1; i < len(line); i++ {
			sum += line[i-1].X*line[i].Y - line[i].X*line[i-1].Y
		}
	}
	return math.Abs(sum / 2)
}

func TestDraw_artworkIsToScaleHoweverItIsTurned(t *testing.T) {
	for _, name := range []string{"Full back", "Sleeve", "Nape"} {
		p := Draw(Garment{Category: "long sleeve", Size: "M", Side: Back}, []Art{{Name: name, W: 3, H: 10}})
		found := false
		for _, s := range p.Shapes {
			found = found || len(s.Dash) > 0 && math.Abs(area(s.Path)-30) < 0.001
		}
		if !found || len(p.Frames) != 1 {
			t.Errorf("%s: no dashed frame of 3 × 10 = 30 square inches", name)
		}
	}
}

func TestDraw_largerSizesAreLarger(t *testing.T) {
	for _, c := range []string{"tee", "hoodie", "polo", "tank", "long sleeve"} {
		before := Picture{}
		for _, size := range []string{"2T", "YS", "YL", "M", "XL", "3XL"} {
			p := Draw(Garment{Category: c, Size: size}, nil)
			if p.W <= before.W || p.H <= before.H {
				t.Errorf("%s %s: %.1f × %.1f is no larger than the size before, %.1f × %.1f", c, size, p.W, p.H, before.W, before.H)
			}
			before = p
		}
	}
}

func TestSides_showEveryArtwork(t *testing.T) {
	for _, c := range []struct {
		category string
		names    []string
		want     string
	}{
		{"tee", nil, "front"},
		{"tee", []string{"Left chest"}, "front"},
		{"tee", []string{"Full back"}, "back"},
		{"tee", []string{"Left chest", "Full back"}, "front back"},
		{"tee", []string{"Full back", "Sleeve"}, "back"},
		{"tee", []string{"Sleeve"}, "front"},
		{"cap", []string{"Cap front", "Cap back"}, "front back"},
		{"hoodie", []string{"Hood"}, "back"},
		{"tee", []string{"Nape"}, "back"},
		{"tank", []string{"Name", "Number"}, "back"},
		{"tank", []string{"Number front"}, "front"},
	} {
		var arts []Art
		for _, n := range c.names {
			arts = append(arts, Art{Name: n, W: 3, H: 3})
		}
		var got []string
		seen := 0
		for _, s := range Sides(c.category, arts) {
			got = append(got, string(s))
			seen += len(Draw(Garment{Category: c.category, Side: s}, arts).Frames)
		}
		if strings.Join(got, " ") != c.want || seen < len(arts) {
			t.Errorf("%s with %v: got sides %v with %d artworks seen, want %s", c.category, c.names, got, seen, c.want)
		}
	}
}

func TestCheck_saysWhatIsInTheWay(t *testing.T) {
	for _, c := range []struct {
		category, size string
		art            Art
		want           string // empty: nothing to say
	}{
		{"youth tee", "YS", Art{Name: "Full front", W: 12, H: 10}, "wider than the printable"},
		{"tee", "M", Art{Name: "Full front", W: 12, H: 10}, ""},
		{"tee", "2T", Art{Name: "Full front", W: 12.5, H: 8}, "wider than the garment"},
		{"hoodie", "M", Art{Name: "Full front", W: 11, H: 15}, "over the pocket"},
		{"zip hoodie", "M", Art{Name: "Full front", W: 11, H: 6}, "over the zip"},
		{"zip hoodie", "M", Art{Name: "Left chest", W: 3.5, H: 3}, ""},
		{"long sleeve", "M", Art{Name: "Sleeve", W: 3, H: 10}, ""},
		{"long sleeve", "M", Art{Name: "Sleeve", W: 6, H: 10}, "over the seam"},
		{"tee", "M", Art{Name: "Sleeve", W: 3, H: 14}, "longer than"},
		{"tank", "M", Art{Name: "Sleeve", W: 3, H: 3}, "no sleeve"},
		{"cap", "OS", Art{Name: "Cap front", W: 4.25, H: 2.25}, ""},
		{"cap", "OS", Art{Name: "Cap front", W: 6, H: 2.25}, "wider than the printable"},
		{"tee", "S", Art{Name: "Full back", W: 11, H: 26}, "below the printable area"},
	} {
		got := strings.Join(Check(Garment{Category: c.category, Size: c.size}, []Art{c.art}), "; ")
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s %s, %s %v × %v: got %q, want %q", c.category, c.size, c.art.Name, c.art.W, c.art.H, got, c.want)
		}
	}
}

func TestDraw_aDistanceInThePositionIsKept(t *testing.T) {
	top := func(position string) float64 {
		return Draw(Garment{Category: "tee", Side: Back}, []Art{{Name: "Full back", Position: position, W: 10, H: 4}}).Frames[0].CY
	}
	if got := top("6 in below the collar") - top("2 in below the collar"); math.Abs(got-4) > 1e-9 {
		t.Errorf("6 in lies %.3f in under 2 in, want 4", got)
	}
	if got := top("50.8 mm below the collar") - top("2 in below the collar"); math.Abs(got) > 1e-9 {
		t.Errorf("50.8 mm lies %.3f in from 2 in, want the same place", got)
	}
}

func TestSVG_isWellFormedAndOfTrueSize(t *testing.T) {
	for _, c := range categories {
		p := Draw(Garment{Category: c, Color: "#22335c"}, []Art{{Name: "Full front", W: 4, H: 3, Inks: []string{"gold"}}})
		var doc struct {
			Width string `xml:"width,attr"`
			Paths []struct {
				D    string `xml:"d,attr"`
				Fill string `xml:"fill,attr"`
			} `xml:"path"`
		}
		if err := xml.Unmarshal(SVG(p), &doc); err != nil {
			t.Fatalf("%s: %v", c, err)
		}
		if want := num(p.W * 96); doc.Width != want || len(doc.Paths) < 10 {
			t.Errorf("%s: got width %s and %d paths, want %s (96 to the inch) and a drawing", c, doc.Width, len(doc.Paths), want)
		}
	}
}

func TestImage_coversAsManyDotsAsTheRectangleHas(t *testing.T) {
	img := Image(Picture{W: 10, H: 10, Shapes: []Shape{{Path: Rect(1, 2, 5, 3), Fill: "#c8202f"}}}, 10)
	n := 0
	for i := 3; i < len(img.Pix); i += 4 {
		if img.Pix[i] == 255 {
			n++
		}
	}
	if n != 1500 {
		t.Errorf("got %d solid dots, want 50 × 30 = 1500", n)
	}
}

func TestInkColor_knowsThePlainNames(t *testing.T) {
	for _, ink := range []string{"white", "Navy", " gold ", "PMS red", "#A1b2C3"} {
		if _, ok := InkColor(ink); !ok {
			t.Errorf("%q has no colour", ink)
		}
	}
	if hex, ok := InkColor("flux"); ok || hex != "#8b9096" {
		t.Errorf("an ink of no known colour is %s %v, want a grey, not known", hex, ok)
	}
}

func BenchmarkImage(b *testing.B) {
	p := Draw(Garment{Category: "long sleeve", Size: "M", Side: Back, Color: "#22335c"}, []Art{{Name: "Full back", W: 11, H: 8.5, Inks: []string{"white", "gold"}}})
	for b.Loop() {
		Image(p, 10)
	}
}
