package store

import (
	"context"
	"runtime"
	"slices"
	"sync"

	"pressworth/catalog"
)

// atOnce is how many styles are read from the catalog in one go.
const atOnce = 500

// compareEach looks at styles price by price, several lots of them at a time.
func (s *Store) compareEach(ctx context.Context, p *ImportPlan, differ []pairOf) error {
	var lots []func(*comparer) error
	for chunk := range slices.Chunk(differ, atOnce) {
		lots = append(lots, func(c *comparer) error { return s.comparePairs(ctx, c, chunk) })
	}
	for chunk := range slices.Chunk(p.gone, atOnce) {
		lots = append(lots, func(c *comparer) error { return s.compareGone(ctx, c, chunk) })
	}
	found, err := compareLots(p, lots)
	if err != nil {
		return err
	}
	var dearer, cheaper []float64
	for _, c := range found { // in the order of the lots: a report is the same every time
		dearer, cheaper = append(dearer, c.dearer...), append(cheaper, c.cheaper...)
		p.changed = append(p.changed, c.changed...)
		for kind, n := range c.counts {
			p.Report.Counts[kind] += n
		}
		room := max(catalog.ListedChanges-len(p.Report.Changes), 0)
		p.Report.Changes = append(p.Report.Changes, c.changes[:min(len(c.changes), room)]...)
		for _, x := range c.same {
			p.same[x.id] = x.said
		}
	}
	p.Report.DearerBy, p.Report.CheaperBy = spread(dearer), spread(cheaper)
	return nil
}

// compareLots does lots on as many goroutines as there are processors; the first error in their order comes back.
func compareLots(p *ImportPlan, lots []func(*comparer) error) ([]*comparer, error) {
	found, errs := make([]*comparer, len(lots)), make([]error, len(lots))
	next := make(chan int, len(lots))
	for i := range lots {
		next <- i
	}
	close(next)
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(lots)) {
		all.Go(func() {
			for i := range next {
				found[i] = &comparer{plan: p, counts: make(map[string]int)}
				errs[i] = lots[i](found[i])
			}
		})
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return found, nil
}

func (s *Store) comparePairs(ctx context.Context, c *comparer, pairs []pairOf) error {
	ids := make([]int64, len(pairs))
	for i, x := range pairs {
		ids[i] = x.id
	}
	olds, err := s.oldStyles(ctx, ids)
	if err != nil {
		return err
	}
	for _, x := range pairs {
		c.style(olds[x.id], x.at)
	}
	return nil
}

func (s *Store) compareGone(ctx context.Context, c *comparer, ids []int64) error {
	olds, err := s.oldStyles(ctx, ids)
	if err != nil {
		return err
	}
	for _, id := range ids {
		c.gone(olds[id])
	}
	return nil
}
