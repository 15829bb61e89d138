package store_test

import (
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// Merging can be taken back: both customers have what they had, and are found by their names.
func TestMergeCustomers_canBeTakenBack(t *testing.T) {
	s := demoStore(t)
	a, err := s.Draft(ctx, 1)
	must(t, err)
	b, err := s.Draft(ctx, 2)
	must(t, err)
	keep, gone := a.Customer.ID, b.Customer.ID
	_, err = s.SaveDesign(ctx, catalog.Design{CustomerID: gone, Name: "Tote front"})
	must(t, err)
	was, err := s.Customer(ctx, gone)
	must(t, err)
	first, err := s.Customer(ctx, keep)
	must(t, err)
	back, err := s.MergeCustomers(ctx, keep, gone)
	must(t, err)
	must(t, back(ctx))
	for _, c := range []catalog.Customer{was, first} {
		if now, err := s.Customer(ctx, c.ID); err != nil || now != c {
			t.Errorf("got %+v, %v, want %+v", now, err, c)
		}
		if found, err := s.Customers(ctx, c.Name, 5); err != nil || len(found) != 1 {
			t.Errorf("found by %q: %+v, %v", c.Name, found, err)
		}
		if quotes, err := s.Quotes(ctx, store.QuoteFilter{CustomerID: c.ID}); err != nil || len(quotes) != 1 || quotes[0].Customer != c.Name {
			t.Errorf("quotes of %s: %+v, %v", c.Name, quotes, err)
		}
	}
	if designs, err := s.Designs(ctx, gone); err != nil || len(designs) != 1 {
		t.Errorf("designs: %+v, %v", designs, err)
	}
}

// Removing an option can be taken back, of two as of three: names, places, drafts and the one in front are as before.
func TestRemoveOption_canBeTakenBack(t *testing.T) {
	s := demoStore(t)
	d, err := s.Draft(ctx, 3)
	must(t, err)
	d.Title = "the other one"
	for _, name := range []string{"with hood", "with zip"} {
		_, err := s.AddOption(ctx, 3, name, d, nil)
		must(t, err)
		was := head(t, s, 3)
		for _, o := range was.Options {
			back, err := s.RemoveOption(ctx, 3, o.Position)
			must(t, err)
			if now := head(t, s, 3); len(now.Options) == len(was.Options) {
				t.Fatalf("nothing was removed: %+v", now.Options)
			}
			must(t, back(ctx))
			now := head(t, s, 3)
			now.Changed = was.Changed
			if got, want := asJSON(t, now), asJSON(t, was); got != want {
				t.Errorf("after removing option %d and back:\n%s\nwant\n%s", o.Position, got, want)
			}
		}
	}
	back, err := s.RemoveOption(ctx, 3, 2)
	must(t, err)
	_, err = s.AddOption(ctx, 3, "with pocket", d, nil) // in the last place
	must(t, err)
	_, err = s.AddOption(ctx, 3, "with ears", d, nil) // in the place that became free
	must(t, err)
	if err := back(ctx); err == nil {
		t.Error("one was put back where another is offered")
	}
}

// Artwork can be kept on file once a quote is accepted, counts as one run however often it is kept, and can be taken off
// the file again.
func TestKeepArtwork_beforeTheJobIsFinished(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	if _, _, err := s.KeepArtwork(ctx, 1); err == nil {
		t.Error("the artwork of a quote that nobody accepted is on file")
	}
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	customer := head(t, s, 1).CustomerID
	kept, back, err := s.KeepArtwork(ctx, 1)
	must(t, err)
	if all, err := s.Designs(ctx, customer); err != nil || len(all) == 0 || len(all) != len(kept) || all[0].Runs != 1 {
		t.Errorf("kept %+v, on file %+v, %v", kept, all, err)
	}
	if again, err := s.Duplicate(ctx, 1, 0); err != nil || !again.Placements[0].OnFile {
		t.Errorf("the next quote does not know the artwork: %+v, %v", again.Placements, err)
	}
	must(t, back(ctx))
	if all, err := s.Designs(ctx, customer); err != nil || len(all) != 0 {
		t.Errorf("taken off the file: %+v, %v", all, err)
	}
	_, _, err = s.KeepArtwork(ctx, 1)
	must(t, err)
	must(t, s.Finish(ctx, 1, catalog.Actuals{}))
	if all, err := s.Designs(ctx, customer); err != nil || len(all) != len(kept) || all[0].Runs != 1 {
		t.Errorf("after finishing: %+v, %v", all, err)
	}
}
