package store_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/quote/money"
)

// frozen makes a revision of a draft with the prices of the day.
func frozen(t testing.TB, s *store.Store, d catalog.Draft) catalog.Revision {
	t.Helper()
	book, err := s.Book(ctx, d, day)
	if err != nil {
		t.Fatal(err)
	}
	job, problems := catalog.Freeze(d, book, day)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	r, _, err := catalog.NewRevision(job)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// sent freezes a demo quote's next revision and gives its row.
func sent(t testing.TB, s *store.Store, id int64) catalog.RevisionRow {
	t.Helper()
	d, err := s.Draft(ctx, id)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.FreezeRevision(ctx, id, "PDF", []catalog.Revision{frozen(t, s, d)}); err != nil {
		t.Fatal(err)
	}
	all, err := s.Revisions(ctx, id)
	if err != nil || len(all) == 0 {
		t.Fatalf("no revision: %v", err)
	}
	return all[0]
}

func head(t testing.TB, s *store.Store, id int64) catalog.QuoteHead {
	t.Helper()
	h, err := s.Quote(ctx, id)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func amount(t testing.TB, text string) money.Amount {
	t.Helper()
	a, err := money.ParseAmount(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestSetState_onlyAllowedOnes(t *testing.T) {
	s := demoStore(t)
	db := rawWriter(t, s.Path())
	for _, from := range catalog.States {
		for _, to := range catalog.States {
			_, err := db.ExecContext(ctx, "UPDATE quote SET state = ? WHERE id = 1", from)
			must(t, err)
			err = s.SetState(ctx, 1, to, "")
			if want := catalog.MayBecome(from, to); (err == nil) != want || err != nil && !errors.Is(err, store.ErrTransition) {
				t.Errorf("%s to %s: got %v, allowed %v", from, to, err, want)
			}
			if err == nil {
				h := head(t, s, 1)
				if h.State != to || h.History[len(h.History)-1].State != to {
					t.Errorf("%s to %s: is %s, history %v", from, to, h.State, h.History)
				}
			}
		}
	}
}

// The Counter may hold an older copy while the book moves the quote on.
func TestSaveDraft_leavesTheStateToTheBook(t *testing.T) {
	s := demoStore(t)
	old, err := s.Draft(ctx, 1)
	must(t, err)
	sent(t, s, 1)
	old.Title = "Regatta, second thoughts"
	saved, err := s.SaveDraft(ctx, old, nil)
	must(t, err)
	if h := head(t, s, 1); h.State != catalog.Sent || saved.State != catalog.Sent || h.Title != old.Title || h.Revision != 1 {
		t.Errorf("got %+v", h.QuoteRow)
	}
}

func TestSetDates_wrongOnesAreNamed(t *testing.T) {
	s := demoStore(t)
	var problems quote.Problems
	if err := s.SetDates(ctx, 1, "2026-02-30", "soon"); !errors.As(err, &problems) || len(problems) != 2 {
		t.Errorf("got %v, want both named", err)
	}
	must(t, s.SetDates(ctx, 1, "2026-05-04", ""))
	if h := head(t, s, 1); h.FollowUp != "2026-05-04" || h.Expires != "" {
		t.Errorf("got %+v", h.QuoteRow)
	}
}

func TestOptions_areDraftsOfTheirOwnAndOneIsAccepted(t *testing.T) {
	s := demoStore(t)
	own, err := s.Draft(ctx, 1)
	must(t, err)
	other := own.Copy()
	other.Placements = other.Placements[:1]
	added, err := s.AddOption(ctx, 1, "back print only", other, nil)
	must(t, err)
	if added.Position != 2 {
		t.Errorf("position %d, want 2", added.Position)
	}
	edited := added.Draft
	edited.Title = "Back only"
	_, err = s.SaveDraft(ctx, edited, nil)
	must(t, err)
	if d, err := s.Draft(ctx, 1); err != nil || d.Title != own.Title || d.Option != 1 {
		t.Errorf("the leading draft after editing the other: %q, option %d, %v", d.Title, d.Option, err)
	}
	options, err := s.Options(ctx, 1)
	if err != nil || len(options) != 2 || options[1].Draft.Title != "Back only" {
		t.Fatalf("options: %+v, %v", options, err)
	}
	var revisions []catalog.Revision
	for _, o := range options {
		r := frozen(t, s, o.Draft)
		r.Option, r.OptionName = o.Position, o.Name
		revisions = append(revisions, r)
	}
	n, err := s.FreezeRevision(ctx, 1, "e-mail", revisions)
	must(t, err)
	h := head(t, s, 1)
	if n != 1 || len(h.Revisions) != 2 || h.Revisions[0].Option != 1 || h.Revisions[1].OptionName != "back print only" {
		t.Fatalf("revisions: %+v", h.Revisions)
	}
	must(t, s.Accept(ctx, 1, h.Revisions[1].ID, day, "PO 77"))
	h = head(t, s, 1)
	if h.AcceptedID != h.Revisions[1].ID || !h.Options[1].Accepted || h.Options[0].Accepted || h.Account.Total.String() != h.Revisions[1].Total || h.PONumber != "PO 77" {
		t.Errorf("after accepting: %+v", h)
	}
	if d, err := s.Draft(ctx, 1); err != nil || d.Title != "Back only" || d.Option != 2 {
		t.Errorf("the leading draft is %q, option %d, %v; want the accepted one", d.Title, d.Option, err)
	}
	if _, err := s.RemoveOption(ctx, 1, 1); !errors.Is(err, store.ErrOptions) {
		t.Errorf("removing an option of an accepted quote: %v", err)
	}
}

// The Counter may hold a quote's only draft while the book offers another beside it.
func TestOptions_anOlderCopyOfTheDraftIsSavedAsTheFirst(t *testing.T) {
	s := demoStore(t)
	old, err := s.Draft(ctx, 1)
	must(t, err)
	_, err = s.AddOption(ctx, 1, "without the sleeve", old, nil)
	must(t, err)
	old.Title = "Typed since"
	saved, err := s.SaveDraft(ctx, old, nil)
	must(t, err)
	options, err := s.Options(ctx, 1)
	if err != nil || saved.Option != 1 || options[0].Draft.Title != "Typed since" || options[1].Draft.Title == "Typed since" || head(t, s, 1).Title != "Typed since" {
		t.Errorf("saved as option %d: %+v, %v", saved.Option, options, err)
	}
}

func TestOptions_atMostFourAndTheLastOneLeavesNone(t *testing.T) {
	s := demoStore(t)
	d, err := s.Draft(ctx, 3)
	must(t, err)
	for _, name := range []string{"two", "three", "four"} {
		_, err := s.AddOption(ctx, 3, name, d, nil)
		must(t, err)
	}
	if _, err := s.AddOption(ctx, 3, "five", d, nil); !errors.Is(err, store.ErrOptions) {
		t.Errorf("a fifth option: %v", err)
	}
	_, err = s.RemoveOption(ctx, 3, 1)
	must(t, err)
	if h := head(t, s, 3); len(h.Options) != 3 || h.Options[0].Name != "two" || h.Options[0].Position != 2 || h.Options[0].Draft.Option != 2 || h.QuoteRow.Options != 3 {
		t.Errorf("after removing the first: %+v", h.Options)
	}
	if d, err := s.Draft(ctx, 3); err != nil || d.Option != 2 {
		t.Errorf("option %d leads, %v, want the second", d.Option, err)
	}
	if again, err := s.AddOption(ctx, 3, "again", d, nil); err != nil || again.Position != 1 {
		t.Errorf("in the place that became free: %+v, %v", again, err)
	}
	for _, place := range []int{1, 3, 4} {
		_, err := s.RemoveOption(ctx, 3, place)
		must(t, err)
	}
	if h := head(t, s, 3); len(h.Options) != 0 || h.QuoteRow.Options != 0 {
		t.Errorf("after removing all but one: %+v", h.Options)
	}
	if d, err := s.Draft(ctx, 3); err != nil || d.Option != 0 {
		t.Errorf("option %d, %v, want none", d.Option, err)
	}
}

func TestDuplicate_atAnotherQuantity(t *testing.T) {
	s := demoStore(t)
	was, err := s.Draft(ctx, 1)
	must(t, err)
	d, err := s.Duplicate(ctx, 1, 60)
	must(t, err)
	if d.Pieces() != 60 || d.ID != 0 || d.Number != "" || d.State != catalog.Drafted || d.NeededBy != "" || d.QuotedOn != day || d.Customer.ID != was.Customer.ID {
		t.Errorf("got %+v with %d pieces", d, d.Pieces())
	}
	saved, err := s.SaveDraft(ctx, d, nil)
	must(t, err)
	if saved.Number != "2026-0004" {
		t.Errorf("number %s", saved.Number)
	}
	if now, err := s.Draft(ctx, 1); err != nil || asJSON(t, now) != asJSON(t, was) {
		t.Errorf("the quote it was made of has changed: %v", err)
	}
}

func TestFinish_keepsActualsAndArtworkOnFile(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	a := catalog.Actuals{SetUpMinutes: money.Int(40), PressingMinutes: money.Int(95), Spoiled: 2, Invoices: []catalog.Invoice{{Supplier: "kiln", Amount: amount(t, "88.20")}}, On: day}
	must(t, s.Finish(ctx, 1, a))
	h := head(t, s, 1)
	if h.State != catalog.Finished || h.Actuals == nil || asJSON(t, *h.Actuals) != asJSON(t, a) {
		t.Errorf("got %s, %+v", h.State, h.Actuals)
	}
	known, err := s.Designs(ctx, h.CustomerID)
	must(t, err)
	d, err := s.Draft(ctx, 1)
	must(t, err)
	if len(known) != len(d.Placements) || known[0].Runs != 1 || known[0].LastQuote != "2026-0001" || known[0].Card == "" {
		t.Errorf("on file: %+v", known)
	}
	again, err := s.Duplicate(ctx, 1, 0)
	must(t, err)
	for _, p := range again.Placements {
		if !p.OnFile || p.FileCard == "" {
			t.Errorf("%s is not on file", p.Name)
		}
	}
	won, err := s.Outcomes(ctx, day, day)
	if err != nil || len(won) != 1 || won[0].Actuals == nil || won[0].RevisionID != r.ID || won[0].Cost != r.Cost {
		t.Errorf("outcomes: %+v, %v", won, err)
	}
	a.Spoiled = 3
	must(t, s.Finish(ctx, 1, a))
	if known, err = s.Designs(ctx, h.CustomerID); err != nil || known[0].Runs != 1 || head(t, s, 1).Actuals.Spoiled != 3 {
		t.Errorf("corrected: %+v, %v", known, err)
	}
}

func TestToDo_saysWhatIsDue(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	sent(t, s, 2)
	must(t, s.SetDates(ctx, 2, "2026-05-04", "2026-05-06"))
	must(t, s.SetDates(ctx, 3, "2026-05-05", ""))
	kinds := func(on string) string {
		all, err := s.ToDo(ctx, on)
		must(t, err)
		var out []string
		for _, x := range all {
			out = append(out, x.Number[8:]+" "+x.Kind)
			if x.Text == "" {
				t.Errorf("%s %s says nothing", x.Number, x.Kind)
			}
		}
		return strings.Join(out, ", ")
	}
	if got, want := kinds("2026-05-04"), "2 follow up, 2 expiring, 1 get approved"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	late := head(t, s, 1).NeededBy
	if late == "" {
		t.Fatal("the demo's club needs its shirts by no day")
	}
	if got := kinds("2027-05-05"); !strings.HasPrefix(got, "1 overdue") || !strings.Contains(got, "3 follow up") {
		t.Errorf("a year later: got %s", got)
	}
}

func TestShelf_isOfferedOnTheNextQuoteThatCouldUseIt(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	d, err := s.Draft(ctx, 1)
	must(t, err)
	style, err := s.Style(ctx, d.Garments[0].StyleID)
	must(t, err)
	size, p := d.Garments[0].Sizes[0], d.Placements[0]
	blank, err := s.SaveShelfItem(ctx, catalog.ShelfItem{Kind: catalog.ShelfBlank, Qty: 3, Supplier: style.Supplier, Style: strings.ToLower(style.Number), Color: d.Garments[0].Color, Size: size.Size})
	must(t, err)
	for _, x := range []catalog.ShelfItem{
		{Kind: catalog.ShelfTransfer, Qty: 5, CustomerID: d.Customer.ID, Name: p.Name, Width: p.Width, Height: p.Height},
		{Kind: catalog.ShelfTransfer, Qty: 5, CustomerID: d.Customer.ID, Name: p.Name, Width: "1", Height: "1"},
		{Kind: catalog.ShelfBlank, Qty: 5, Supplier: style.Supplier, Style: "ZZ", Color: "Navy", Size: "M"},
	} {
		_, err := s.SaveShelfItem(ctx, x)
		must(t, err)
	}
	offers, err := s.ShelfOffers(ctx, d)
	if err != nil || len(offers) != 2 || offers[0].Use != 3 || offers[0].Path != "garments[0].sizes[0]" || offers[1].Path != "placements[0]" {
		t.Fatalf("got %+v, %v", offers, err)
	}
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	count := func() (n int) {
		list, err := s.PurchaseList(ctx, true)
		must(t, err)
		for _, row := range list {
			if row.Style == style.Number && row.Size == size.Size && row.Color == d.Garments[0].Color {
				n += row.Needed
			}
		}
		return n
	}
	before := count()
	back, err := s.UseFromShelf(ctx, blank.ID, 1, 2)
	must(t, err)
	if got := count(); got != before-2 {
		t.Errorf("two from the shelf: %d to buy, were %d", got, before)
	}
	must(t, back(ctx))
	if shelf, err := s.Shelf(ctx); err != nil || count() != before || shelf[0].Qty != 3 {
		t.Errorf("put back: %d to buy, were %d; on the shelf %+v, %v", count(), before, shelf, err)
	}
	_, err = s.UseFromShelf(ctx, blank.ID, 1, 2)
	must(t, err)
	if _, err := s.UseFromShelf(ctx, blank.ID, 1, 2); err == nil {
		t.Error("two more were taken, and one was there")
	}
	if _, err := s.SaveShelfItem(ctx, catalog.ShelfItem{Kind: "sock"}); err == nil {
		t.Error("a sock is kept")
	}
}

// What is owed is asked for when it is due by the customer's terms, until it is paid.
func TestToDo_asksForMoneyByTheTerms(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 3)
	must(t, s.Accept(ctx, 3, r.ID, day, ""))
	must(t, s.Finish(ctx, 3, catalog.Actuals{On: day}))
	asked := func(on string) bool {
		all, err := s.ToDo(ctx, on)
		must(t, err)
		return slices.ContainsFunc(all, func(x catalog.ToDo) bool { return x.Kind == catalog.ToCollect && x.Number == "2026-0003" })
	}
	if !asked(day) {
		t.Error("a customer who pays at pick-up is not asked on the day")
	}
	c, err := s.Customer(ctx, head(t, s, 3).CustomerID)
	must(t, err)
	c.Terms, c.NetDays = catalog.PayNetDays, 14
	_, err = s.SaveCustomer(ctx, c)
	must(t, err)
	if asked("2026-05-17") || !asked("2026-05-18") {
		t.Error("net 14 from 4 May is due on 18 May, not before and not later")
	}
	_, err = s.Pay(ctx, catalog.Payment{QuoteID: 3, On: day, Way: "cash", Amount: amount(t, r.Total)})
	must(t, err)
	if asked("2026-05-18") {
		t.Error("asked for what is paid")
	}
}
