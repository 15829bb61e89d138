package present

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"

	"pressworth/catalog"
)

// mostLetters is the longest text that is printed, as the engine has it.
const mostLetters = 200

// unprintable says what keeps a text from being printed: control characters, scripts written from right to left, which the
// lettering would set the wrong way round, and characters that it lacks.
func unprintable(text string) string {
	if said := control(text); said != "" {
		return said
	}
	for _, r := range text {
		switch {
		case unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana):
			return "written from right to left: order this name as artwork"
		case !lettered(r):
			return fmt.Sprintf("the lettering has no “%c”: spell it otherwise, or order it as artwork", r)
		}
	}
	if utf8.RuneCountInString(text) > mostLetters {
		return fmt.Sprintf("too long: at most %d characters", mostLetters)
	}
	return ""
}

// control says where a text holds what nobody sees: control characters, and marks that turn the direction of writing.
func control(text string) string {
	for _, r := range text {
		if unicode.IsControl(r) || r == utf8.RuneError || r >= 0x200b && r <= 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0xfeff {
			return "a character here cannot be printed: type it again"
		}
	}
	return ""
}

// lettered says whether block lettering has a character: Latin, Greek and Cyrillic with their accents, figures, and the
// marks that stand in names.
func lettered(r rune) bool {
	return unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Mn) || r >= '0' && r <= '9' || strings.ContainsRune(" -–'’‘.,&/()!?+#\"“”*°", r)
}

// smallLetters names those whose names are in small letters where most are in capitals.
func smallLetters(people []catalog.DraftPerson) []string {
	var small []string
	capital := 0
	for _, p := range people {
		switch name := strings.TrimSpace(p.Name); {
		case name == "":
		case strings.ToUpper(name) == name:
			capital++
		case !contains(small, name):
			small = append(small, name)
		}
	}
	if len(small) == 0 || capital <= len(small) {
		return nil
	}
	return []string{"Not in capitals like the others: " + list(atMost(4, small)) + "."}
}

// narrowed names the texts that are wider than their placement allows: they are printed narrower.
func (c *Counter) narrowed() []string {
	var out []string
	for _, p := range c.draft.Placements {
		width, ok1 := new(big.Rat).SetString(p.Width)
		char, ok2 := new(big.Rat).SetString(p.CharWidth)
		if p.Letters == "" || !ok1 || !ok2 || char.Sign() <= 0 {
			continue
		}
		q := new(big.Rat).Quo(width, char)
		room := new(big.Int).Quo(q.Num(), q.Denom()).Int64()
		var wide []string
		seen := map[string]bool{}
		for _, t := range p.Texts {
			if int64(utf8.RuneCountInString(t.Text)) > room && !seen[t.Text] {
				seen[t.Text] = true
				wide = append(wide, t.Text)
			}
		}
		if len(wide) > 0 {
			out = append(out, fmt.Sprintf("Narrowed to fit %s in: %s.", p.Width, list(atMost(4, wide))))
		}
	}
	return out
}
