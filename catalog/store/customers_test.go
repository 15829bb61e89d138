package store_test

import (
	"errors"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
)

func TestSaveCustomer_comesBackAndRenamesItsQuotes(t *testing.T) {
	s := demoStore(t)
	d, err := s.Draft(ctx, 1)
	must(t, err)
	c, err := s.Customer(ctx, d.Customer.ID)
	must(t, err)
	c.Name, c.Terms, c.NetDays, c.PONumber, c.Level = "Harbour Rowers 漕艇", catalog.PayWithOrder, 30, "PO-9", "Club and school"
	c.TaxExempt, c.Certificate, c.CertificateUntil, c.Notes = true, "EX-77", "2027-01-31", "likes it navy"
	saved, err := s.SaveCustomer(ctx, c)
	must(t, err)
	if got, err := s.Customer(ctx, c.ID); err != nil || got != c || saved != c {
		t.Errorf("got %+v, %v\nwant %+v", got, err, c)
	}
	if found, err := s.Quotes(ctx, quotesOf("漕艇")); err != nil || len(found) != 1 || found[0].Customer != c.Name {
		t.Errorf("its quote by the new name: %+v, %v", found, err)
	}
	if d, err = s.Draft(ctx, 1); err != nil || d.Customer.Name != c.Name {
		t.Errorf("the draft names %q, %v", d.Customer.Name, err)
	}
	c.Name = "a\nb"
	var problems quote.Problems
	if _, err := s.SaveCustomer(ctx, c); !errors.As(err, &problems) {
		t.Errorf("a name on two lines: %v", err)
	}
}

func TestSaveDraft_leavesTermsOfItsCustomer(t *testing.T) {
	s := demoStore(t)
	d, err := s.Draft(ctx, 1)
	must(t, err)
	c, err := s.Customer(ctx, d.Customer.ID)
	must(t, err)
	c.Terms, c.NetDays = catalog.PayNetDays, 14
	_, err = s.SaveCustomer(ctx, c)
	must(t, err)
	d.Customer.Phone = "555 0111"
	_, err = s.SaveDraft(ctx, d, nil)
	must(t, err)
	if got, err := s.Customer(ctx, c.ID); err != nil || got.NetDays != 14 || got.Phone != "555 0111" {
		t.Errorf("got %+v, %v", got, err)
	}
}

func TestCustomers_foundAsTypedInAnyScript(t *testing.T) {
	s := demoStore(t)
	for _, name := range []string{"Ångström & Søn", "Школа плавания", "مدرسة الميناء", "青い海 バンド", "O'Neill's “Quay” Players"} {
		_, err := s.SaveCustomer(ctx, catalog.Customer{Name: name})
		must(t, err)
	}
	for words, want := range map[string]string{
		"angs": "Ångström & Søn", "плав": "Школа плавания", "المي": "مدرسة الميناء", "青い": "青い海 バンド", "quay pl": "O'Neill's “Quay” Players", "tamsin@harb": "Harbour Rowing Club",
	} {
		if found, err := s.Customers(ctx, words, 5); err != nil || len(found) != 1 || found[0].Name != want {
			t.Errorf("%q: got %+v, %v, want %s", words, found, err, want)
		}
	}
}

