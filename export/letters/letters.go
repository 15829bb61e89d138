// Package letters sets lines of text in the fonts that Pressworth carries: it measures them, breaks them, and says where
// every part of a line stands. What IBM Plex Sans has is set as text; other scripts are shaped (joined, reordered, right to left) and
// handed over as outlines, so that a name comes out right in any of them. A character that no font has is written as its code, like
// [U+1F3C5]: nothing is lost in silence.
//
// Lengths are points, y grows downwards. A Set line starts at x = 0 on the baseline y = 0.
//
// Not in this package: paper, pages, colours, and the writing of PDF.
package letters

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
	"unicode"

	"github.com/go-text/typesetting/font"
	"golang.org/x/text/unicode/norm"

	"pressworth/assets"
)

// Weight is one of the three weights of the family.
type Weight int

// The weights.
const (
	Regular Weight = iota
	Medium
	Semibold
)

// Data returns the TrueType file of a weight.
func (w Weight) Data() []byte {
	return [...][]byte{assets.PlexRegular, assets.PlexMedium, assets.PlexSemibold}[w]
}

// String is the weight's name.
func (w Weight) String() string { return [...]string{"regular", "medium", "semibold"}[w] }

// faces are the fonts, parsed. They keep caches, so a lock guards their use (see Set and Clean).
type faces struct{ plex [3]*font.Face }

var loaded = sync.OnceValue(func() *faces {
	f := &faces{}
	for w := range f.plex {
		f.plex[w] = parse(Weight(w).Data())
	}
	return f
})

// fallbacks are parsed when the family first lacks a character: most documents never need them.
var fallbacks = sync.OnceValue(func() (list []*font.Face) {
	for _, b := range assets.Fallbacks() {
		list = append(list, parse(b.Data))
	}
	return list
})

func parse(data []byte) *font.Face {
	face, err := font.ParseTTF(bytes.NewReader(data))
	if err != nil {
		panic("letters: embedded font: " + err.Error()) // the bytes are ours
	}
	return face
}

func (f *faces) find(r rune, w Weight) *font.Face {
	if _, ok := f.plex[w].NominalGlyph(r); ok {
		return f.plex[w]
	}
	for _, face := range fallbacks() {
		if _, ok := face.NominalGlyph(r); ok {
			return face
		}
	}
	return nil
}

// Clean makes text fit to be set on one line: composed (NFC), white space as single blanks, without controls and without
// the marks that turn the direction of what follows; characters that no font has as [U+code].
func Clean(s string) string {
	if plainASCII(s) {
		return s
	}
	setting.Lock()
	defer setting.Unlock()
	s = norm.NFC.String(strings.ToValidUTF8(s, "\ufffd"))
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\t' || r == '\n' || r == '\r' || r == '\u2028' || r == '\u2029':
			b.WriteByte(' ')
		case r == '\u200c' || r == '\u200d': // joiners: shaping needs them
			b.WriteRune(r)
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
		case loaded().find(r, Regular) == nil:
			fmt.Fprintf(&b, "[U+%04X]", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func plainASCII(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}
