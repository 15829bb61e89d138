package artwork

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"
)

// Whatever a file holds, it is looked at or refused: never a picture without size, never one past the limits.
func FuzzRead(f *testing.F) {
	dot := image.NewNRGBA(image.Rect(0, 0, 3, 2))
	dot.Set(1, 1, color.NRGBA{R: 200, A: 255})
	var small bytes.Buffer
	if err := png.Encode(&small, dot); err != nil {
		f.Fatal(err)
	}
	for _, s := range []string{
		small.String(), small.String()[:40], "\xff\xd8\xff\xe0\x00\x10JFIF", "",
		`<svg viewBox="0 0 10 10"><path d="M1 1L9 9" stroke="#f00"/></svg>`,
		`<svg viewBox="0 0 10 10"><defs><g id="a"><use href="#a"/></g></defs><use href="#a"/></svg>`,
		`<svg viewBox="0 0 1e308 1e-308"><circle cx="5" cy="5" r="4" fill="#00f"/></svg>`,
		`<svg viewBox="0 0 10 10"><path d="M0 0L9 9" stroke="#000" stroke-dasharray="1e-9"/></svg>`,
		`<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><svg viewBox="0 0 1 1"><text>&b;</text></svg>`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := Read(data)
		if err != nil {
			return
		}
		if p.Width <= 0 || p.Height <= 0 || p.Width*p.Height > mostPixels || p.Image == nil || len(p.Inks) > mostInks {
			t.Errorf("%d × %d, %d inks", p.Width, p.Height, len(p.Inks))
		}
	})
}
