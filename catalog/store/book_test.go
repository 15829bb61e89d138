package store_test

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/quote/jobfile"
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

func TestFreezeRevision_countsAndKeepsBothDocuments(t *testing.T) {
	s := demoStore(t)
	first := sent(t, s, 1)
	want, err := s.Revision(ctx, first.ID)
	must(t, err)
	second := sent(t, s, 1)
	if first.Number != 1 || second.Number != 2 {
		t.Errorf("revisions are numbered %d and %d, want 1 and 2", first.Number, second.Number)
	}
	got, err := s.Revision(ctx, first.ID)
	if err != nil || string(got.Job) != string(want.Job) || string(got.Result) != string(want.Result) {
		t.Errorf("the first revision does not come back as it was: %v", err)
	}
	h := head(t, s, 1)
	if h.State != catalog.Sent || h.Revision != 2 || h.NextStep != "follow up" || h.FollowUp != "2026-05-11" || h.Expires == "" || h.Number != "2026-0001" {
		t.Errorf("after sending: %+v", h.QuoteRow)
	}
}

func TestFreezeRevision_keepsItsFiguresWhenPricesRise(t *testing.T) {
	s := demoStore(t)
	first := sent(t, s, 1)
	d, err := s.Draft(ctx, 1)
	must(t, err)
	dearer(t, s, d.Garments[0].StyleID)
	r, err := s.Revision(ctx, first.ID)
	must(t, err)
	must(t, r.Recheck())
	now := frozen(t, s, d)
	if now.Total == first.Total {
		t.Errorf("blanks at 99 each, and today's total is %s as it was", now.Total)
	}
}

// dearer gives a style a list price of 99 in every size from the day on.
func dearer(t *testing.T, s *store.Store, style int64) {
	t.Helper()
	x, err := s.Style(ctx, style)
	must(t, err)
	db := rawWriter(t, s.Path())
	for i, z := range x.Sizes {
		_, err := db.ExecContext(ctx, `INSERT INTO price (style_id, seq, color, size, kind, breaks, valid_from, valid_to, file_id)
			SELECT ?, 1000 + ?, '', ?, 'list', '99', ?, '', min(id) FROM price_file`, style, i, z.Size, day)
		must(t, err)
	}
}

func rawWriter(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", "file:"+path+"?_pragma=busy_timeout(2000)&_txlock=immediate")
	must(t, err)
	t.Cleanup(func() { _ = db.Close() })
	return db
}

func TestRevision_cannotBeChangedInTheFile(t *testing.T) {
	s := demoStore(t)
	sent(t, s, 1)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		"UPDATE revision SET total = '1.00'",
		"DELETE FROM revision",
		"UPDATE revision_doc SET job = x'00'",
		"DELETE FROM revision_doc",
		"INSERT OR REPLACE INTO revision SELECT id, quote_id, number, option, option_name, made_at, sent_how, sha256, pieces, '1.00', deposit, subtotal, cost, margin, hours FROM revision",
		"INSERT OR REPLACE INTO revision_doc SELECT revision_id, x'00', result FROM revision_doc",
		"DELETE FROM quote WHERE id = 1",
	} {
		if _, err := db.ExecContext(ctx, statement); err == nil {
			t.Errorf("%s went through", statement)
		}
	}
	if r, err := s.Revision(ctx, 1); err != nil || r.Recheck() != nil {
		t.Errorf("after the attempts: %v, %v", err, r.Recheck())
	}
}

func TestRevision_alteredOutsideIsSaidAndTheOthersOpen(t *testing.T) {
	s := demoStore(t)
	bad, good := sent(t, s, 1), sent(t, s, 3)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		"DROP TRIGGER revision_doc_is_kept",
		"UPDATE revision_doc SET result = (SELECT result FROM revision_doc WHERE revision_id = 2) WHERE revision_id = 1",
	} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	r, err := s.Revision(ctx, bad.ID)
	var altered catalog.Altered
	if !errors.As(err, &altered) || !errors.Is(err, catalog.ErrAltered) || altered.Quote != "2026-0001" || altered.Number != 1 {
		t.Errorf("an altered revision: got %v", err)
	}
	if len(r.Job) == 0 || len(r.Result) == 0 {
		t.Error("what can still be read is not handed on")
	}
	if err := s.Accept(ctx, 1, bad.ID, day, ""); !errors.Is(err, catalog.ErrAltered) {
		t.Errorf("accepting it: got %v", err)
	}
	if _, err := s.Revision(ctx, good.ID); err != nil {
		t.Errorf("another quote's revision: %v", err)
	}
	if d, err := s.Draft(ctx, 1); err != nil || d.Title == "" {
		t.Errorf("its draft: %v", err)
	}
	told := 0
	must(t, s.EachRevision(ctx, func(_ catalog.Revision, err error) error {
		if err != nil {
			told++
		}
		return nil
	}))
	if told != 1 {
		t.Errorf("%d revisions are said to be altered, want 1", told)
	}
}

