package book

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// shelfPage is what was left over and is kept: transfers and blanks, offered on the next quote that could use them.
type shelfPage struct {
	place  *Place
	object fyne.CanvasObject
	search *parts.Field
	count  *parts.Text
	table  *parts.Table
	form   *form.Form
	title  *parts.Text
	save   *parts.Button
	gone   *parts.Button
	blank  *fyne.Container
	print  *fyne.Container

	all, rows []catalog.ShelfItem
	was       catalog.ShelfItem
	turn      int
}

var shelfKinds = []parts.Option{{Key: catalog.ShelfBlank, Name: "blank"}, {Key: catalog.ShelfTransfer, Name: "transfer"}}

func newShelf(p *Place) page {
	s := &shelfPage{place: p, search: parts.NewField("Search the shelf"), count: parts.NewText("", parts.MutedStyle), title: parts.NewText("", parts.KeyStyle.Shortened())}
	s.search.OnChanged = func(string) { s.narrow() }
	s.table = parts.NewTable([]parts.TableColumn{
		{Title: "kind", Width: 72},
		{Title: "what", Share: 4},
		{Title: "size", Width: 84},
		{Title: "pieces", Width: 52, Right: true},
		{Title: "since", Width: 84, Right: true, Least: 480},
		{Title: "from", Width: 84, Least: 560},
	})
	s.table.Len = func() int { return len(s.rows) }
	s.table.Row = s.row
	s.table.OnSelect = func(i int) {
		if i < len(s.rows) {
			s.show(s.rows[i])
		}
	}
	s.table.OnRune = func(r rune) {
		parts.Focus(s.search)
		s.search.TypedRune(r)
	}
	s.table.Empty = "Nothing on the shelf."
	fresh := parts.NewSmallButton(parts.Quiet, "Put something on it", func() {
		s.show(catalog.ShelfItem{Kind: catalog.ShelfBlank, Qty: 1, On: p.today()})
		parts.Focus(s.form.Field("qty"))
	})
	head := parts.Row(12, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, s.search, s.count, fresh)
	list := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, head), nil, parts.Below(6, parts.Inset(6, 0, s.table))))
	s.object = parts.Inset(look.PageMargin, look.PageMargin-8, parts.Beside(list, s.side(), 360))
	return s
}

// side is the form of one thing on the shelf.
func (s *shelfPage) side() fyne.CanvasObject {
	f := form.New()
	s.form = f
	f.OnChanged = func(string) { s.judge() }
	s.save = parts.NewSmallDeed(parts.Filled, "Save", s.keep)
	s.gone = parts.NewSmallDeed(parts.Quiet, "Take it off", s.remove)
	s.blank = parts.Fields(120, f.Text("style", "Style", ""), f.Text("color", "Colour", ""), f.Text("size", "Size", ""), f.Text("supplier", "Supplier", "its short name"))
	s.print = parts.Fields(120, f.Text("name", "Name", "like full back"), f.Number("width", "Wide", "in"), f.Number("height", "High", "in"), f.Text("inks", "Inks", ""))
	body := parts.Column(12, parts.Row(8, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, s.title, s.gone, s.save), f.Rest(),
		parts.Fields(120, f.Choice("kind", "Kind", shelfKinds), f.Number("qty", "Pieces", "")), s.blank, s.print,
		f.Text("note", "Note", ""))
	return container.NewStack(parts.NewSheetGround(), parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, body)))
}

func (s *shelfPage) content() fyne.CanvasObject { return s.object }
func (s *shelfPage) focus()                     { parts.Focus(s.search) }

func (s *shelfPage) shown() {
	s.turn++
	turn := s.turn
	parts.Background(func() func() {
		all, err := s.place.Shelf.Shelf(context.Background())
		return func() {
			if turn != s.turn {
				return
			}
			if err != nil {
				s.place.failed("The shelf could not be read", err)
			}
			s.all = all
			s.narrow()
		}
	})
}

