package export

import (
	"slices"
	"strings"
	"time"
)

// Letter is how a quote is written about in an e-mail. Words in braces stand for what the quote says: {customer},
// {number}, {title}, {total}, {valid until} and {shop}. The zero Letter is UsualLetter.
type Letter struct {
	Subject string
	Before  string // above the quote in plain words
	After   string // below it
}

// UsualLetter is a letter where nobody has written another.
var UsualLetter = Letter{
	Subject: "Quote {number} · {title}",
	Before:  "Hello {customer},\n\nhere is the quote you asked for. It is attached as a PDF as well.",
	After:   "Kind regards\n{shop}",
}

// filled is a letter about one quote, or about its options.
func (l Letter) filled(offers []Offer, date time.Time) Letter {
	if l == (Letter{}) {
		l = UsualLetter
	}
	said := lettered(offers, date)
	return Letter{Subject: subject(l.Subject, said), Before: fill(l.Before, said), After: fill(l.After, said)}
}

// lettered is what stands for the words in braces.
func lettered(offers []Offer, date time.Time) map[string]string {
	job := offers[0].Job
	p := paperOf(job)
	said := map[string]string{"customer": p.Customer.Contact, "number": p.Number, "title": job.Title, "shop": p.Shop.Name}
	if said["customer"] == "" {
		said["customer"] = p.Customer.Name
	}
	if p.ValidDays > 0 {
		said["valid until"] = day(date.AddDate(0, 0, p.ValidDays).Format(time.DateOnly))
	}
	var totals []string
	for _, o := range offers {
		totals = append(totals, grouped(o.Result.Price.Total)+" "+job.Currency)
	}
	said["total"] = strings.Join(slices.Compact(totals), " or ")
	for w, text := range said {
		said[w] = oneLine(text)
	}
	return said
}

// A line that names one of these cannot do without it, as it can without a name.
var (
	figuresSaid = []string{"total", "valid until"}
	namesSaid   = []string{"customer", "number", "title", "shop"}
)

// fill puts what the quote says into a text. A line is left out where a sum or a day that it names is not known.
func fill(text string, said map[string]string) string {
	var lines []string
	for line := range strings.SplitSeq(text, "\n") {
		whole := true
		for _, w := range figuresSaid {
			whole = whole && (said[w] != "" || !strings.Contains(line, "{"+w+"}"))
		}
		if whole {
			lines = append(lines, put(line, said))
		}
	}
	return strings.Join(lines, "\n")
}

// put replaces the words in braces of a line; one that says nothing takes the blank before it along.
func put(line string, said map[string]string) string {
	var pairs []string
	for _, w := range slices.Concat(figuresSaid, namesSaid) {
		if said[w] == "" {
			pairs = append(pairs, " {"+w+"}", "")
		}
		pairs = append(pairs, "{"+w+"}", said[w])
	}
	return strings.NewReplacer(pairs...).Replace(line)
}

// subject is one line without marks left hanging where a word said nothing.
func subject(text string, said map[string]string) string {
	return strings.Trim(brief(put(text, said)), " ·:,–-")
}
