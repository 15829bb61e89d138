package blanks

import (
	"context"

	"pressworth/catalog"
)

// Listing is the rows that a filter lets through, read from the shop file a few at a time.
type Listing interface {
	Len() int
	Rows(ctx context.Context, from, n int) ([]catalog.StyleRow, error)
}

const (
	page     = 100 // rows read at a time
	mostHeld = 24  // pages held in memory
)

// sight is the rows behind the table: those of a search, or a window on a listing of which the pages in sight are held.
type sight struct {
	found   []catalog.StyleRow
	listing Listing // nil: only found
	pages   map[int][]catalog.StyleRow
	asked   map[int]bool
	order   []int // pages held, the one read first first
}

func newSight(l Listing) *sight {
	return &sight{listing: l, pages: map[int][]catalog.StyleRow{}, asked: map[int]bool{}}
}

func (s *sight) len() int {
	if s.listing != nil {
		return s.listing.Len()
	}
	return len(s.found)
}

// at is a row, and whether it is there; where it is not its page is wanted.
func (s *sight) at(i int) (row catalog.StyleRow, there bool) {
	if i < 0 || i >= s.len() {
		return row, false
	}
	if s.listing == nil {
		return s.found[i], true
	}
	rows, ok := s.pages[i/page]
	if !ok || i%page >= len(rows) {
		return row, false
	}
	return rows[i%page], true
}

// wants tells whether a row's page is to be read, and notes that it is being read.
func (s *sight) wants(i int) (from int, yes bool) {
	p := i / page
	if s.listing == nil || s.pages[p] != nil || s.asked[p] {
		return 0, false
	}
	s.asked[p] = true
	return p * page, true
}

// hold takes a page that was read, and lets the one go that was read first.
func (s *sight) hold(from int, rows []catalog.StyleRow) {
	p := from / page
	delete(s.asked, p)
	s.pages[p] = rows
	s.order = append(s.order, p)
	if len(s.order) > mostHeld {
		delete(s.pages, s.order[0])
		s.order = s.order[1:]
	}
}

// drop forgets that a page was asked for: reading it did not work.
func (s *sight) drop(from int) { delete(s.asked, from/page) }
