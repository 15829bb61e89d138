// Package blanks is the Blanks place: the garments the shop can buy, found as one types, with their colours, sizes and
// prices beside the table.
//
// Not in this package: the shop file, which is handed in as Catalog; reading of price files; prices of a job.
package blanks

import (
	"context"
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Catalog is what the place asks of the shop file.
type Catalog interface {
	FindBlanks(ctx context.Context, words string, limit int) ([]catalog.StyleRow, error)
	Styles(ctx context.Context, after int64, limit int) ([]catalog.StyleRow, error)
	Style(ctx context.Context, id int64) (catalog.Style, error)
	Prices(ctx context.Context, style int64) ([]catalog.Price, error)
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
	Choose  func(done func(path string))
	After   func(time.Duration) <-chan time.Time

	now    func() time.Time
	list   fyne.CanvasObject
	stack  *fyne.Container // the list, and the import page over it
	page   *importPage
	editor *stylePage
	undo   []catalog.Style // what styles were before they were changed, the latest last
	notice *parts.Band

	rows   []catalog.StyleRow
	more   bool // there are rows after the last one read
	asking bool // they are being read
	turn   int  // counts searches, to drop stale results
	words  string
}

const (
	found = 200 // rows of a search
	page  = 200 // rows read at a time while browsing
)

// New makes the place.
func New(c Catalog, now func() time.Time) *Place {
	p := &Place{catalog: c, now: now, notice: parts.NewBand(parts.Note, ""), search: parts.NewField("Search by style, name, colour, mill or category"),
		count: parts.NewText("", parts.MutedStyle), detail: newDetail(), fault: parts.NewBand(parts.Fault, "")}
	p.search.OnChanged = p.find
	p.search.OnKey = p.searchKey
	p.table = parts.NewTable([]parts.TableColumn{
		{Title: "supplier", Share: 3, Least: 560}, {Title: "style", Width: 78}, {Title: "name", Share: 4},
		{Title: "colour", Share: 3, Least: 380}, {Title: "sizes", Width: 78, Least: 420}, {Title: "from", Width: 56, Right: true},
		{Title: "priced on", Width: 82, Right: true, Least: 520},
	})
	p.table.Len = func() int { return len(p.rows) }
	p.table.Row = p.row
	p.table.OnSelect = p.selected
	p.table.OnOpen = func(int) {
		if p.detail.body.Visible() {
			p.openStyle(p.detail.style)
		}
	}
	p.search.OnSubmitted = func(string) { p.table.OnOpen(0) }
	p.table.OnRune = func(r rune) {
		parts.Focus(p.search)
		p.search.TypedRune(r)
	}
	p.table.Empty = "Nothing found. Try fewer letters, or only the beginning of a word."
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	head := parts.Row(12, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, p.search, p.count)
	if p.Imports != nil {
		head.Add(parts.NewButton(parts.Quiet, "Import prices", "", p.openImport))
	}
	if p.Keeper != nil {
		head.Add(parts.NewButton(parts.Quiet, "New style", "", p.fresh))
		p.detail.offer(p)
	}
	list := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Column(8, head, p.fault, p.notice)), nil, parts.Below(6, parts.Inset(6, 0, p.table))))
	p.list = parts.Inset(look.PageMargin, look.PageMargin, parts.Beside(list, p.detail.object, 380))
	p.stack = container.NewStack(p.list)
	return p.stack
}

// openImport shows the import page in place of the list.
func (p *Place) openImport() {
	if p.page == nil {
		p.page = newImportPage(p, p.Imports)
		p.stack.Add(p.page.object)
	}
	p.list.Hide()
	p.page.object.Show()
	p.page.begin()
}

// closeImport goes back to the list, which may have changed.
func (p *Place) closeImport() {
	if p.page == nil || !p.page.object.Visible() {
		return
	}
	p.page.turn++
	if p.page.stop != nil {
		p.page.stop()
	}
	p.page.object.Hide()
	p.list.Show()
	p.Shown()
	p.Focus()
}

// Escape goes back from the page over the list; false where it is not open.
func (p *Place) Escape() bool {
	if p.editor != nil && p.editor.object.Visible() {
		p.closeStyle()
		return true
	}
	if p.page == nil || !p.page.object.Visible() {
		return false
	}
	p.closeImport()
	return true
}

