package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/catalog"
)

// PriceRows gives the rows of a price file to take, and those not to be taken to refuse; its error means that none of
// the file may be used. A *pricefile.File with its columns is one.
type PriceRows func(take func(catalog.PriceRow) error, refuse func(catalog.Refused)) error

// Progress is told how far a long work is; it is called often and must be quick.
type Progress func(done, total int)

// ImportPlan is a price file compared with the catalog: what Apply would do. Nothing is written before.
type ImportPlan struct {
	Options catalog.ImportOptions
	Report  catalog.ImportReport

	file    *staged
	fresh   []int32 // styles of the file that the catalog has not
	changed []styleChange
	same    map[int64]int64 // styles that say the same in other words: their new sums
	gone    []int64
	version int64 // of the catalog it was compared with
}

// PlanImport reads a price file and compares it with the catalog, for a person to look at before anything is changed.
func (s *Store) PlanImport(ctx context.Context, rows PriceRows, o catalog.ImportOptions) (*ImportPlan, error) {
	p := &ImportPlan{Options: o, file: newStaged(), same: make(map[int64]int64), version: s.version.Load()}
	p.Report.Counts = make(map[string]int)
	if err := s.notBackwards(ctx, o); err != nil {
		return nil, fmt.Errorf("import %s: %w", o.FileName, err)
	}
	if err := p.stage(ctx, rows); err != nil {
		return nil, fmt.Errorf("import %s: %w", o.FileName, err)
	}
	p.Report.Rows = p.file.rows + p.Report.Refused
	if err := s.compare(ctx, p); err != nil {
		return nil, fmt.Errorf("import %s: %w", o.FileName, translate(err))
	}
	p.finish()
	return p, nil
}

// atHand is how many rows are read before they are put in their places, which happens beside the reading.
const atHand = 1024

// stage reads the rows of the file on one goroutine and puts them in their places on another.
func (p *ImportPlan) stage(ctx context.Context, rows PriceRows) error {
	batches, staged := make(chan []catalog.PriceRow, 4), make(chan refusals)
	go func() {
		var refused refusals
		for batch := range batches {
			for _, r := range batch {
				if x := p.file.add(r); x != nil {
					refused.add(*x)
				}
			}
		}
		staged <- refused
	}()
	var batch []catalog.PriceRow
	var unread refusals
	err := rows(func(r catalog.PriceRow) error {
		if batch = append(batch, r); len(batch) < atHand {
			return nil
		}
		batches <- batch
		batch = make([]catalog.PriceRow, 0, atHand)
		return ctx.Err()
	}, unread.add)
	batches <- batch
	close(batches)
	p.refuse(unread, <-staged)
	return err
}

// refusals are rows that are not taken: how many, and the first of them.
type refusals struct {
	count int
	first []catalog.Refused
}

func (r *refusals) add(x catalog.Refused) {
	if r.count++; len(r.first) < catalog.ListedChanges {
		r.first = append(r.first, x)
	}
}

// refuse notes refusals in the order of the file.
func (p *ImportPlan) refuse(a, b refusals) {
	all := slices.Concat(a.first, b.first)
	slices.SortStableFunc(all, func(x, y catalog.Refused) int { return x.Line - y.Line })
	p.Report.Refused = a.count + b.count
	p.Report.Refusals = all[:min(len(all), catalog.ListedChanges)]
}

// notBackwards refuses a list without a proper day, and one that is older than the last: its prices would never hold.
func (s *Store) notBackwards(ctx context.Context, o catalog.ImportOptions) error {
	if _, err := time.Parse(time.DateOnly, o.ValidFrom); err != nil {
		return fmt.Errorf("its prices hold from %q: enter a day as year-month-day", o.ValidFrom)
	}
	var last string
	err := s.read.QueryRowContext(ctx, "SELECT coalesce(max(valid_from), '') FROM price_file WHERE supplier_id = ? AND undone = 0 AND source <> 'person'",
		o.SupplierID).Scan(&last)
	if err == nil && o.ValidFrom < last {
		return fmt.Errorf("its prices hold from %s, but there are already prices from %s: choose that day or a later one", o.ValidFrom, last)
	}
	return translate(err)
}

// known is what the catalog says about a style without looking at its prices.
type known struct {
	id      int64
	said    int64
	retired bool
}

// compare finds the styles that are new, gone, or say something else than before.
func (s *Store) compare(ctx context.Context, p *ImportPlan) error {
	seen := make([]bool, len(p.file.styles))
	var differ []pairOf
	r, err := s.read.QueryContext(ctx, "SELECT id, number, said, retired FROM style WHERE supplier_id = ?", p.Options.SupplierID)
	if err != nil {
		return err
	}
	defer r.Close()
	for r.Next() {
		var k known
		var number sql.RawBytes
		if err := r.Scan(&k.id, &number, &k.said, &k.retired); err != nil {
			return err
		}
		at, listed := p.file.styleAt[small(string(number))]
		switch {
		case !listed:
			if p.Options.Whole && !k.retired {
				p.gone = append(p.gone, k.id)
			}
			continue
		case k.said != p.file.said(at) || k.retired:
			differ = append(differ, pairOf{k.id, at})
		default:
			p.Report.Counts[catalog.ChangeSame] += len(p.file.styles[at].cells)
		}
		seen[at] = true
	}
	if err := r.Err(); err != nil {
		return err
	}
	for at, was := range seen {
		if !was {
			p.fresh = append(p.fresh, int32(at))
			p.Report.Counts[catalog.ChangeNew] += len(p.file.styles[at].cells)
			p.listNew(int32(at))
		}
	}
	// In the order of numbers: the index of numbers then only grows at its end.
	slices.SortFunc(p.fresh, func(a, b int32) int { return strings.Compare(p.file.styles[a].key, p.file.styles[b].key) })
	p.Report.NewStyles, p.Report.Gone = len(p.fresh), len(p.gone)
	return s.compareEach(ctx, p, differ)
}

// pairOf is a style of the catalog and its place in the file.
type pairOf struct {
	id int64
	at int32
}

func (p *ImportPlan) listNew(at int32) {
	style := p.file.styles[at]
	for _, c := range style.cells {
		if len(p.Report.Changes) >= catalog.ListedChanges {
			return
		}
		p.Report.Changes = append(p.Report.Changes, catalog.PriceChange{
			Kind: catalog.ChangeNew, Line: int(c.line), Style: style.number, Color: p.file.texts.all[c.color], Size: p.file.texts.all[c.size],
			After: p.file.texts.all[c.price],
		})
	}
}

func spread(percents []float64) catalog.Spread {
	if len(percents) == 0 {
		return catalog.Spread{}
	}
	slices.Sort(percents)
	return catalog.Spread{Least: percents[0], Middle: percents[len(percents)/2], Most: percents[len(percents)-1]}
}

// finish lets go of what only the comparison needed.
func (p *ImportPlan) finish() {
	p.file.styleAt, p.file.attrAt, p.file.texts.at, p.file.breaks = nil, nil, nil, nil
}
