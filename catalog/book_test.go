package catalog_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// The numbers are the published test numbers of card networks: they pass the check digit and belong to nobody.
func TestHoldsCardNumber_byItsCheckDigit(t *testing.T) {
	for text, want := range map[string]bool{
		"4111111111111111":                        true,
		"paid with 4111 1111 1111 1111, thanks":   true,
		"5555-5555-5555-4444":                     true,
		"378282246310005":                         true,
		"ref 12 4111111111111111":                 true,
		"4111111111111112":                        false,
		"check no. 1204 of 12 May":                false,
		"transfer 2026-05-04 15:30":               false,
		"0000000000000000":                        false,
		"call 555 0110 or 555 0163":               false,
		"４１１１":                                    false,
		"":                                        false,
		"phone +44 20 7946 0991, order 2026-0147": false,
	} {
		if got := catalog.HoldsCardNumber(text); got != want {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}

// Any number with the right last digit is found wherever it stands; with another last digit it is not found alone.
func TestHoldsCardNumber_anyNumberOfAnyLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(12, 18).Draw(t, "digits")
		digits := strconv.Itoa(rapid.IntRange(1, 9).Draw(t, "first"))
		for len(digits) < n {
			digits += strconv.Itoa(rapid.IntRange(0, 9).Draw(t, "digit"))
		}
		right := 0
		for ; right < 10; right++ {
			if luhn(digits + strconv.Itoa(right)) {
				break
			}
		}
		if text := "note " + digits[:4] + " " + digits[4:] + strconv.Itoa(right) + "!"; !catalog.HoldsCardNumber(text) {
			t.Errorf("%q passes", text)
		}
	})
}

// luhn checks digits as the standard words it: doubled from the right, digits of the products added.
func luhn(digits string) bool {
	sum := 0
	for i := range len(digits) {
		d := int(digits[len(digits)-1-i] - '0')
		if i%2 == 1 {
			d *= 2
		}
		sum += d/10 + d%10
	}
	return sum%10 == 0
}

func TestCustomer_checkNamesEveryField(t *testing.T) {
	good := catalog.Customer{Name: "Школа № 7 — 青い海", Email: "a@b.example", Terms: catalog.PayNetDays, NetDays: 30, TaxExempt: true, Certificate: "EX-1"}
	if p := good.Check(); len(p) > 0 {
		t.Errorf("a good one: %v", p)
	}
	bad := catalog.Customer{
		Name: " ", Contact: "a\r\nBcc: all@x.example", Email: "not one", Phone: "1\n2", Terms: "later", NetDays: 999, TaxExempt: true, CertificateUntil: "2026-02-30",
	}
	var paths []string
	for _, p := range bad.Check() {
		paths = append(paths, p.Path)
	}
	slices.Sort(paths)
	if got, want := strings.Join(slices.Compact(paths), " "), "certificate certificate_until contact email name net_days phone terms"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestCustomer_exemptUntilTheCertificateRunsOut(t *testing.T) {
	c := catalog.Customer{TaxExempt: true, CertificateUntil: "2026-05-04"}
	if !c.ExemptOn("2026-05-04") || c.ExemptOn("2026-05-05") || (catalog.Customer{}).ExemptOn("2026-05-04") {
		t.Error("the last day counts, the day after does not, and nobody is exempt unasked")
	}
	net := catalog.Customer{Terms: catalog.PayNetDays, NetDays: 30}
	if got := net.DueOn("2026-01-31"); got != "2026-03-02" {
		t.Errorf("net 30 from 31 January: got %s", got)
	}
}

func TestNextStep_isTheFirstNotTaken(t *testing.T) {
	var taken []catalog.Step
	for i, want := range []string{"get artwork approved", "order goods", "take goods in", "press", "get ready", "hand over", "finish"} {
		if got := catalog.NextStep(catalog.Accepted, taken); got != want {
			t.Errorf("after %d steps: got %q, want %q", i, got, want)
		}
		if i < len(catalog.Steps) {
			taken = append(taken, catalog.Step{Name: catalog.Steps[i]})
		}
	}
}

func TestMayBecome_everyStateIsReachedAndLeft(t *testing.T) {
	for _, s := range catalog.States {
		if len(catalog.NextStates(s)) == 0 {
			t.Errorf("%s is never left", s)
		}
		if s != catalog.Drafted && !slices.ContainsFunc(catalog.States, func(from string) bool { return from != s && catalog.MayBecome(from, s) }) {
			t.Errorf("%s is never reached", s)
		}
	}
	if catalog.MayBecome(catalog.Drafted, catalog.Finished) || catalog.MayBecome(catalog.Sent, catalog.Drafted) {
		t.Error("a draft is finished, or a sent quote a draft again")
	}
}

// However many pieces are asked for, the sizes add up to them, and what had none still has none.
func TestSameAgain_addsUp(t *testing.T) {
	d, _ := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		was := d.Drafts[rapid.IntRange(0, 2).Draw(t, "quote")]
		pieces := rapid.IntRange(1, 5000).Draw(t, "pieces")
		got := catalog.SameAgain(was, pieces, day)
		if got.Pieces() != pieces {
			t.Errorf("got %d pieces, want %d", got.Pieces(), pieces)
		}
		for i, g := range was.Garments {
			for k, z := range g.Sizes {
				if z.Qty == "" && got.Garments[i].Sizes[k].Qty != "" {
					t.Errorf("%s %s had none and has %s", g.Key, z.Size, got.Garments[i].Sizes[k].Qty)
				}
			}
		}
	})
}