func (p *Place) say(text string) {
	p.notice.SetText(text)
	p.notice.Offer("Dismiss", func() { p.notice.SetText("") })
}

// Focus is part of the window's Place.
func (p *Place) Focus() {
	if p.page != nil && p.page.object.Visible() && p.page.form != nil {
		parts.Focus(p.page.form.Field("file"))
		return
	}
	if p.editor != nil && p.editor.object.Visible() && p.editor.form != nil {
		parts.Focus(p.editor.form.Field("number"))
		return
	}
	parts.Focus(p.search)
}

// Shown reads the list anew: prices may have changed.
func (p *Place) Shown() { p.find(p.search.Text()) }

// find looks for words as they are typed; without any it lists everything.
func (p *Place) find(words string) {
	p.turn++
	turn := p.turn
	parts.Background(func() func() {
		rows, err := p.read(words, 0)
		return func() {
			if turn != p.turn {
				return
			}
			p.words, p.rows = words, rows
			p.more = words == "" && len(rows) == page
			p.failed(err)
			p.asking = false
			p.table.Reset()
			p.told()
			p.table.Select(0)
			if len(rows) == 0 {
				p.detail.clear()
			}
		}
	})
}

func (p *Place) read(words string, after int64) ([]catalog.StyleRow, error) {
	if words == "" {
		return p.catalog.Styles(context.Background(), after, page)
	}
	return p.catalog.FindBlanks(context.Background(), words, found)
}

func (p *Place) failed(err error) {
	if err != nil {
		p.fault.SetText("The blanks could not be read: " + err.Error())
		return
	}
	p.fault.SetText("")
}

func (p *Place) told() {
	switch n := len(p.rows); {
	case p.more || p.words != "" && n == found:
		p.count.SetText(fmt.Sprintf("first %d", n))
	case n == 1:
		p.count.SetText("1 row")
	default:
		p.count.SetText(fmt.Sprintf("%d rows", n))
	}
}

// next reads the rows after those there are.
func (p *Place) next() {
	if !p.more || p.asking || len(p.rows) == 0 {
		return
	}
	p.asking = true
	turn, after := p.turn, p.rows[len(p.rows)-1].StyleID
	parts.Background(func() func() {
		rows, err := p.read("", after)
		return func() {
			p.asking = false
			if turn != p.turn {
				return
			}
			p.failed(err)
			p.rows = append(p.rows, rows...)
			p.more = err == nil && len(rows) == page
			p.table.Reload()
			p.told()
		}
	})
}

// ahead is how many rows before the end the next ones are asked for.
const ahead = 60

func (p *Place) row(i int) []parts.TableCell {
	if i > len(p.rows)-ahead {
		p.next()
	}
	r := p.rows[i]
	color := parts.TableCell{Text: r.Color.Name, Hex: r.Color.Hex}
	if r.Color.Name == "" {
		color = parts.TableCell{Text: colours(r.Colors), Color: look.Muted}
	}
	name := parts.TableCell{Text: r.Name, Strong: r.Usual}
	return []parts.TableCell{
		{Text: r.Supplier, Color: look.Muted}, {Text: r.Number, Strong: true}, name, color,
		{Text: r.Sizes}, {Text: r.From.String()}, {Text: r.PricedOn, Color: look.Muted},
	}
}

func colours(n int) string {
	if n == 1 {
		return "1 colour"
	}
	return fmt.Sprintf("%d colours", n)
}

func (p *Place) selected(i int) {
	if i >= len(p.rows) {
		return
	}
	r := p.rows[i]
	turn := p.turn
	parts.Background(func() func() {
		style, err := p.catalog.Style(context.Background(), r.StyleID)
		return func() {
			if turn != p.turn || p.table.Selected() != i {
				return
			}
			p.failed(err)
			if err == nil {
				p.detail.show(style, r)
			}
		}
	})
}

// searchKey lets the arrows move the mark while the focus stays in the search box.
func (p *Place) searchKey(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyPageUp:
		p.table.TypedKey(e)
		return true
	case fyne.KeyEscape:
		if p.search.Text() == "" {
			return false
		}
		p.search.SetText("")
		p.find("")
		return true
	}
	return false
}
