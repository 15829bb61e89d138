// Package sizes knows the sizes of garments: their order on a rack, and the shorthand in which a size run is typed.
//
// Not in this package: which sizes a style comes in, and what they cost.
package sizes

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Classes of sizes in the order of a rack: small people first, what fits everybody last.
const (
	infant = iota
	toddler
	youth
	adult
	tall
	numbered
	other
	oneSize
)

var (
	months    = regexp.MustCompile(`^(NB|[0-9]{1,2}M)$`)
	years     = regexp.MustCompile(`^[2-7]T$`)
	letters   = regexp.MustCompile(`^(Y?)(?:([2-9])?(X*)([SL])|(M))(T?)$`)
	figure    = regexp.MustCompile(`^[0-9]{1,4}`)
	oneForAll = map[string]bool{"OS": true, "OSFA": true, "OSFM": true, "O/S": true, "ONE SIZE": true}
)

// Normal writes a size as the list of sizes does: XXL as 2XL, one size as OS, letters in capitals.
func Normal(size string) string {
	s := strings.ToUpper(strings.Join(strings.Fields(size), " "))
	if oneForAll[s] {
		return "OS"
	}
	m := letters.FindStringSubmatch(s)
	if m == nil || len(m[3]) < 2 || m[2] != "" || len(m[3]) > 9 {
		return s
	}
	return m[1] + strconv.Itoa(len(m[3])) + "X" + m[4] + m[6]
}

// place is where a size stands: by class, then by step within it.
func place(size string) (class, step int) {
	s := Normal(size)
	switch m := letters.FindStringSubmatch(s); {
	case s == "OS":
		return oneSize, 0
	case months.MatchString(s):
		n, _ := strconv.Atoi(strings.TrimSuffix(s, "M"))
		return infant, n
	case years.MatchString(s):
		return toddler, int(s[0])
	case m != nil && lettered(m):
		return letterClass(m), letterStep(m)
	}
	if d := figure.FindString(s); d != "" {
		n, _ := strconv.Atoi(d)
		return numbered, n
	}
	return other, 0
}

// lettered tells whether the parts of a letter size make one: 2XL does, 2L and YMT do not.
func lettered(m []string) bool {
	return (m[2] == "" || m[3] == "X") && (m[1] == "" || m[6] == "")
}

func letterClass(m []string) int {
	switch {
	case m[1] != "":
		return youth
	case m[6] != "":
		return tall
	}
	return adult
}

// letterStep counts from M: S is -1, XS -2, L 1, XL 2, 2XL 3.
func letterStep(m []string) int {
	if m[5] != "" {
		return 0
	}
	n := len(m[3])
	if m[2] != "" {
		n, _ = strconv.Atoi(m[2])
	}
	if m[4] == "S" {
		return -1 - n
	}
	return 1 + n
}

// Child tells whether a size is one of infants, toddlers or youth.
func Child(size string) bool {
	class, _ := place(size)
	return class <= youth
}

// Less tells whether size a hangs before size b: infants', toddlers', youth, adult from XS to 6XL, tall, numbered sizes,
// other names by the alphabet, one size last.
func Less(a, b string) bool { return compare(a, b) < 0 }

func compare(a, b string) int {
	ca, sa := place(a)
	cb, sb := place(b)
	return cmp.Or(cmp.Compare(ca, cb), cmp.Compare(sa, sb), cmp.Compare(Normal(a), Normal(b)), cmp.Compare(a, b))
}

// Sort puts sizes in their order.
func Sort(sizes []string) { slices.SortStableFunc(sizes, compare) }

// Known tells whether a size is one of the usual ones: letters from toddlers' to tall, or one size.
func Known(size string) bool {
	class, _ := place(size)
	return class != other && class != numbered
}
