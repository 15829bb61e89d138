package catalog

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"pressworth/quote"
)

// Letter is how the shop writes when it sends a quote by e-mail. Words in braces stand for what the quote says, one of
// LetterWords; a line of which one says nothing is left out.
type Letter struct {
	Subject string `json:"subject"`
	Before  string `json:"before"` // above the quote in plain words
	After   string `json:"after"`  // below it
}

// LetterWords are what may stand in braces in a Letter: the customer's contact or name, the quote's number, title and
// total, the last day on which it holds, and the shop's name.
var LetterWords = []string{"customer", "number", "title", "total", "valid until", "shop"}

// DefaultLetter is that of a new shop.
func DefaultLetter() Letter {
	return Letter{
		Subject: "Quote {number} · {title}",
		Before:  "Hello {customer},\n\nhere is the quote you asked for. It is attached as a PDF as well.",
		After:   "Kind regards\n{shop}",
	}
}

const (
	longestSubject = 150  // characters, so that it stays one line of a message
	longestLetter  = 4000 // of the text above, and of that below
)

var braced = regexp.MustCompile(`\{([^{}]*)\}`)

// Check names what is wrong with a letter, by the fields' paths.
func (l Letter) Check() (problems []quote.Problem) {
	say := func(path, problem string) {
		problems = append(problems, quote.Problem{Path: "letter." + path, Problem: problem})
	}
	if strings.ContainsFunc(l.Subject, func(r rune) bool { return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' }) {
		say("subject", "a subject is one line: take the line breaks out")
	}
	if strings.TrimSpace(l.Subject) == "" {
		say("subject", "enter a subject, like Quote {number}")
	}
	for _, f := range []struct {
		path, text string
		longest    int
	}{{"subject", l.Subject, longestSubject}, {"before", l.Before, longestLetter}, {"after", l.After, longestLetter}} {
		if n := len([]rune(f.text)); n > f.longest {
			say(f.path, fmt.Sprintf("%d characters, at most %d", n, f.longest))
		}
		for _, w := range braced.FindAllStringSubmatch(f.text, -1) {
			if !slices.Contains(LetterWords, w[1]) {
				say(f.path, fmt.Sprintf("nothing is known by %s: use {%s}", w[0], strings.Join(LetterWords, "}, {")))
			}
		}
	}
	return problems
}
