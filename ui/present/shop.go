package present

import (
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// Shop is what the Counter asks of the rest of the program.
type Shop interface {
	// Book gives the prices in force on a day, with at least the named styles.
	Book(styles []int64, on string) (catalog.Book, error)
	// FindStyles finds blanks by words; the shop's usual ones first. An empty query gives the usual and the recent.
	FindStyles(query string, limit int) []catalog.StyleRow
	// FindCustomers finds customers by words; an empty query gives the recent.
	FindCustomers(query string, limit int) []catalog.DraftCustomer
	// Save keeps a draft with its figures, nil where it cannot be priced as it stands, and returns it with the number and
	// id it was given.
	Save(d catalog.Draft, figures *quote.Result) (catalog.Draft, error)
	// Background does work off the window's goroutine and then onUI on it.
	Background(work func() (onUI func()))
	// Pause does something on the window's goroutine a moment later, when a typist who goes on would have pressed the
	// next key.
	Pause(then func())
	// Now is the time of day at the counter.
	Now() time.Time
}

// Engine is the pricing engine as the Counter calls it.
type Engine struct {
	Freeze func(d catalog.Draft, b catalog.Book, on string) (quote.Job, []quote.Problem)
	// Price works a job out on the key; where Whole is given, only as far as the key needs.
	Price func(quote.Job) (quote.Result, error)
	// Whole works a job out in full. It is called off the window's goroutine; nil: Price does.
	Whole func(quote.Job) (quote.Result, error)
	// Settled works a job out in full on the window's goroutine, for papers that cannot wait.
	Settled func(quote.Job) (quote.Result, error)
	// Cheapest finds the bands of the cheapest cards, off the window's goroutine; nil: there are none.
	Cheapest func(job quote.Job, placement string, upto int) (quote.CheapestFromTo, error)
	// Stop gives up what Whole, Cheapest or Levers is at; its error is dropped. nil: it goes on to its end.
	Stop func()
	// Levers finds what would change the price most, off the window's goroutine; nil: it cannot be asked.
	Levers func(job quote.Job) ([]quote.Lever, error)
}
