package booktest

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/book"
)

// OptionDraft is part of book.Options.
func (b *Book) OptionDraft(ctx context.Context, id int64, position int) (catalog.Draft, error) {
	d, err := b.Draft(ctx, id)
	d.Option = position
	return d, err
}

// CopyOption is part of book.Options.
func (b *Book) CopyOption(_ context.Context, id int64, _ int, name string) (catalog.Option, error) {
	e, err := b.at(id)
	if err != nil {
		return catalog.Option{}, err
	}
	add := func(name string) {
		e.QuoteHead.Options = append(e.QuoteHead.Options, catalog.Option{
			Position: len(e.QuoteHead.Options) + 1, Name: name, Draft: e.draft, Pieces: e.Pieces, Total: e.Total, Margin: e.Margin,
		})
	}
	if len(e.QuoteHead.Options) == 0 {
		add("as quoted")
	}
	add(name)
	e.QuoteRow.Options = len(e.QuoteHead.Options)
	return e.QuoteHead.Options[len(e.QuoteHead.Options)-1], nil
}

// RenameOption is part of book.Options.
func (b *Book) RenameOption(_ context.Context, id int64, position int, name string) error {
	e, err := b.at(id)
	if err == nil {
		e.QuoteHead.Options[position-1].Name = name
	}
	return err
}

// RemoveOption is part of book.Options.
func (b *Book) RemoveOption(_ context.Context, id int64, position int) (book.Back, error) {
	e, err := b.at(id)
	if err != nil {
		return nil, err
	}
	was := e.QuoteHead.Options
	set := func(all []catalog.Option) {
		e.QuoteHead.Options, e.QuoteRow.Options = all, len(all)
	}
	set(slices.DeleteFunc(slices.Clone(was), func(o catalog.Option) bool { return o.Position == position }))
	return func(context.Context) error {
		set(was)
		return b.Fails
	}, nil
}

// PurchaseList is part of book.Buying.
func (b *Book) PurchaseList(_ context.Context, all bool) ([]catalog.PurchaseRow, error) {
	var out []catalog.PurchaseRow
	for _, p := range b.parts {
		if !all && p.Received+p.Short >= p.Needed {
			continue
		}
		same := func(r catalog.PurchaseRow) bool {
			return r.Supplier == p.row.Supplier && r.Style == p.row.Style && r.Color == p.row.Color && r.Size == p.row.Size && r.Card == p.row.Card && r.What == p.row.What
		}
		k := slices.IndexFunc(out, same)
		if k < 0 {
			k = len(out)
			out = append(out, p.row)
		}
		out[k].Needed, out[k].Ordered = out[k].Needed+p.Needed, out[k].Ordered+p.Ordered
		out[k].Received, out[k].Short = out[k].Received+p.Received, out[k].Short+p.Short
		out[k].Quotes = append(out[k].Quotes, p.PurchasePart)
	}
	return out, b.Fails
}

// MarkPurchase is part of book.Buying.
func (b *Book) MarkPurchase(_ context.Context, parts []int64, to, _ string) error {
	for _, p := range b.parts {
		if !slices.Contains(parts, p.ID) {
			continue
		}
		switch to {
		case "ordered":
			p.Ordered, p.Received = p.Needed, 0
		case "received":
			p.Received = p.Ordered - p.Short
		case "open":
			p.Ordered, p.Received, p.Short = 0, 0, 0
		default:
			return fmt.Errorf("no such state: %s", to)
		}
	}
	return b.Fails
}

// ReceivePart is part of book.Buying.
func (b *Book) ReceivePart(_ context.Context, id int64, received, short int, note string) error {
	for _, p := range b.parts {
		if p.ID == id {
			p.Received, p.Short, p.Note = received, short, note
		}
	}
	return b.Fails
}

// Customers is part of book.People.
func (b *Book) Customers(_ context.Context, words string, _ int) ([]catalog.Customer, error) {
	var out []catalog.Customer
	for _, c := range b.people {
		if strings.Contains(strings.ToLower(c.Name+" "+c.Contact+" "+c.Email+" "+c.Phone), strings.ToLower(words)) {
			out = append(out, c)
		}
	}
	return out, b.Fails
}

