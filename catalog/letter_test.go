package catalog

import (
	"strings"
	"testing"
)

func TestLetter_checkSaysWhatIsWrong(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Letter)
		want   string
	}{
		"the usual one":          {func(*Letter) {}, ""},
		"a subject of two lines": {func(l *Letter) { l.Subject = "Quote\r\nBcc: all@club.example" }, "letter.subject: a subject is one line"},
		"a line separator":       {func(l *Letter) { l.Subject = "Quote\u2028two" }, "letter.subject: a subject is one line"},
		"no subject":             {func(l *Letter) { l.Subject = " " }, "letter.subject: enter a subject"},
		"an unknown word":        {func(l *Letter) { l.After = "see {margin}" }, "letter.after: nothing is known by {margin}: use {customer}, {number}"},
		"a very long text":       {func(l *Letter) { l.Before = strings.Repeat("long ", 1000) }, "letter.before: 5000 characters, at most 4000"},
		"braces left open":       {func(l *Letter) { l.Before = "see {number" }, ""},
	} {
		l := DefaultLetter()
		c.change(&l)
		got := ""
		for _, p := range l.Check() {
			got += p.Path + ": " + p.Problem
		}
		if !strings.HasPrefix(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%s: got %q, want %q", name, got, c.want)
		}
	}
}