// A damaged packing is said like any other alteration.
func TestRevision_damagedPackingIsSaid(t *testing.T) {
	s := demoStore(t)
	sent(t, s, 3)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{"DROP TRIGGER revision_doc_is_kept", "UPDATE revision_doc SET job = substr(job, 1, 40)"} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	if _, err := s.Revision(ctx, 1); !errors.Is(err, catalog.ErrAltered) {
		t.Errorf("got %v", err)
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
	if err := s.RemoveOption(ctx, 1, 1); !errors.Is(err, store.ErrOptions) {
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
	must(t, s.RemoveOption(ctx, 3, 1))
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
		must(t, s.RemoveOption(ctx, 3, place))
	}
	if h := head(t, s, 3); len(h.Options) != 0 || h.QuoteRow.Options != 0 {
		t.Errorf("after removing all but one: %+v", h.Options)
	}
	if d, err := s.Draft(ctx, 3); err != nil || d.Option != 0 {
		t.Errorf("option %d, %v, want none", d.Option, err)
	}
}

func TestPay_aboveTheBalanceIsRefusedWithTheBalance(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	pay := catalog.Payment{QuoteID: 1, On: day, Way: "cash", Amount: amount(t, "100.00"), Deposit: true}
	kept, err := s.Pay(ctx, pay)
	must(t, err)
	a, err := s.Account(ctx, 1)
	must(t, err)
	if quote.Sum(a.Paid, a.Balance).Cmp(amount(t, r.Total)) != 0 || a.Paid.String() != "100.00" || a.Deposit.String() != r.Deposit {
		t.Errorf("paid %s, balance %s, deposit %s of %s", a.Paid, a.Balance, a.Deposit, r.Total)
	}
	pay.Amount = quote.Sum(a.Balance, amount(t, "0.01"))
	var over catalog.OverBalance
	if _, err := s.Pay(ctx, pay); !errors.As(err, &over) || over.Balance.Cmp(a.Balance) != 0 || !strings.Contains(err.Error(), a.Balance.String()) {
		t.Errorf("a cent too much: %v", err)
	}
	pay.Amount = a.Balance
	_, err = s.Pay(ctx, pay)
	must(t, err)
	if h := head(t, s, 1); h.Account.Balance.Sign() != 0 || h.Paid != r.Total {
		t.Errorf("paid in full: balance %s, paid %s", h.Account.Balance, h.Paid)
	}
	must(t, s.RemovePayment(ctx, kept.ID))
	if a, err = s.Account(ctx, 1); err != nil || a.Balance.String() != "100.00" {
		t.Errorf("after taking one back: balance %s, %v", a.Balance, err)
	}
	for name, change := range map[string]func(*catalog.Payment){
		"a wrong day": func(p *catalog.Payment) { p.On = "31/05/2026" }, "no way": func(p *catalog.Payment) { p.Way = "iou" },
		"nothing": func(p *catalog.Payment) { p.Amount = money.Amount{} }, "a card number": func(p *catalog.Payment) { p.Note = "card 4111 1111-1111 1111" },
	} {
		wrong := catalog.Payment{QuoteID: 1, On: day, Way: "cash", Amount: amount(t, "1.00")}
		change(&wrong)
		var problems quote.Problems
		if _, err := s.Pay(ctx, wrong); !errors.As(err, &problems) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func TestAccept_purchasesAreCombinedAndMoveTheSteps(t *testing.T) {
	s := demoStore(t)
	needed := 0
	for _, id := range []int64{1, 3} {
		r := sent(t, s, id)
		must(t, s.Accept(ctx, id, r.ID, day, ""))
		whole, err := s.Revision(ctx, r.ID)
		must(t, err)
		_, result, err := whole.Open()
		must(t, err)
		for _, b := range result.Purchases.Blanks {
			for _, z := range b.Sizes {
				needed += z.Qty
			}
		}
	}
	list, err := s.PurchaseList(ctx, false)
	must(t, err)
	blanks := 0
	var ids []int64
	for _, row := range list {
		if row.Kind == catalog.ShelfBlank {
			blanks += row.Needed
		}
		if row.SupplierName == "" || row.Open() != row.Needed {
			t.Errorf("row %+v", row)
		}
		for _, q := range row.Quotes {
			ids = append(ids, q.ID)
		}
	}
	if blanks != needed || needed == 0 {
		t.Errorf("%d blanks on the list, the results need %d", blanks, needed)
	}
	must(t, s.MarkPurchase(ctx, ids, store.PurchaseOrdered, ""))
	if _, ok := catalog.Taken(head(t, s, 1).Steps, catalog.GoodsOrdered); !ok {
		t.Error("all ordered, and the step is not taken")
	}
	first := list[0].Quotes[0]
	must(t, s.ReceivePart(ctx, first.ID, first.Needed-1, 1, "one short"))
	if _, ok := catalog.Taken(head(t, s, first.QuoteID).Steps, catalog.GoodsIn); ok {
		t.Error("one short, and the goods are in")
	}
	all, err := s.PurchaseList(ctx, true)
	must(t, err)
	if all[0].Short != 1 || all[0].Awaited() != all[0].Needed-first.Needed || all[0].Quotes[0].Note != "one short" {
		t.Errorf("a short delivery: %+v", all[0])
	}
	must(t, s.MarkPurchase(ctx, ids, store.PurchaseReceived, ""))
	if list, err = s.PurchaseList(ctx, false); err != nil || len(list) != 0 {
		t.Errorf("all here: %+v, %v", list, err)
	}
	if h := head(t, s, 3); h.NextStep != "get artwork approved" || len(h.Steps) != 2 {
		t.Errorf("next step %q, steps %v", h.NextStep, h.Steps)
	}
}

func TestAccept_anewKeepsWhatHasBeenOrdered(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 3)
	must(t, s.Accept(ctx, 3, r.ID, day, ""))
	list, err := s.PurchaseList(ctx, true)
	must(t, err)
	must(t, s.MarkPurchase(ctx, []int64{list[0].Quotes[0].ID}, store.PurchaseOrdered, ""))
	r = sent(t, s, 3)
	if h := head(t, s, 3); h.State != catalog.Accepted {
		t.Fatalf("a revision of an accepted quote makes it %s", h.State)
	}
	must(t, s.Accept(ctx, 3, r.ID, day, ""))
	again, err := s.PurchaseList(ctx, true)
	if err != nil || len(again) != len(list) || again[0].Ordered != list[0].Needed || again[0].Needed != list[0].Needed {
		t.Errorf("got %+v, %v\nwas %+v", again, err, list)
	}
}

func TestTakeStep_onlyOfAcceptedQuotes(t *testing.T) {
	s := demoStore(t)
	step := catalog.Step{Name: catalog.ArtApproved, On: day, Who: "Ada", How: "by e-mail"}
	if err := s.TakeStep(ctx, 1, step); !errors.Is(err, store.ErrTransition) {
		t.Errorf("a draft's step: %v", err)
	}
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	must(t, s.TakeStep(ctx, 1, step))
	if h := head(t, s, 1); len(h.Steps) != 1 || h.Steps[0] != step || h.NextStep != "order goods" {
		t.Errorf("got %v, next %q", h.Steps, h.NextStep)
	}
	must(t, s.UndoStep(ctx, 1, catalog.ArtApproved))
	if h := head(t, s, 1); len(h.Steps) != 0 || h.NextStep != "get artwork approved" {
		t.Errorf("taken back: %v, next %q", h.Steps, h.NextStep)
	}
	if err := s.TakeStep(ctx, 1, catalog.Step{Name: "danced", On: "x"}); err == nil {
		t.Error("an unknown step on no day went through")
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
	must(t, s.UseFromShelf(ctx, blank.ID, 1, 2))
	if got := count(); got != before-2 {
		t.Errorf("two from the shelf: %d to buy, were %d", got, before)
	}
	if err := s.UseFromShelf(ctx, blank.ID, 1, 2); err == nil {
		t.Error("two more were taken, and one was there")
	}
	if _, err := s.SaveShelfItem(ctx, catalog.ShelfItem{Kind: "sock"}); err == nil {
		t.Error("a sock is kept")
	}
}

// Every frozen revision comes to the same with today's engine, to the cent.
func TestRevision_demoAndTestJobsRepriceToTheCent(t *testing.T) {
	s := demoStore(t)
	for _, id := range []int64{1, 2, 3} {
		sent(t, s, id)
	}
	n := 0
	must(t, s.EachRevision(ctx, func(r catalog.Revision, err error) error {
		must(t, err)
		n++
		return r.Recheck()
	}))
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "jobs", "*.job.json"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no test jobs: %v", err)
	}
	for _, file := range files {
		job, err := jobfile.Decode(readFile(t, file))
		must(t, err)
		r, _, err := catalog.NewRevision(job)
		must(t, err)
		if err := r.Recheck(); err != nil {
			t.Errorf("%s: %v", file, err)
		}
		n++
	}
	t.Logf("%d revisions priced anew", n)
}

func readFile(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	must(t, err)
	return data
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