// Customer is part of book.People.
func (b *Book) Customer(_ context.Context, id int64) (catalog.Customer, error) {
	for _, c := range b.people {
		if c.ID == id {
			return c, b.Fails
		}
	}
	return catalog.Customer{}, fmt.Errorf("no customer %d", id)
}

// SaveCustomer is part of book.People.
func (b *Book) SaveCustomer(_ context.Context, c catalog.Customer) (catalog.Customer, error) {
	if problems := c.Check(); len(problems) > 0 {
		return c, quote.Problems(problems)
	}
	if c.ID == 0 {
		c.ID = b.id()
		b.people = append(b.people, c)
	}
	for i := range b.people {
		if b.people[i].ID == c.ID {
			b.people[i] = c
		}
	}
	return c, b.Fails
}

// MergeCustomers is part of book.People.
func (b *Book) MergeCustomers(_ context.Context, keep, gone int64) (book.Back, error) {
	were, moved := b.people, []*entry{}
	b.people = slices.DeleteFunc(slices.Clone(b.people), func(c catalog.Customer) bool { return c.ID == gone })
	for _, e := range b.quotes {
		if e.CustomerID == gone {
			e.CustomerID, moved = keep, append(moved, e)
		}
	}
	return func(context.Context) error {
		b.people = were
		for _, e := range moved {
			e.CustomerID = gone
		}
		return b.Fails
	}, b.Fails
}

// DoubleCustomers is part of book.People: those with the same e-mail.
func (b *Book) DoubleCustomers(context.Context) ([][]catalog.Customer, error) {
	var out [][]catalog.Customer
	for i, c := range b.people {
		for _, d := range b.people[i+1:] {
			if c.Email != "" && c.Email == d.Email {
				out = append(out, []catalog.Customer{c, d})
			}
		}
	}
	return out, b.Fails
}

// Designs is part of book.People.
func (b *Book) Designs(_ context.Context, customer int64) ([]catalog.Design, error) {
	var out []catalog.Design
	for _, d := range b.designs {
		if d.CustomerID == customer {
			out = append(out, d)
		}
	}
	return out, b.Fails
}

// SaveDesign is part of book.People.
func (b *Book) SaveDesign(_ context.Context, d catalog.Design) (catalog.Design, error) {
	if problems := d.Check(); len(problems) > 0 {
		return d, quote.Problems(problems)
	}
	if d.ID == 0 {
		d.ID = b.id()
	}
	b.designs = append(slices.DeleteFunc(slices.Clone(b.designs), func(x catalog.Design) bool { return x.ID == d.ID }), d)
	return d, b.Fails
}

// RemoveDesign is part of book.People.
func (b *Book) RemoveDesign(_ context.Context, id int64) error {
	b.designs = slices.DeleteFunc(slices.Clone(b.designs), func(x catalog.Design) bool { return x.ID == id })
	return b.Fails
}

// KeepArtwork is part of book.People: a full back.
func (b *Book) KeepArtwork(_ context.Context, id int64) ([]catalog.Design, book.Back, error) {
	e, err := b.at(id)
	if err != nil {
		return nil, nil, err
	}
	were := b.designs
	d := catalog.Design{
		ID: b.id(), CustomerID: e.CustomerID, Name: "Full back", Inks: "white, gold", Card: "sheets", LastQuote: e.Number, Runs: 1,
		Sizes: []catalog.DesignSize{{Width: "11", Height: "8.5"}},
	}
	b.designs = append(slices.Clone(were), d)
	return []catalog.Design{d}, func(context.Context) error {
		b.designs = were
		return b.Fails
	}, b.Fails
}

// Cards is part of book.People.
func (b *Book) Cards(context.Context) ([]book.Card, error) {
	return []book.Card{{Key: "sheets", Name: "Plastisol sheets"}, {Key: "film", Name: "Film by area"}}, b.Fails
}

// Of is part of book.People.
func (b *Book) Of(_ context.Context, customer int64) ([]catalog.QuoteRow, error) {
	var out []catalog.QuoteRow
	for _, e := range b.quotes {
		if e.CustomerID == customer {
			out = append(out, e.QuoteRow)
		}
	}
	return out, b.Fails
}

