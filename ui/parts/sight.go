package parts

import "context"

// Many is rows that are read a few at a time, because there may be very many.
type Many[T any] interface {
	Len() int
	Rows(ctx context.Context, from, n int) ([]T, error)
}

// What a Sight reads at a time, and holds.
const (
	SightPage = 100 // rows that a Sight reads at a time
	SightHeld = 24  // pages that it holds in memory
)

// Sight is the rows behind a table: those of a search, or a window on many, of which the pages in sight are held. The
// zero Sight has no rows.
type Sight[T any] struct {
	Found []T // all rows, where they are few
	many  Many[T]
	pages map[int][]T
	asked map[int]bool
	order []int // pages held, the one read first first
}

// NewSight makes a window on many rows.
func NewSight[T any](m Many[T]) *Sight[T] {
	return &Sight[T]{many: m, pages: map[int][]T{}, asked: map[int]bool{}}
}

// Many is what the window looks on, nil where all rows were found.
func (s *Sight[T]) Many() Many[T] { return s.many }

// Len is the number of rows.
func (s *Sight[T]) Len() int {
	if s.many != nil {
		return s.many.Len()
	}
	return len(s.Found)
}

// Held is the number of pages in memory.
func (s *Sight[T]) Held() int { return len(s.pages) }

// At is a row, and whether it is there; where it is not its page is wanted.
func (s *Sight[T]) At(i int) (row T, there bool) {
	if i < 0 || i >= s.Len() {
		return row, false
	}
	if s.many == nil {
		return s.Found[i], true
	}
	rows := s.pages[i/SightPage]
	if i%SightPage >= len(rows) {
		return row, false
	}
	return rows[i%SightPage], true
}

// Read reads the page that a row lies on and holds it; it blocks.
func (s *Sight[T]) Read(ctx context.Context, i int) error {
	from := i / SightPage * SightPage
	rows, err := s.many.Rows(ctx, from, SightPage)
	if err == nil {
		s.hold(from/SightPage, rows)
	}
	return err
}

// Fetch reads the page that a row lies on off the window's goroutine, unless it is there or on its way, and then tells
// which rows came, or why they did not.
func (s *Sight[T]) Fetch(i int, then func(from, to int, err error)) {
	p := i / SightPage
	if s.many == nil || s.pages[p] != nil || s.asked[p] {
		return
	}
	s.asked[p] = true
	Background(func() func() {
		rows, err := s.many.Rows(context.Background(), p*SightPage, SightPage)
		return func() {
			delete(s.asked, p)
			if err == nil {
				s.hold(p, rows)
			}
			then(p*SightPage, p*SightPage+len(rows), err)
		}
	})
}

// hold takes a page that was read, and lets the one go that was read first.
func (s *Sight[T]) hold(p int, rows []T) {
	if s.pages[p] == nil {
		s.order = append(s.order, p)
	}
	s.pages[p] = rows
	if len(s.order) > SightHeld {
		delete(s.pages, s.order[0])
		s.order = s.order[1:]
	}
}
