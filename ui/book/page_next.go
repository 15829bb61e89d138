package book

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// next is what can be done with the quote now: the one filled button of the page, and what else there is.
func (q *quotePage) next() fyne.CanvasObject {
	switch q.head.State {
	case catalog.Drafted:
		return q.toSend()
	case catalog.Sent:
		return q.toAnswer()
	case catalog.Accepted:
		return q.stepsSection()
	case catalog.Declined:
		return q.wasDeclined()
	}
	return q.wasFinished()
}

// sendWays are how a quote can be given to the customer, and the paper that goes with each.
var sendWays = []struct {
	how   string
	paper Paper
}{
	{"PDF", QuotePaper},
	{"e-mail", EmailPaper},
	{"message", ""},
	{"at the counter", ""},
}

// freezeWord is on a button that was pressed once: what is sent is frozen for good.
const freezeWord = "Freeze and send"

func waysOfSending() *parts.Choice {
	var options []parts.Option
	for _, w := range sendWays {
		options = append(options, parts.Option{Key: w.how, Name: "by " + w.how})
		if w.how == "at the counter" {
			options[len(options)-1].Name = w.how
		}
	}
	c := parts.NewChoice(options, nil)
	c.SetKey(sendWays[0].how)
	return c
}

func (q *quotePage) toSend() fyne.CanvasObject {
	how := waysOfSending()
	send := newAsking(parts.Filled, "Send", freezeWord, func() { q.send(how.Key()) })
	at := newAsking(parts.Quiet, "Accepted on the spot", "Freeze and accept", q.acceptAtOnce)
	q.first = send
	return parts.NewSection("Send the quote", "revision "+fmt.Sprint(q.head.Revision+1),
		parts.NewParagraph("Sending freezes every price it was made with: opened in a year, it says the same to the cent. A frozen revision can never be changed or taken away; what is changed later becomes the next one.", parts.MutedStyle),
		parts.Row(8, []parts.Track{parts.Fixed(150), parts.Fit(), parts.Share(1), parts.Fit()}, how, send, parts.Gap(0, 0), at))
}

// send freezes the next revision and then writes what goes with the way it is sent.
func (q *quotePage) send(how string) {
	done := fmt.Sprintf("%s is sent %s as revision %d.", q.head.Number, wayWords(how), q.head.Revision+1)
	q.place.do(deed{
		doing: "The quote could not be sent", done: done,
		work: func(ctx context.Context) error {
			_, err := q.place.Ledger.Send(ctx, q.id, how)
			return err
		},
		then: func() { q.give(how, done) },
	})
}

func wayWords(how string) string {
	if how == "at the counter" {
		return how
	}
	return "by " + how
}

// give writes the paper that goes with a way of sending, or puts the text of a message onto the clipboard.
func (q *quotePage) give(how, done string) {
	if q.place.Papers == nil {
		return
	}
	for _, w := range sendWays {
		if w.how == how && w.paper != "" {
			q.write(w.paper, nil, done)
		}
	}
	if how == "message" {
		q.copyText(q.place.Papers.Text, done+" Its text is on the clipboard.")
	}
}

// acceptAtOnce freezes the quote as it stands and accepts it: the customer said yes at the counter.
func (q *quotePage) acceptAtOnce() {
	id, on := q.id, q.place.today()
	q.place.act("The quote could not be accepted", q.head.Number+" is accepted.", func(ctx context.Context) error {
		if _, err := q.place.Ledger.Send(ctx, id, "at the counter"); err != nil {
			return err
		}
		h, err := q.place.Ledger.Quote(ctx, id)
		if err != nil || len(h.Revisions) == 0 {
			return err
		}
		return q.place.Ledger.Accept(ctx, id, h.Revisions[0].ID, on, "")
	}, q.backTo(catalog.Sent, "is waiting for its answer again"))
}

// backTo is the way back to a state.
func (q *quotePage) backTo(state, words string) *step {
	id, number := q.id, q.head.Number
	return &step{done: number + " " + words + ".", back: func(ctx context.Context) error {
		return q.place.Ledger.SetState(ctx, id, state, "taken back")
	}}
}

// latest are the revisions sent last: one, or one for each option.
func latest(h catalog.QuoteHead) []catalog.RevisionRow {
	var out []catalog.RevisionRow
	for _, r := range h.Revisions {
		if r.Number == h.Revisions[0].Number {
			out = append(out, r)
		}
	}
	return out
}