// Levels is part of book.People.
func (b *Book) Levels(context.Context) ([]string, error) {
	return []string{"retail", "club"}, b.Fails
}

// Shelf is part of book.Shelf.
func (b *Book) Shelf(context.Context) ([]catalog.ShelfItem, error) { return b.shelf, b.Fails }

// SaveShelfItem is part of book.Shelf.
func (b *Book) SaveShelfItem(_ context.Context, s catalog.ShelfItem) (catalog.ShelfItem, error) {
	if s.ID == 0 {
		s.ID = b.id()
	}
	b.shelf = append(slices.DeleteFunc(slices.Clone(b.shelf), func(x catalog.ShelfItem) bool { return x.ID == s.ID }), s)
	return s, b.Fails
}

// RemoveShelfItem is part of book.Shelf.
func (b *Book) RemoveShelfItem(_ context.Context, id int64) error {
	b.shelf = slices.DeleteFunc(slices.Clone(b.shelf), func(x catalog.ShelfItem) bool { return x.ID == id })
	return b.Fails
}

// ShelfOffers are all things on the shelf: every quote could use them.
func (b *Book) ShelfOffers(context.Context, catalog.Draft) ([]catalog.ShelfOffer, error) {
	var out []catalog.ShelfOffer
	for _, x := range b.shelf {
		out = append(out, catalog.ShelfOffer{Item: x, Use: x.Qty, Text: fmt.Sprintf("%d of %s%s on the shelf", x.Qty, x.Style, x.Name)})
	}
	return out, b.Fails
}

// UseFromShelf is part of book.Shelf.
func (b *Book) UseFromShelf(_ context.Context, item, _ int64, n int) (book.Back, error) {
	were := slices.Clone(b.shelf)
	for i := range b.shelf {
		if b.shelf[i].ID == item {
			b.shelf[i].Qty -= n
		}
	}
	b.shelf = slices.DeleteFunc(slices.Clone(b.shelf), func(x catalog.ShelfItem) bool { return x.Qty == 0 })
	return func(context.Context) error {
		b.shelf = were
		return b.Fails
	}, b.Fails
}

// Write is part of book.Papers.
func (b *Book) Write(_ context.Context, id int64, p book.Paper, spoiled []book.Spoiled) (string, error) {
	b.Written = append(b.Written, strings.TrimSpace(fmt.Sprintf("%s of %d %s", p, id, spoiledWords(spoiled))))
	return "/papers/" + string(p), b.Fails
}

func spoiledWords(all []book.Spoiled) string {
	out := ""
	for _, s := range all {
		out += fmt.Sprintf("%s×%d", s.Size, s.Qty)
		if s.Row > 0 {
			out += fmt.Sprintf(" of line %d ", s.Row)
		}
	}
	return out
}

// Bookkeeping is part of book.Papers.
func (b *Book) Bookkeeping(_ context.Context, from, to string) (string, error) {
	b.Written = append(b.Written, "bookkeeping "+from+" "+to)
	return "/papers/bookkeeping", b.Fails
}

// BuyingList is part of book.Papers.
func (b *Book) BuyingList(_ context.Context, supplier string) (string, error) {
	b.Written = append(b.Written, "buying "+supplier)
	return "/papers/buying", b.Fails
}

// Text is part of book.Papers.
func (b *Book) Text(context.Context, int64) (string, error) { return "the quote", b.Fails }

// ReadyText is part of book.Papers.
func (b *Book) ReadyText(context.Context, int64) (string, error) {
	return "Your order is ready to collect", b.Fails
}

// OpenFile is part of book.Papers.
func (b *Book) OpenFile(path string) error {
	b.Shown = append(b.Shown, path)
	return nil
}

// Place is the Quote book over this book, with everything it can offer.
func (b *Book) Place() *book.Place {
	p := book.New(b)
	p.Ledger, p.Options, p.Buying, p.People, p.Shelf, p.Papers, p.Compare = b, b, b, b, b, b, b
	p.Now = func() time.Time { return Day }
	p.OnOpen, p.OnCopy = func(catalog.Draft) {}, func(catalog.Draft) {}
	return p
}
