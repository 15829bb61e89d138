package book

import (
	"context"
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

var errNoDay = errors.New("enter a day like today, yesterday, fri, 3 dec or 2026-12-03")

// paperGroups are the documents of a quote by what they are for.
var paperGroups = []struct {
	word   string
	states string // shown in these states
	papers []Paper
}{
	{"for the customer", "draft sent declined", []Paper{QuotePaper, EmailPaper, ProofPaper}},
	{"for the customer", "accepted finished", []Paper{ProofPaper, ConfirmPaper, InvoicePaper, ReceiptPaper, QuotePaper, EmailPaper}},
	{"for the press", "accepted finished", []Paper{TicketPaper, LayoutPaper, BuyPaper}},
	{"for handing over", "accepted finished", []Paper{PackingPaper, BagPaper, LabelPaper}},
	{"for the shop", "draft sent accepted declined finished", []Paper{CostPaper}},
}

// papers is the documents of the quote, each with one click.
func (q *quotePage) papers() fyne.CanvasObject {
	if q.place.Papers == nil {
		return nil
	}
	rows := parts.Column(10)
	if q.head.State == catalog.Accepted && !approved(q.head.Steps) {
		rows.Add(parts.NewBand(parts.Warning, "The artwork is not approved yet; the press ticket says so."))
	}
	for _, g := range paperGroups {
		if strings.Contains(g.states, q.head.State) {
			rows.Add(parts.Column(4, parts.NewText(g.word, parts.CaptionStyle), q.paperLine(g.papers)))
		}
	}
	hint := "as sent last"
	switch {
	case q.agreed():
		rows.Add(q.reprint())
		hint = "as accepted"
	case q.head.Revision == 0:
		hint = "as it stands"
	}
	return parts.NewSection("Papers", hint, rows)
}

// agreed tells whether the quote has been accepted, and perhaps finished.
func (q *quotePage) agreed() bool {
	return q.head.State == catalog.Accepted || q.head.State == catalog.Finished
}

// paperLine is the buttons of some papers, without those that have nothing to say of this job.
func (q *quotePage) paperLine(papers []Paper) fyne.CanvasObject {
	line := parts.Flow(6)
	for _, p := range papers {
		if (p == BagPaper || p == LabelPaper) && !q.named {
			continue
		}
		line.Add(parts.NewSmallButton(parts.Quiet, string(p), func() { q.write(p, nil, "") }))
		if p == PackingPaper {
			line.Add(parts.NewSmallButton(parts.Quiet, "Ready to collect, as text", func() {
				q.copyText(q.place.Papers.ReadyText, "That it is ready to collect is on the clipboard as text.")
			}))
		}
	}
	return line
}

// reprint asks for the spoiled pieces of a reprint ticket, as sizes with their counts.
func (q *quotePage) reprint() fyne.CanvasObject {
	count := parts.NewSmallField("like S2 L1")
	act := func() {
		spoiled, ok := readSpoiled(count.Text())
		count.SetWrong(!ok)
		if ok {
			q.write(ReprintPaper, spoiled, "")
		}
	}
	count.OnSubmitted = func(string) { act() }
	piece := parts.NewSmallButton(parts.Link, "Piece by piece", func() { q.place.push(newReprintPage(q.place, q.head)) })
	return parts.Column(4, parts.NewText("spoiled pieces to press again", parts.CaptionStyle),
		parts.Row(6, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, count, parts.NewSmallButton(parts.Quiet, string(ReprintPaper), act), piece))
}

// mostSpoiled is more of a size than anybody spoils in a job; a larger figure is a slip of the hand.
const mostSpoiled = 10_000

// readSpoiled reads sizes with counts, like "S2 L1" or "2XL 1": on whichever garment comes in that size.
func readSpoiled(text string) ([]Spoiled, bool) {
	var out []Spoiled
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' })
	for i := 0; i < len(words); i++ {
		size, n := splitCount(words[i])
		if n == 0 && i+1 < len(words) {
			if next, err := strconv.Atoi(words[i+1]); err == nil {
				size, n = words[i], next
				i++
			}
		}
		if size == "" || n < 1 || n > mostSpoiled {
			return nil, false
		}
		out = append(out, Spoiled{Size: strings.ToUpper(size), Qty: n})
	}
	return out, len(out) > 0
}

// splitCount takes the number off the end of a size: "S2" is two of S, "2XL3" three of 2XL.
func splitCount(word string) (size string, n int) {
	end := len(word)
	for end > 0 && word[end-1] >= '0' && word[end-1] <= '9' {
		end--
	}
	n, err := strconv.Atoi(word[end:])
	if err != nil {
		return word, 0
	}
	return strings.TrimRight(word[:end], "×x:-"), n
}

// write has a document written and opened, and says its path: opening does not tell whether it worked.
func (q *quotePage) write(p Paper, spoiled []Spoiled, before string) {
	q.place.writing(string(p), before, func(ctx context.Context) (string, error) {
		return q.place.Papers.Write(ctx, q.id, p, spoiled)
	})
}

// writing has a file written and opened off the window's goroutine.
func (p *Place) writing(what, before string, write func(ctx context.Context) (string, error)) {
	if before != "" {
		before += " "
	}
	parts.Background(func() func() {
		path, err := write(context.Background())
		var failed error
		if err == nil {
			failed = p.Papers.OpenFile(path)
		}
		return func() {
			switch {
			case err != nil:
				p.failed("The "+what+" could not be written", err)
			case failed != nil:
				p.said(before + what + " written to " + path + ", but it could not be opened: " + failed.Error())
			default:
				p.said(before + what + " written to " + path)
			}
		}
	})
}

// copyText puts a text onto the clipboard.
func (q *quotePage) copyText(text func(ctx context.Context, id int64) (string, error), done string) {
	parts.Background(func() func() {
		words, err := text(context.Background(), q.id)
		return func() {
			q.place.failed("The text could not be made", err)
			if err == nil {
				fyne.CurrentApp().Clipboard().SetContent(words)
				q.place.said(done)
			}
		}
	})
}

// dates is when the quote is to be asked after and how long it holds.
func (q *quotePage) dates() fyne.CanvasObject {
	if q.head.State != catalog.Drafted && q.head.State != catalog.Sent {
		return nil
	}
	follow, expires := parts.NewField("no day"), parts.NewField("no end")
	follow.SetText(q.place.near(q.head.FollowUp))
	expires.SetText(q.place.near(q.head.Expires))
	keep := func(string) {
		a, okA := readDay(q.place, follow.Text(), q.head.FollowUp)
		b, okB := readDay(q.place, expires.Text(), q.head.Expires)
		follow.SetWrong(!okA)
		expires.SetWrong(!okB)
		if !okA || !okB {
			q.place.failed("The dates were not kept", errNoDay)
			return
		}
		q.keepDates(a, b)
	}
	for _, f := range []*parts.Field{follow, expires} {
		f.OnSubmitted = keep
		f.OnFocus = func(gained bool) {
			if !gained {
				keep("")
			}
		}
	}
	return parts.NewSection("Dates", "like fri, +7 or 18 dec", parts.Fields(130, parts.NewCaptioned("Follow up", follow), parts.NewCaptioned("Holds until", expires)))
}

func (q *quotePage) keepDates(follow, expires string) {
	if follow == q.head.FollowUp && expires == q.head.Expires {
		return
	}
	id, a, b := q.id, q.head.FollowUp, q.head.Expires
	q.place.act("The dates could not be kept", "Dates kept.", func(ctx context.Context) error {
		return q.place.Ledger.SetDates(ctx, id, follow, expires)
	}, &step{done: "The dates are as they were.", back: func(ctx context.Context) error {
		return q.place.Ledger.SetDates(ctx, id, a, b)
	}})
}
