// Package present holds what stands behind the Counter: the draft being typed, its history, its price after every
// edit, and everything the window says about it, in words and grouped figures ready to be shown.
//
// Data has one way through: an edit makes a new draft, the draft is frozen and priced, the outcome becomes a View. A
// presenter belongs to one goroutine, the window's; the only work that leaves it goes through Shop.Background.
//
// Not in this package: the toolkit and its widgets (ui/counter, ui/customer, ui/chart), rules of pricing (quote), files.
package present
