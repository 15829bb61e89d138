package pricefile

import (
	"bytes"
	"io"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

const utf8BOM = "\xEF\xBB\xBF"

// utf16Kind tells whether a text is in UTF-16, by its byte order mark or by every other byte of it being zero.
func utf16Kind(head []byte) (big, ok bool) {
	switch {
	case bytes.HasPrefix(head, []byte{0xFE, 0xFF}):
		return true, true
	case bytes.HasPrefix(head, []byte{0xFF, 0xFE}):
		return false, true
	}
	var zeros [2]int
	n := min(len(head), 2000)
	for i, b := range head[:n] {
		if b == 0 {
			zeros[i%2]++
		}
	}
	return zeros[0] > zeros[1], n > 4 && max(zeros[0], zeros[1]) > n/3 && min(zeros[0], zeros[1]) < n/20
}

// utf16Reader turns UTF-16 into UTF-8; a lone half of a pair becomes U+FFFD.
type utf16Reader struct {
	r    io.Reader
	big  bool
	raw  []byte // not yet decoded: less than a character
	text []byte // decoded, not yet given out
	err  error
}

// Read implements io.Reader.
func (u *utf16Reader) Read(p []byte) (int, error) {
	for len(u.text) == 0 {
		if u.err != nil {
			return 0, u.err
		}
		var chunk [8192]byte
		n, err := u.r.Read(chunk[:])
		u.raw = append(u.raw, chunk[:n]...)
		u.err = err
		if err == io.EOF && len(u.raw)%2 != 0 {
			u.err = io.ErrUnexpectedEOF // half a character at the end: the file was cut off
		}
		u.decode(err != nil)
	}
	n := copy(p, u.text)
	u.text = u.text[n:]
	return n, nil
}

func (u *utf16Reader) decode(last bool) {
	u.text = u.text[:0]
	i := 0
	for ; i+2 <= len(u.raw); i += 2 {
		r := u.unit(i)
		if utf16.IsSurrogate(r) {
			if i+4 > len(u.raw) && !last {
				break
			}
			pair := rune(utf8.RuneError)
			if i+4 <= len(u.raw) {
				pair = utf16.DecodeRune(r, u.unit(i+2))
			}
			if pair != utf8.RuneError {
				i += 2
			}
			r = pair
		}
		u.text = utf8.AppendRune(u.text, r)
	}
	u.raw = append(u.raw[:0], u.raw[i:]...)
}

func (u *utf16Reader) unit(i int) rune {
	if u.big {
		return rune(u.raw[i])<<8 | rune(u.raw[i+1])
	}
	return rune(u.raw[i+1])<<8 | rune(u.raw[i])
}

func decodeHead(head []byte, big bool) []byte {
	u := utf16Reader{big: big, raw: append([]byte(nil), head...)}
	u.decode(false)
	return u.text
}

// windows1252 is what the bytes 0x80 to 0x9F stand for there; 0: nothing. Source: the WHATWG Encoding Standard, from memory.
var windows1252 = [32]rune{
	0x20AC, 0, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0, 0x017D, 0,
	0, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0, 0x017E, 0x0178,
}

// readable gives a text as UTF-8: what is not valid is taken for Windows-1252.
func readable(s string) string {
	if utf8.ValidString(s) {
		return s
	}
	var b strings.Builder
	for i := range len(s) {
		c := rune(s[i])
		if c >= 0x80 && c < 0xA0 {
			if c = windows1252[c-0x80]; c == 0 {
				c = utf8.RuneError
			}
		}
		b.WriteRune(c)
	}
	return b.String()
}
