package parts

import (
	"bytes"
	"testing"
	"unicode"

	"github.com/go-text/typesetting/font"

	"pressworth/ui/look"
)

func TestStyle_whatIsWesternIsInTheFamily(t *testing.T) {
	face, err := font.ParseTTF(bytes.NewReader(look.SemiboldFont().Content()))
	if err != nil {
		t.Fatal(err)
	}
	for r := rune(0); r < 0x3000; r++ {
		if !unicode.IsPrint(r) || !western(string(r)) {
			continue
		}
		if _, ok := face.NominalGlyph(r); !ok {
			t.Errorf("%U %c counts as western, and the family does not have it", r, r)
		}
	}
	if western("Привет") || western("Łódź 北京") {
		t.Error("got western for texts that need another font")
	}
}
