package sizes

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// usual are the names that are known where no sizes are at hand, and the other spellings where there are.
var usual = usualNames()

func usualNames() []string {
	names := []string{
		"NB", "6M", "12M", "18M", "24M", "2T", "3T", "4T", "5T", "6T", "7T", "M", "YM", "MT",
		"OS", "OSFA", "OSFM", "O/S", "ONE SIZE",
	}
	for _, end := range []string{"S", "L"} {
		for _, x := range []string{"", "X", "XX", "XXX", "XXXX", "XXXXX", "XXXXXX", "2X", "3X", "4X", "5X", "6X", "7X", "8X", "9X"} {
			names = append(names, x+end, "Y"+x+end, x+end+"T")
		}
	}
	return names
}

// named reads sizes with their quantities behind them.
func (p *parser) named(text string) {
	names := slices.Concat(p.run, usual)
	slices.SortStableFunc(names, func(a, b string) int { return len(b) - len(a) })
	for {
		text = strings.TrimLeftFunc(text, separators)
		if text == "" {
			return
		}
		name, quantity, rest, ok := entry(text, names)
		if !ok {
			text = p.notRead(text, names)
			continue
		}
		if size, ok := p.size(name); ok {
			p.add(size, quantity)
		}
		text = rest
	}
}

// entry takes the longest name off the text that has a quantity behind it.
func entry(text string, names []string) (name, quantity, rest string, ok bool) {
	for _, n := range names {
		behind, found := cutFold(text, n)
		if !found || n == "" {
			continue
		}
		digits := strings.TrimLeft(behind, " \t:=*×")
		end := len(digits) - len(strings.TrimLeft(digits, "0123456789"))
		apart := len(digits) < len(behind) || !unicode.IsDigit(lastRune(n))
		if end > 0 && apart && endsHere(digits[end:]) {
			return n, digits[:end], digits[end:], true
		}
	}
	return "", "", text, false
}

// endsHere tells whether a quantity may end where text begins: "S12M24" is read, "S1.5" and "S12/3" are not.
func endsHere(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return text == "" || separators(r) || unicode.IsLetter(r)
}

// cutFold takes a name off the beginning of the text, in capitals or not.
func cutFold(text, name string) (string, bool) {
	if len(text) < len(name) || !strings.EqualFold(text[:len(name)], name) {
		return text, false
	}
	return text[len(name):], true
}

func lastRune(s string) rune { r, _ := utf8.DecodeLastRuneInString(s); return r }

// notRead says what is wrong with the first word of the text and gives the rest.
func (p *parser) notRead(text string, names []string) string {
	word, rest := text, ""
	if i := strings.IndexFunc(text, separators); i >= 0 {
		word, rest = text[:i], text[i:]
	}
	known := func(n string) bool { return strings.EqualFold(n, word) }
	switch {
	case slices.ContainsFunc(names, known):
		p.fail("%s: how many? Write the quantity behind the size, like %s12", clip(word), clip(word))
	case len(p.run) > 0:
		p.fail("%s is not read: write a size and how many, like %s12; sizes here: %s", clip(word), p.run[0], p.list())
	default:
		p.fail("%s is not read: write a size and how many, like S12 or 2XL6", clip(word))
	}
	return rest
}
