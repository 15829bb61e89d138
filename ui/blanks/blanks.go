// Package blanks is the Blanks place: the garments the shop can buy, found as one types, with their colours, sizes and
// prices beside the table.
//
// Not in this package: the shop file, which is handed in as Catalog; reading of price files; prices of a job.
package blanks

import (
	"context"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Catalog is what the place asks of the shop file.
type Catalog interface {
	FindFiltered(ctx context.Context, f catalog.StyleFilter, limit int) ([]catalog.StyleRow, error)
	List(ctx context.Context, f catalog.StyleFilter) (Listing, error)
	Style(ctx context.Context, id int64) (catalog.Style, error)
	Prices(ctx context.Context, style int64) ([]catalog.Price, error)
	Suppliers(ctx context.Context) ([]catalog.Supplier, error)
}

// Place is the Blanks place.
type Place struct {
	catalog Catalog
	search  *parts.Field
	count   *parts.Text
	table   *parts.Table
	detail  *detail
	fault   *parts.Band

	// Imports serves the import page; nil: prices cannot be imported. Choose opens the system's choice of files. After
	// gives a moment later, for progress; nil: none is shown.
	Imports Imports
	Keeper  Keeper // keeps what is edited; nil: nothing can be
	Bulk    Bulk   // changes many prices alike; nil: that cannot be done
	Choose  func(done func(path string))
	After   func(time.Duration) <-chan time.Time

	// Rules gives the shop's rules, for the age at which prices are flagged; nil: none are.
	Rules func(ctx context.Context) (catalog.Shop, error)

	now    func() time.Time
	rules  catalog.Shop
	list   fyne.CanvasObject
	stack  *fyne.Container // the list, and the import page over it
	page   *importPage
	editor *stylePage
	bulk   *bulkPage
	houses *supplierPage
	undo   []step // ways back, the latest last
	redo   []step // ways on again
	notice *parts.Band

	filter *filter
	sight  *sight
	turn   int // counts searches, to drop stale results
	words  string
}

// found is how many rows a search gives at most.
const found = 200

// New makes the place.
func New(c Catalog, now func() time.Time) *Place {
	p := &Place{
		catalog: c, now: now, notice: parts.NewBand(parts.Note, ""), search: parts.NewField("Search by style, name, colour, mill or category"),
		count: parts.NewText("", parts.MutedStyle), detail: newDetail(), fault: parts.NewBand(parts.Fault, ""), sight: &sight{},
	}
	p.filter = newFilter(func() { p.find(p.search.Text()) })
	p.search.OnChanged = p.find
	p.table = parts.NewTable([]parts.TableColumn{
		{Title: "supplier", Share: 3, Least: 560},
		{Title: "style", Width: 78},
		{Title: "name", Share: 4},
		{Title: "colour", Share: 3, Least: 380},
		{Title: "sizes", Width: 78, Least: 420},
		{Title: "from", Width: 56, Right: true},
		{Title: "priced on", Width: 90, Right: true, Least: 520},
	})
	p.table.Len = func() int { return p.sight.Len() }
	p.table.Row = p.row
	p.table.OnSelect = p.selected
	p.table.OnOpen = func(int) {
		if p.detail.body.Visible() {
			p.openStyle(p.detail.style)
		}
	}
	p.search.OnSubmitted = func(string) { p.table.OnOpen(0) }
	parts.SearchWith(p.search, p.table, func() { p.find("") })
	p.table.Empty = "Nothing found. Try fewer letters, or only the beginning of a word."
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	head := parts.Row(12, []parts.Track{parts.Share(1), parts.Fit()}, p.search, p.count)
	deeds := parts.Flow(6)
	deed := func(word string, act func()) { deeds.Add(parts.NewSmallDeed(parts.Quiet, word, act)) }
	if p.Imports != nil {
		deed("Import prices", p.openImport)
	}
	if p.Bulk != nil {
		deed("Change prices", p.openBulk)
	}
	if p.Keeper != nil {
		deed("New style", p.fresh)
		deeds.Add(parts.NewSmallButton(parts.Quiet, "Suppliers", p.openSuppliers))
		p.detail.offer(p)
	}
	p.filter.offer(p.catalog)
	list := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Column(8, head, p.filter.object, deeds, p.fault, p.notice)), nil, parts.Below(6, parts.Inset(6, 0, p.table))))
	p.list = parts.Inset(look.PageMargin, look.PageMargin, parts.Beside(list, p.detail.object, 380))
	p.stack = container.NewStack(p.list)
	return p.stack
}
