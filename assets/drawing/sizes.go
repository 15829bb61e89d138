package drawing

import "strings"

// kind is what a category is drawn as.
type kind int

const (
	tee kind = iota
	longSleeve
	hoodie
	zipHoodie
	crew
	polo
	tank
	cap
	tote
)

// words decide the kind of a category; the first that is found counts.
var words = []struct {
	word string
	kind kind
}{
	{"zip", zipHoodie},
	{"hood", hoodie},
	{"crew sweat", crew},
	{"crewneck", crew},
	{"crew", crew},
	{"sweatshirt", crew},
	{"fleece", crew},
	{"jacket", crew},
	{"pullover", crew},
	{"polo", polo},
	{"tank", tank},
	{"singlet", tank},
	{"cap", cap},
	{"hat", cap},
	{"visor", cap},
	{"beanie", cap},
	{"tote", tote},
	{"bag", tote},
	{"apron", tote},
	{"long sleeve", longSleeve},
	{"long-sleeve", longSleeve},
	{"longsleeve", longSleeve},
}

func kindOf(category string) kind {
	c := strings.ToLower(category)
	for _, w := range words {
		if strings.Contains(c, w.word) {
			return w.kind
		}
	}
	return tee
}

// measure is a garment laid flat: the chest from armpit to armpit, and the length from the highest point of the
// shoulder to the hem, in inches.
type measure struct{ chest, length float64 }

// Size charts, common practice, no source.
var (
	adultTee = map[string]measure{
		"XS": {16.5, 27}, "S": {18, 28}, "M": {20, 29}, "L": {22, 30}, "XL": {24, 31}, "2XL": {26, 32}, "3XL": {28, 33}, "4XL": {30, 34},
		"5XL": {32, 35}, "6XL": {34, 36},
	}
	adultFleece = map[string]measure{
		"XS": {18, 26}, "S": {20, 27}, "M": {22, 28}, "L": {24, 29}, "XL": {26, 30}, "2XL": {28, 31}, "3XL": {30, 32}, "4XL": {32, 33},
		"5XL": {34, 34}, "6XL": {36, 35},
	}
	youthTee = map[string]measure{
		"YXS": {15, 19.5}, "YS": {16, 20.5}, "YM": {17, 22}, "YL": {18, 23.5}, "YXL": {19, 25},
		"2T": {12, 15.5}, "3T": {13, 16.5}, "4T": {14, 17.5}, "5T": {15, 18.5},
		"6M": {9.5, 11.5}, "12M": {10.5, 12.5}, "18M": {11, 13.5}, "24M": {11.5, 14.5},
	}
)

var sizeNames = map[string]string{
	"XXL": "2XL", "XXXL": "3XL", "SM": "S", "SMALL": "S", "MD": "M", "MED": "M", "MEDIUM": "M", "LG": "L", "LARGE": "L", "X": "XL",
}

// measureOf looks a size up. Names that begin with Y, or end with T or M after a figure, are a child's whatever the
// category; a youth category reads S as YS.
func measureOf(k kind, category, size string) measure {
	switch k {
	case cap:
		return measure{7.4, 7.2}
	case tote:
		return measure{15, 16}
	}
	s := strings.ToUpper(strings.TrimSpace(size))
	if full, ok := sizeNames[s]; ok {
		s = full
	}
	youth := isYouth(category)
	if _, ok := youthTee["Y"+s]; youth && ok {
		s = "Y" + s
	}
	if m, ok := youthTee[s]; ok {
		return fleeced(k, m)
	}
	chart := adultTee
	if k == hoodie || k == zipHoodie || k == crew {
		chart = adultFleece
	}
	if m, ok := chart[s]; ok {
		return m
	}
	if youth {
		return fleeced(k, youthTee["YM"])
	}
	return chart["M"]
}

func isYouth(category string) bool {
	c := strings.ToLower(category)
	for _, word := range []string{"youth", "kid", "child", "toddler", "infant", "baby"} {
		if strings.Contains(c, word) {
			return true
		}
	}
	return false
}

// fleeced widens a child's tee to a child's sweatshirt.
func fleeced(k kind, m measure) measure {
	if k == hoodie || k == zipHoodie || k == crew {
		m.chest++
	}
	return m
}
