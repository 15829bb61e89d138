package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// SaveStyle keeps a style as a person wrote it; ID 0 makes a new one. Prices that differ from those in force hold from
// today on as list prices, entered by that person. It comes back with its id.
func (s *Store) SaveStyle(ctx context.Context, x catalog.Style, person string) (catalog.Style, error) {
	var old catalog.Style
	if x.ID != 0 {
		var err error
		if old, err = s.Style(ctx, x.ID); err != nil {
			return x, err
		}
	}
	return s.keepStyle(ctx, x, func(w *writer) { x.ID = s.saveStyle(w, old, x, person) }, &x)
}

// StyleAsListed reads a style with the prices of its list in force today, and beside them the shop's own prices and sales
// that hold or will.
func (s *Store) StyleAsListed(ctx context.Context, id int64) (catalog.Style, []catalog.Price, error) {
	x, err := s.Style(ctx, id)
	if err != nil {
		return x, nil, err
	}
	entries, err := s.Prices(ctx, id)
	if err != nil {
		return x, nil, err
	}
	priced := x.PricedOn
	x.SetPrices(catalog.InForce(catalog.Listed(entries), s.today()), "")
	x.PricedOn = priced
	return x, catalog.OwnOn(entries, s.today()), nil
}

// SaveListed keeps a style as SaveStyle does, its prices being those of the list, and with it the shop's own prices and
// sales: those that are new are added, those that are there no more are taken back from today on.
func (s *Store) SaveListed(ctx context.Context, x catalog.Style, own []catalog.Price, person string) (catalog.Style, error) {
	var old catalog.Style
	var was []catalog.Price
	if x.ID != 0 {
		var err error
		if old, was, err = s.StyleAsListed(ctx, x.ID); err != nil {
			return x, err
		}
	}
	if problems := catalog.CheckOwn(x, own, was, s.today()); len(problems) > 0 {
		return x, fmt.Errorf("save style %s: %w", x.Number, quote.Problems(problems))
	}
	return s.keepStyle(ctx, x, func(w *writer) {
		x.ID = s.saveStyle(w, old, x, person)
		s.saveOwn(w, x, was, own, person)
	}, &x)
}

func (s *Store) keepStyle(ctx context.Context, x catalog.Style, save func(*writer), kept *catalog.Style) (catalog.Style, error) {
	if problems := catalog.CheckStyle(x); len(problems) > 0 {
		return x, fmt.Errorf("save style %s: %w", x.Number, quote.Problems(problems))
	}
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		save(&w)
		return w.err
	})
	if err != nil {
		return x, fmt.Errorf("save style %s: %w", x.Number, err)
	}
	s.version.Add(1)
	return s.Style(ctx, kept.ID)
}

// saveOwn adds the entries that make of the net and sale prices that were those that are wanted.
func (s *Store) saveOwn(w *writer, x catalog.Style, was, now []catalog.Price, person string) {
	var entries []catalog.Price
	for _, p := range was {
		if !slices.ContainsFunc(now, p.Replaces) {
			entries = append(entries, catalog.Price{Color: p.Color, Size: p.Size, Kind: p.Kind, From: max(p.From, s.today())})
		}
	}
	for _, p := range now {
		if !slices.ContainsFunc(was, p.SaysAs) {
			entries = append(entries, s.insteadOf(was, p)...)
		}
	}
	if len(entries) == 0 {
		return
	}
	f := s.byPerson(w, x.SupplierID, person)
	for _, e := range entries {
		e.StyleID, e.File = x.ID, f
		insertPrice(w, e)
	}
	w.do("UPDATE style SET edits = edits + 1, said = 0 WHERE id = ?", x.ID)
}

func (s *Store) saveStyle(w *writer, old, x catalog.Style, person string) int64 {
	if x.ID == 0 {
		x.ID = insertStyle(w, x, sql.NullInt64{})
	} else {
		updateStyle(w, x)
		if !slices.EqualFunc(old.Colors, x.Colors, sameColor) {
			replaceColors(w, x)
		}
		indexWords(w, x.ID)
	}
	s.savePrices(w, old, x, person)
	return x.ID
}

// insteadOf are the entries of a net or sale price, with those that keep the one it replaces from coming back.
func (s *Store) insteadOf(was []catalog.Price, p catalog.Price) []catalog.Price {
	p.From = max(p.From, s.today())
	entries := []catalog.Price{p}
	for _, old := range was {
		if !p.Replaces(old) {
			continue
		}
		if old.From > p.From && (p.Until == "" || old.From <= p.Until) {
			again := p
			again.From = old.From
			entries = append(entries, again)
		}
		if p.Until != "" && (old.Until == "" || old.Until > p.Until) {
			entries = append(entries, catalog.Price{Color: p.Color, Size: p.Size, Kind: p.Kind, From: max(dayAfter(p.Until), old.From)})
		}
	}
	return entries
}