// answerTracks line up the two answers and what is said with them.
var answerTracks = []parts.Track{parts.Fixed(92), parts.Share(1)}

func (q *quotePage) toAnswer() fyne.CanvasObject {
	h, po, why := q.head, parts.NewField("their order number, if any"), parts.NewField("why, if they said")
	rows := parts.Column(10)
	last := latest(h)
	if len(last) == 1 {
		accept := parts.NewDeed(parts.Filled, "Accepted", "", func() { q.accept(last[0], po.Text()) })
		q.first = accept
		rows.Add(parts.Row(8, answerTracks, accept, po))
	} else {
		rows.Add(parts.NewParagraph("Accept the option that the customer wants, below.", parts.MutedStyle))
	}
	decline := parts.NewDeed(parts.Quiet, "Declined", "", func() { q.decline(why.Text()) })
	why.OnSubmitted = q.decline
	rows.Add(parts.Row(8, answerTracks, decline, why))
	rows.Add(parts.NewRule())
	how := waysOfSending()
	again := newAsking(parts.Quiet, "Send again", freezeWord, func() { q.send(how.Key()) })
	note := "as it stands now, as revision " + fmt.Sprint(h.Revision+1)
	if len(last) == 1 && last[0].Total != h.Total && h.Total != "" {
		note = fmt.Sprintf("changed since: %s then, %s now", present.Grouped(last[0].Total), present.Grouped(h.Total))
	}
	rows.Add(parts.Row(8, []parts.Track{parts.Fixed(150), parts.Fit(), parts.Share(1)}, how, again, parts.NewText(note, parts.MutedStyle.Shortened())))
	hint := ""
	if len(last) > 0 {
		hint = "sent " + changed(q.place, last[0].MadeAt) + " " + wayWords(last[0].SentHow)
	}
	return parts.NewSection("Waiting for an answer", hint, rows)
}

func (q *quotePage) accept(r catalog.RevisionRow, po string) {
	name := ""
	if r.OptionName != "" {
		name = " with “" + r.OptionName + "”"
	}
	q.place.act("The quote could not be accepted", q.head.Number+" is accepted"+name+". Its goods stand under To buy.", func(ctx context.Context) error {
		return q.place.Ledger.Accept(ctx, q.id, r.ID, q.place.today(), po)
	}, q.backTo(catalog.Sent, "is waiting for its answer again"))
}

func (q *quotePage) decline(why string) {
	q.place.act("The quote could not be declined", q.head.Number+" is declined.", func(ctx context.Context) error {
		return q.place.Ledger.SetState(ctx, q.id, catalog.Declined, why)
	}, q.backTo(catalog.Sent, "is waiting for its answer again"))
}

func (q *quotePage) wasDeclined() fyne.CanvasObject {
	again := parts.NewDeed(parts.Filled, "Open it again", "", func() {
		q.place.act("The quote could not be opened again", q.head.Number+" is waiting for its answer again.", func(ctx context.Context) error {
			return q.place.Ledger.SetState(ctx, q.id, catalog.Sent, "opened again")
		}, q.backTo(catalog.Declined, "is declined again"))
	})
	q.first = again
	return parts.NewSection("Declined", since(q.place, q.head, catalog.Declined),
		parts.NewParagraph(or(q.head.Why, "They did not say why."), parts.Style{}), parts.Row(8, nil, again))
}

// since says when the quote came into a state last.
func since(p *Place, h catalog.QuoteHead, state string) string {
	at := ""
	for _, c := range h.History {
		if c.State == state && c.At > at {
			at = c.At
		}
	}
	return changed(p, at)
}

// MarkSent freezes the next revision of a quote whose paper was written on the Counter, and tells so.
func (p *Place) MarkSent(id int64, how string, then func(words string, err error)) {
	if p.Ledger == nil {
		return
	}
	parts.Background(func() func() {
		n, err := p.Ledger.Send(context.Background(), id, how)
		return func() {
			if err == nil && p.OnState != nil {
				p.OnState(id, catalog.Sent)
			}
			then(fmt.Sprintf("Sent %s as revision %d: its prices are frozen.", wayWords(how), n), err)
		}
	})
}