// repeated is a demo quote with what its artwork was made on put on file.
func repeated(t *testing.T, d catalog.Draft, b catalog.Book, change func([]catalog.Design)) (first, again quote.Result, job quote.Job) {
	t.Helper()
	price := func(d catalog.Draft) (quote.Job, quote.Result) {
		job, problems := catalog.Freeze(d, b, day)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		r, err := quote.Price(job)
		if err != nil {
			t.Fatal(err)
		}
		return job, r
	}
	was, first := price(d)
	known := catalog.DesignsOf(was, first, nil, 1, "2026-0001", day)
	if change != nil {
		change(known)
	}
	job, again = price(catalog.Repeat(catalog.SameAgain(d, 0, day), known))
	return first, again, job
}

// withSetUps gives every card a set-up, so that there is something to save.
func withSetUps(t *testing.T, b *catalog.Book) {
	t.Helper()
	for i := range b.Cards {
		for text, to := range map[string]*money.Amount{"12.00": &b.Cards[i].Card.SetupPerDesign, "3.00": &b.Cards[i].Card.SetupPerInk} {
			a, err := money.ParseAmount(text)
			if err != nil {
				t.Fatal(err)
			}
			*to = a
		}
	}
}

func TestRepeat_setUpAndArtCostAndChargeNothing(t *testing.T) {
	d, b := demo(t)
	withSetUps(t, &b)
	for _, x := range d.Drafts {
		first, again, job := repeated(t, x, b, nil)
		if again.Price.Art.Sign() != 0 || kindOf(again, quote.KindArt).Sign() != 0 {
			t.Errorf("%s: art is charged %s and costs %s", x.Title, again.Price.Art, kindOf(again, quote.KindArt))
		}
		for _, p := range again.Plans {
			if p.Setup.Sign() != 0 {
				t.Errorf("%s: the plan on %s has a set-up of %s", x.Title, p.Card, p.Setup)
			}
		}
		for _, m := range again.Methods {
			if m.Card == catalog.PaidCard(m.Card) {
				t.Errorf("%s: %s goes on %s, with its set-up", x.Title, m.Placement, m.Card)
			}
		}
		if again.Cost.Total.Cmp(first.Cost.Total) >= 0 || again.Price.Total.Cmp(first.Price.Total) >= 0 {
			t.Errorf("%s: costs %s after %s, is sold at %s after %s", x.Title, again.Cost.Total, first.Cost.Total, again.Price.Total, first.Price.Total)
		}
		if back, err := jobfile.Decode(jobfile.Encode(job)); err != nil || len(back.RateCards) != len(job.RateCards) {
			t.Errorf("%s: the job file does not come back: %v", x.Title, err)
		}
	}
}

func TestRepeat_unlessTheShopSaysOtherwise(t *testing.T) {
	d, b := demo(t)
	withSetUps(t, &b)
	first, again, _ := repeated(t, d.Drafts[0], b, func(known []catalog.Design) {
		for i := range known {
			known[i].ChargeAgain = true
		}
	})
	if again.Cost.Total.Cmp(first.Cost.Total) != 0 || again.Price.Total.Cmp(first.Price.Total) != 0 {
		t.Errorf("costs %s after %s, is sold at %s after %s", again.Cost.Total, first.Cost.Total, again.Price.Total, first.Price.Total)
	}
}

// Artwork that is new beside artwork on file pays its own set-up, and the art stays as it was typed.
func TestRepeat_newArtworkBesideItIsPaidFor(t *testing.T) {
	d, b := demo(t)
	withSetUps(t, &b)
	_, again, job := repeated(t, d.Drafts[0], b, func(known []catalog.Design) { known[1].Inks = "silver" })
	on := slices.IndexFunc(again.Methods, func(m quote.Method) bool { return m.Placement == job.Placements[1].ID })
	if card := again.Methods[on].Card; card != catalog.PaidCard(card) {
		t.Errorf("new artwork goes on %s", card)
	}
	if again.Price.Art.Sign() == 0 {
		t.Error("new artwork is drawn for nothing")
	}
}

func kindOf(r quote.Result, kind string) (sum money.Amount) {
	for _, l := range r.Cost.Lines {
		if l.Kind == kind {
			sum = quote.Sum(sum, l.Amount)
		}
	}
	return sum
}

func TestSeal_nothingPassesFromOneDocumentToTheOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		both := rapid.SliceOfN(rapid.Byte(), 2, 60).Draw(t, "both")
		i := rapid.IntRange(0, len(both)-1).Draw(t, "cut")
		if catalog.Seal(both[:i], both[i:]) == catalog.Seal(both[:i+1], both[i+1:]) {
			t.Errorf("%x cut at %d and after have one seal", both, i)
		}
	})
}

func TestRecheck_seesAChangedFigure(t *testing.T) {
	d, b := demo(t)
	job, _ := catalog.Freeze(d.Drafts[2], b, day)
	r, _, err := catalog.NewRevision(job)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Recheck(); err != nil {
		t.Fatal(err)
	}
	r.Result = []byte(strings.Replace(string(r.Result), r.Total, "1.00", 1))
	if err := r.Recheck(); err == nil || !strings.Contains(err.Error(), "1.00") {
		t.Errorf("got %v", err)
	}
}