func TestMergeCustomers_everythingGoesOver(t *testing.T) {
	s := demoStore(t)
	a, err := s.Draft(ctx, 1)
	must(t, err)
	b, err := s.Draft(ctx, 2)
	must(t, err)
	keep, gone := a.Customer.ID, b.Customer.ID
	r := sent(t, s, 2)
	must(t, s.Accept(ctx, 2, r.ID, day, ""))
	_, err = s.Pay(ctx, catalog.Payment{QuoteID: 2, On: day, Way: "cash", Amount: amount(t, "10.00")})
	must(t, err)
	_, err = s.SaveDesign(ctx, catalog.Design{CustomerID: gone, Name: "Tote front"})
	must(t, err)
	_, err = s.SaveShelfItem(ctx, catalog.ShelfItem{Kind: catalog.ShelfTransfer, CustomerID: gone, Name: "Tote front", Qty: 4})
	must(t, err)
	_, err = s.MergeCustomers(ctx, keep, gone)
	must(t, err)
	quotes, err := s.Quotes(ctx, store.QuoteFilter{CustomerID: keep})
	if err != nil || len(quotes) != 2 || quotes[0].Customer != a.Customer.Name || quotes[1].Customer != a.Customer.Name {
		t.Errorf("quotes: %+v, %v", quotes, err)
	}
	if h := head(t, s, 2); h.CustomerID != keep || h.Account.Paid.String() != "10.00" {
		t.Errorf("its quote: customer %d, paid %s", h.CustomerID, h.Account.Paid)
	}
	designs, err := s.Designs(ctx, keep)
	shelf, err2 := s.Shelf(ctx)
	if err != nil || err2 != nil || len(designs) != 1 || len(shelf) != 1 || shelf[0].CustomerID != keep {
		t.Errorf("designs %+v, shelf %+v, %v, %v", designs, shelf, err, err2)
	}
	if _, err := s.Customer(ctx, gone); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("the other one: %v", err)
	}
	if found, err := s.Customers(ctx, "amaryllis", 5); err != nil || len(found) != 0 {
		t.Errorf("found by the old name: %+v, %v", found, err)
	}
	// the Counter may still hold a draft that names the one who is gone
	if d, err := s.SaveDraft(ctx, b, nil); err != nil || d.Customer.ID == gone {
		t.Errorf("an older copy saved: customer %d, %v", d.Customer.ID, err)
	}
	if frozen, err := s.Revision(ctx, r.ID); err != nil || !strings.Contains(string(frozen.Job), b.Customer.Name) {
		t.Errorf("the frozen revision no longer says whom it was sent to: %v", err)
	}
	if _, err := s.MergeCustomers(ctx, keep, keep); err == nil {
		t.Error("one was merged with itself")
	}
}

func TestDoubleCustomers_bySignsInCommon(t *testing.T) {
	s := demoStore(t)
	for _, c := range []catalog.Customer{
		{Name: "harbour rowing-club"}, {Name: "H. R. C.", Phone: "(555) 0200-11"}, {Name: "Rowers", Phone: "555 020011", Email: "x@y.example"}, {Name: "X", Email: "X@Y.example"},
	} {
		_, err := s.SaveCustomer(ctx, c)
		must(t, err)
	}
	sets, err := s.DoubleCustomers(ctx)
	if err != nil || len(sets) != 2 || len(sets[0]) != 2 || len(sets[1]) != 3 {
		t.Errorf("got %+v, %v", sets, err)
	}
}

func TestQuotes_foundByWordNumberDateAndAmount(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	must(t, s.SetDates(ctx, 2, "2026-06-09", "2026-07-01"))
	d, err := s.Draft(ctx, 1)
	must(t, err)
	_, result, err := openRevision(s, r.ID)
	must(t, err)
	_, err = s.SaveDraft(ctx, d, &result)
	must(t, err)
	for words, want := range map[string]string{
		"regatta": "1", "rowing har": "1", "2026-0003": "3", "odile": "2", "2026-06-09": "2", "2026-07": "2", d.NeededBy: "1", r.Total: "1",
		"sent": "1", "gold": "1", "hoodie pres": "3", "2026-06-10": "", "polos 3": "", "natural": "2",
	} {
		found, err := s.Quotes(ctx, quotesOf(words))
		must(t, err)
		got := ""
		for _, q := range found {
			got += q.Number[8:]
		}
		if got != want {
			t.Errorf("%q: got %q, want %q", words, got, want)
		}
	}
}

func openRevision(s *store.Store, id int64) (job quote.Job, result quote.Result, err error) {
	r, err := s.Revision(ctx, id)
	if err != nil {
		return job, result, err
	}
	return r.Open()
}

func TestQuotes_sortedWithTheUnknownLast(t *testing.T) {
	s := demoStore(t)
	for id, total := range map[int64]string{1: "900.00", 2: "1400.00"} {
		_, err := rawWriter(t, s.Path()).ExecContext(ctx, "UPDATE quote SET total = ? WHERE id = ?", total, id)
		must(t, err)
	}
	for _, c := range []struct {
		sort string
		down bool
		want string
	}{
		{"total", false, "123"}, {"total", true, "213"}, {"number", true, "321"}, {"customer", false, "213"}, {"pieces", false, "312"}, {"unheard of", false, "321"},
	} {
		found, err := s.Quotes(ctx, store.QuoteFilter{Sort: c.sort, Descending: c.down})
		must(t, err)
		got := ""
		for _, q := range found {
			got += q.Number[8:]
		}
		if got != c.want {
			t.Errorf("%s, down %v: got %s, want %s", c.sort, c.down, got, c.want)
		}
	}
}
