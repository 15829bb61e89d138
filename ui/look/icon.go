package look

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2"
)

// Icon names one of the drawings that stand over the words of the rail.
type Icon string

// The icons, each a few strokes on a square of 24.
const (
	CounterIcon Icon = "counter"
	BookIcon    Icon = "book"
	BlanksIcon  Icon = "blanks"
	CardsIcon   Icon = "cards"
	ShopIcon    Icon = "shop"
)

var strokes = map[Icon]string{
	CounterIcon: `M3 10h18 M5 10v9h14v-9 M9 10V6h6v4 M9.5 14h5`,
	BookIcon:    `M6 3h12v18H6z M9.5 8h5 M9.5 12h5 M9.5 16h3`,
	BlanksIcon:  `M9 4c1 2 5 2 6 0l5 3-2 4-2-1v10H8V10l-2 1-2-4z`,
	CardsIcon:   `M3 5h18v14H3z M3 10h18 M9.5 10v9 M15 14.5h3`,
	ShopIcon:    `M4 10v10h16V10 M3 9l2-5h14l2 5 M3 9c0 3 4.5 3 4.5 0 0 3 4.5 3 4.5 0 0 3 4.5 3 4.5 0 0 3 4.5 3 4.5 0 M10 20v-5h4v5`,
}

// Drawing is the icon in a colour, as a resource to be shown. The resource's name holds the colour, because the toolkit
// remembers drawings by name.
func (i Icon) Drawing(c color.Color) fyne.Resource {
	r, g, b, _ := c.RGBA()
	hex := fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
	svg := `<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path d="` + strokes[i] +
		`" fill="none" stroke="` + hex + `" stroke-width="1.7" stroke-linecap="round" stroke-linejoin="round"/></svg>`
	return fyne.NewStaticResource(string(i)+hex+".svg", []byte(svg))
}
