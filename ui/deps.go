// Package ui is Pressworth's window: the rail with its five places, the menu that carries every shortcut, the bar at
// the bottom, and the turn to the customer's side. The places are packages of their own beside it.
//
// Not in this package: the shop file and documents, which are handed in as interfaces; the choice of a driver; prices.
package ui

import (
	"time"

	"fyne.io/fyne/v2"

	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/present"
)

// Place is one of the five places of the window.
type Place interface {
	Content() fyne.CanvasObject // made once
	Shown()                     // the place was gone to: what it lists may have changed
	Focus()                     // the focus goes to where one begins
}

// Undoer is a place that can take steps back; Undo and Redo of the menu reach it while it is shown.
type Undoer interface {
	Undo()
	Redo()
}

// Saver is a place with something typed that is not kept yet.
type Saver interface{ Save() error }

// Escaper is a place with pages of its own that Esc closes.
type Escaper interface{ Escape() bool }

// Paper is a document of a quote that the window can have written.
type Paper string

// The papers with a button or a menu item of their own.
const (
	QuotePaper   Paper = "Quote PDF"
	CostPaper    Paper = "Cost sheet"
	EmailPaper   Paper = "E-mail"
	ProofPaper   Paper = "Proof"
	TicketPaper  Paper = "Press ticket"
	ConfirmPaper Paper = "Order confirmation"
	InvoicePaper Paper = "Invoice"
	PackingPaper Paper = "Packing list"
	BuyPaper     Paper = "Purchase list"
	LayoutPaper  Paper = "Sheet layouts"
)

// Papers writes documents. It is called off the window's goroutine.
type Papers interface {
	// Write writes a document of a priced job and returns the path of the file.
	Write(p Paper, job quote.Job, result quote.Result) (path string, err error)
	// Open opens a file in the system's viewer or mail program.
	Open(path string) error
	// Text is the quote as plain text for a message.
	Text(job quote.Job, result quote.Result) string
}

// Settings are how a person likes the window.
type Settings struct {
	Mode    look.Mode
	Percent int // text size
}

// Deps is what the window is made of; cmd wires it.
type Deps struct {
	Presenter *present.Counter
	Book      Place
	Blanks    Place
	Cards     Place
	Shop      Place

	Papers   Papers
	Settings Settings
	Keep     func(Settings) // remembers settings
	Theme    func(fyne.Theme)

	PIN   func(typed string) bool // lets back to the shop's side; nothing is asked where an empty one does
	Trace func(line string)       // marker lines; nil: none
	After func(d time.Duration) <-chan time.Time

	ShopName string
	About    About

	LookOnly bool          // another window works on the shop file: nothing is saved here
	Backups  Backups       // nil: none are offered
	Details  func() string // what a person may send along with a question, free of the shop's data; nil: nothing
}

// Backup is a copy of the shop file.
type Backup struct {
	Path  string
	Taken time.Time
	Bytes int64
}

// Backups keeps copies of the shop file. It is called off the window's goroutine.
type Backups interface {
	List() ([]Backup, error) // the newest first
	// Make says where the copy lies, and which frozen revisions of the shop are not as they were frozen, if any.
	Make() (path, altered string, err error)
	// Restore puts a copy in the place of the shop file, which is kept beside it, and opens the program anew: on success
	// the window closes.
	Restore(path string) error
}

// About is what the about page says.
type About struct {
	Version, Toolkit, Schema string
	ShopPath                 string
	Demo                     bool
	StartOwn                 func() // starts a shop of one's own; nil: not offered
}