func dayAfter(day string) string {
	t, _ := time.Parse(time.DateOnly, day) // it was checked
	return t.AddDate(0, 0, 1).Format(time.DateOnly)
}

func updateStyle(w *writer, x catalog.Style) {
	w.do(`UPDATE style SET supplier_id = ?, number = ?, name = ?, mill = ?, category = ?, fabric = ?, weight = ?, tags = ?, heat_limit = ?,
		caution = ?, handling = ?, clothing = ?, usual = ?, retired = ?, printable = ?, edits = edits + 1, said = 0 WHERE id = ?`,
		x.SupplierID, x.Number, x.Name, x.Mill, x.Category, x.Fabric, x.Weight.String(), asJSON(x.Tags), x.HeatLimit, x.Caution, handling(x),
		!x.NotClothing, x.Usual, x.Retired, asJSON(x.Printable), x.ID)
}

func sameColor(a, b catalog.Color) bool {
	return a.Name == b.Name && a.Hex == b.Hex && a.Shade == b.Shade && a.Retired == b.Retired && slices.Equal(a.Sizes, b.Sizes)
}

func replaceColors(w *writer, x catalog.Style) {
	w.do("DELETE FROM color WHERE style_id = ?", x.ID)
	insertColors(w, x.ID, x.Colors, sql.NullInt64{})
}

// savePrices adds an entry for each price that differs from the one in force, and for each size that is there no more.
func (s *Store) savePrices(w *writer, old, x catalog.Style, person string) {
	was, now := cellsOf(old), cellsOf(x)
	var entries []catalog.Price
	for _, c := range now {
		if i := indexOf(was, c); i < 0 || catalog.WriteBreaks(was[i].Each) != catalog.WriteBreaks(c.Each) {
			entries = append(entries, c)
		}
	}
	for _, c := range was {
		if indexOf(now, c) < 0 {
			c.Kind, c.Each = catalog.GonePrice, nil
			entries = append(entries, c)
		}
	}
	if len(entries) == 0 {
		return
	}
	f := s.byPerson(w, x.SupplierID, person)
	for _, e := range entries {
		e.StyleID, e.From, e.File = x.ID, s.today(), f
		insertPrice(w, e)
	}
}

// cellsOf are a style's prices in force, one for each size, and size of a colour with its own.
func cellsOf(x catalog.Style) []catalog.Price {
	var out []catalog.Price
	for _, z := range x.Sizes {
		out = append(out, catalog.Price{Size: z.Size, Kind: catalog.ListPrice, Each: z.Each})
	}
	for color, own := range x.ByColor {
		for _, z := range own {
			out = append(out, catalog.Price{Color: color, Size: z.Size, Kind: catalog.ListPrice, Each: z.Each})
		}
	}
	return out
}

func indexOf(all []catalog.Price, p catalog.Price) int {
	return slices.IndexFunc(all, func(q catalog.Price) bool { return q.Color == p.Color && q.Size == p.Size })
}

// byPerson notes that prices come from a person.
func (s *Store) byPerson(w *writer, supplier int64, person string) catalog.PriceFile {
	if person == "" {
		person = "by hand"
	}
	f := catalog.PriceFile{SupplierID: supplier, Name: person, Source: "person", ValidFrom: s.today(), TakenAt: s.stamp()}
	f.ID = insertFile(w, f)
	return f
}

// AddPrice adds one price entry by a person: a net price, which goes before the list until its last day, or a sale.
func (s *Store) AddPrice(ctx context.Context, p catalog.Price, person string) error {
	if len(p.Each) == 0 || p.Size == "" || p.Kind == catalog.SalePrice && p.Until == "" {
		return fmt.Errorf("add price: enter a size, a price, and the last day of a sale")
	}
	x, err := s.Style(ctx, p.StyleID)
	if err != nil {
		return err
	}
	if p.From == "" {
		p.From = s.today()
	}
	err = s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		p.File = s.byPerson(&w, x.SupplierID, person)
		insertPrice(&w, p)
		w.do("UPDATE style SET edits = edits + 1, said = 0 WHERE id = ?", p.StyleID)
		return w.err
	})
	if err != nil {
		return fmt.Errorf("add price of %s: %w", x.Number, err)
	}
	s.version.Add(1)
	return nil
}