// narrow shows what holds all the words of the search.
func (s *shelfPage) narrow() {
	s.rows = nil
	for _, x := range s.all {
		text, fits := strings.ToLower(shelfWhat(x)+" "+x.Size+" "+x.Kind+" "+x.From+" "+x.Note), true
		for _, w := range strings.Fields(strings.ToLower(s.search.Text())) {
			fits = fits && strings.Contains(text, w)
		}
		if fits {
			s.rows = append(s.rows, x)
		}
	}
	s.count.SetText(countOf(len(s.rows), "thing"))
	s.table.Reset()
	if len(s.rows) > 0 {
		s.table.Select(0)
		return
	}
	s.show(catalog.ShelfItem{Kind: catalog.ShelfBlank, Qty: 1, On: s.place.today()})
}

func shelfWhat(x catalog.ShelfItem) string {
	if x.Kind == catalog.ShelfTransfer {
		return x.Name + map[bool]string{true: ", " + x.Inks}[x.Inks != ""]
	}
	return x.Style + map[bool]string{true: ", " + x.Color}[x.Color != ""]
}

func shelfSize(x catalog.ShelfItem) string {
	if x.Kind == catalog.ShelfTransfer && x.Width != "" {
		return x.Width + " × " + x.Height
	}
	return x.Size
}

func (s *shelfPage) row(i int) []parts.TableCell {
	x := s.rows[i]
	return []parts.TableCell{
		{Text: x.Kind, Color: look.Muted, Chip: true},
		{Text: shelfWhat(x), Strong: true},
		{Text: shelfSize(x)},
		{Text: strconv.Itoa(x.Qty)},
		{Text: s.place.near(x.On), Color: look.Muted},
		{Text: x.From, Color: look.Muted},
	}
}

func (s *shelfPage) show(x catalog.ShelfItem) {
	s.was = x
	s.title.SetText(or(shelfWhat(x), "New on the shelf"))
	for path, text := range map[string]string{
		"kind": x.Kind, "qty": strconv.Itoa(x.Qty), "style": x.Style, "color": x.Color, "size": x.Size, "supplier": x.Supplier,
		"name": x.Name, "width": x.Width, "height": x.Height, "inks": x.Inks, "note": x.Note,
	} {
		s.form.Set(path, text)
	}
	s.judge()
}

func (s *shelfPage) read() (catalog.ShelfItem, []quote.Problem) {
	r, x := form.Reader{Get: s.form.Get}, s.was
	x.Kind, x.Qty, x.Note = s.form.Get("kind"), r.Count("qty"), r.Text("note")
	x.Style, x.Color, x.Size, x.Supplier = r.Text("style"), r.Text("color"), r.Text("size"), r.Text("supplier")
	x.Name, x.Width, x.Height, x.Inks = r.Text("name"), r.Text("width"), r.Text("height"), r.Text("inks")
	return x, append(r.Problems, x.Check()...)
}

func (s *shelfPage) judge() {
	x, problems := s.read()
	visible(s.blank, x.Kind != catalog.ShelfTransfer)
	visible(s.print, x.Kind == catalog.ShelfTransfer)
	visible(s.gone, s.was.ID != 0)
	changed := x != s.was
	if !changed {
		problems = nil
	}
	s.form.Show(problems)
	if changed && len(problems) == 0 {
		s.save.Enable()
	} else {
		s.save.Disable()
	}
}

func (s *shelfPage) keep() {
	x, problems := s.read()
	if len(problems) > 0 || x == s.was {
		return
	}
	was := s.was
	back := &step{done: "The shelf is as it was.", back: func(ctx context.Context) error {
		_, err := s.place.Shelf.SaveShelfItem(ctx, was)
		return err
	}}
	if was.ID == 0 {
		back = nil
	}
	s.place.act("The shelf could not be changed", fmt.Sprintf("%d × %s on the shelf.", x.Qty, shelfWhat(x)), func(ctx context.Context) error {
		_, err := s.place.Shelf.SaveShelfItem(ctx, x)
		return err
	}, back)
}

func (s *shelfPage) remove() {
	was := s.was
	s.place.act("It could not be taken off", shelfWhat(was)+" is off the shelf.", func(ctx context.Context) error {
		return s.place.Shelf.RemoveShelfItem(ctx, was.ID)
	}, &step{done: shelfWhat(was) + " is on the shelf again.", back: func(ctx context.Context) error {
		again := was
		again.ID = 0
		_, err := s.place.Shelf.SaveShelfItem(ctx, again)
		return err
	}})
}
