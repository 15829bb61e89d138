package blanks

import (
	"context"
	"errors"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Keeper keeps what a person changes about styles.
type Keeper interface {
	// SaveStyle keeps a style; ID 0 makes a new one. Prices that differ hold from today on. Bad input is quote.Problems.
	SaveStyle(ctx context.Context, s catalog.Style, person string) (catalog.Style, error)
	// StyleAsListed reads a style with the prices of its list, and the shop's own prices and sales beside them.
	StyleAsListed(ctx context.Context, id int64) (catalog.Style, []catalog.Price, error)
	// SaveListed is SaveStyle with the prices of the list, and with the shop's own prices and sales.
	SaveListed(ctx context.Context, s catalog.Style, own []catalog.Price, person string) (catalog.Style, error)
	Suppliers(ctx context.Context) ([]catalog.Supplier, error)
	SaveSupplier(ctx context.Context, s catalog.Supplier) (catalog.Supplier, error)
}

// stylePage edits one style in place of the list.
type stylePage struct {
	place  *Place
	object fyne.CanvasObject
	body   *fyne.Container
	form   *form.Form
	text   styleText
	colors *parts.Grid
	prices *parts.Grid
	own    *parts.Grid
	print  *parts.Grid
	whose  *parts.Choice // which colour's prices are shown
	save   *parts.Button
	fault  *parts.Band

	suppliers []catalog.Supplier
	changed   bool
}

func newStylePage(p *Place) *stylePage {
	e := &stylePage{place: p, body: parts.Column(look.SectionApart), fault: parts.NewBand(parts.Fault, "")}
	e.save = parts.NewDeed(parts.Filled, "Save style", "", e.keep)
	e.object = parts.PageInset(parts.NewPageScroll(e.body))
	return e
}

// show fills the page with a style; copied makes a new one of it.
func (e *stylePage) show(s catalog.Style, copied bool) {
	e.fault.SetText("")
	parts.Background(func() func() {
		ctx := context.Background()
		all, err := e.place.Keeper.Suppliers(ctx)
		var own []catalog.Price
		if err == nil && s.ID != 0 {
			s, own, err = e.place.Keeper.StyleAsListed(ctx, s.ID)
		}
		return func() {
			if err != nil {
				e.fault.SetText("The style could not be read: " + err.Error())
			}
			if copied {
				s.ID, s.Number, s.Name, own = 0, s.Number+"-2", s.Name+" copy", nil
			}
			e.suppliers, e.text, e.changed = all, textOf(s, own), s.ID == 0
			if e.text.was.SupplierID == 0 && len(all) > 0 {
				e.text.texts["supplier"] = strconv.FormatInt(all[0].ID, 10)
			}
			e.build()
		}
	})
}

var categories = []string{"tee", "long sleeve", "hoodie", "crew", "polo", "tank", "cap", "tote", "youth tee"}

func (e *stylePage) build() {
	f := form.New()
	e.form = f
	f.OnChanged = func(path string) {
		e.text.texts[path] = f.Get(path)
		e.touched()
	}
	var suppliers []parts.Option
	for _, s := range e.suppliers {
		suppliers = append(suppliers, parts.Option{Key: strconv.FormatInt(s.ID, 10), Name: s.Name})
	}
	title := e.text.was.Number + " " + e.text.was.Name
	if e.text.was.ID == 0 {
		title = "New style"
	}
	words := categories
	if c := e.text.was.Category; c != "" && !slices.Contains(words, c) {
		words = append(slices.Clone(words), c)
	}
	garment := parts.NewSection(title, "prices that differ hold from today on; older ones stay",
		e.fault, f.Rest(),
		parts.Fields(170, f.Text("number", "Style", "the supplier's number"), f.Text("name", "Name", ""), f.Choice("supplier", "Supplier", suppliers),
			f.Text("mill", "Mill", ""), f.Choice("category", "Category", parts.Words(words...)), f.Text("fabric", "Fabric", "like 50 % cotton, 50 % polyester")),
		parts.Flow(16, f.Check("usual", "my usual"), f.Check("not_clothing", "not clothing")))
	garment.Right.Add(parts.NewButton(parts.Quiet, "Back to the blanks", "Esc", e.place.closeStyle))
	garment.Right.Add(e.save)
	e.colors = e.grid(rowsAt(&e.text.colors), 132, 74).Words(0, 1, 2, 3, 4)
	e.print = e.grid(rowsAt(&e.text.print), 110, 90).Words(0)
	e.own = e.grid(rowsAt(&e.text.own), 64, 100).Words(0, 1, 2, 3, 4, 5)
	press := parts.NewSection("At the press", "", parts.Fields(170,
		f.Text("weight", "Weight, g/m² or like 5.3 oz", "like 180"), f.Text("heat_limit", "Heat limit", "like 320 °F"), f.Number("handling", "Handling a piece", "s"),
		f.Text("tags", "Tags, divided by commas", "like nylon, waterproof"), f.Text("caution", "Caution", "what to mind")),
		f.Around("printable", "Largest artwork by size, in inches", e.print))
	colors := parts.NewSection("Colours", "colour as #rrggbb; shade: light, dark, heather or neon; sizes where not all", f.Around("colors", "", e.colors))
	own := parts.NewSection("Own prices and sales", "net goes before the list, a sale before both until its last day; no size: every one", f.Around("own", "", e.own))
	e.body.Objects = []fyne.CanvasObject{garment, press, container.New(halves{}, e.priceSection(), colors), own}
	e.fill()
	for path, text := range e.text.texts {
		f.Set(path, text)
	}
	e.body.Refresh()
	e.judge()
	parts.Focus(f.Field("number"))
}

// cellRows are the texts behind a table.
type cellRows struct {
	get func() [][]string
	set func([][]string)
}

func rowsAt(at *[][]string) cellRows {
	return cellRows{func() [][]string { return *at }, func(rows [][]string) { *at = rows }}
}

// grid is a table of texts with an empty row below.
func (e *stylePage) grid(rows cellRows, first, wide float32) *parts.Grid {
	g := parts.NewGrid(first, wide)
	put := func(row, col int, text string) {
		all := rows.get()
		for len(all) <= row {
			all = append(all, nil)
		}
		for len(all[row]) <= col {
			all[row] = append(all[row], "")
		}
		all[row][col] = text
		rows.set(all)
	}
	g.OnChanged = func(row, col int, text string) {
		put(row, col, text)
		e.fill()
		e.touched()
	}
	g.OnPaste = func(row, col int, block [][]string) {
		for r, line := range block {
			for c, text := range line {
				if col+c < 12 {
					put(row+r, col+c, text)
				}
			}
		}
		e.fill()
		e.touched()
	}
	return g
}

// fill shows the tables, each with an empty row below.
func (e *stylePage) fill() {
	e.colors.Set([]string{"colour", "#rrggbb", "shade", "retired", "sizes"}, withBlank(e.text.colors))
	e.print.Set([]string{"size", "width", "height"}, withBlank(e.text.print))
	e.own.Set([]string{"net or sale", "colour", "size", "price each", "from", "last day"}, withBlank(e.text.own))
	e.fillPrices()
	e.offerColors()
}

func withBlank(rows [][]string) [][]string {
	out := slices.Clone(rows)
	if n := len(out); n == 0 || slices.ContainsFunc(out[n-1], func(text string) bool { return text != "" }) {
		out = append(out, nil)
	}
	return out
}

func (e *stylePage) touched() {
	e.changed = true
	e.judge()
}

func (e *stylePage) judge() {
	_, _, problems := e.text.style(e.place.today())
	e.form.Show(problems)
	if e.changed && len(problems) == 0 {
		e.save.Enable()
	} else {
		e.save.Disable()
	}
}

func (e *stylePage) keep() {
	style, own, problems := e.text.style(e.place.today())
	if len(problems) > 0 {
		return
	}
	before, ownBefore := e.text.was, e.text.wasOwn
	e.place.keepListed(style, own, func(kept catalog.Style, err error) {
		var found quote.Problems
		switch {
		case errors.As(err, &found):
			e.form.Show(found)
		case err != nil:
			e.fault.SetText("The style could not be saved: " + err.Error())
		default:
			if before.ID != 0 {
				e.place.did(e.place.listedStep(before, ownBefore, style, own))
			}
			e.changed = false
			e.place.closeStyle()
			e.place.say(kept.Number + " saved.")
		}
	})
}

// halves sets two objects side by side, or one under the other where it is narrow.
type halves struct{}

const halvesFrom = 820

func (halves) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	if o[0].Position().Y != o[1].Position().Y {
		return fyne.NewSize(max(a.Width, b.Width), a.Height+look.Px(look.SectionApart)+b.Height)
	}
	return fyne.NewSize(max(a.Width, b.Width), max(a.Height, b.Height))
}

func (halves) Layout(o []fyne.CanvasObject, s fyne.Size) {
	gap := look.Px(look.SectionApart)
	if s.Width < look.Px(halvesFrom) {
		h := o[0].MinSize().Height
		o[0].Resize(fyne.NewSize(s.Width, h))
		o[0].Move(fyne.NewPos(0, 0))
		o[1].Resize(fyne.NewSize(s.Width, o[1].MinSize().Height))
		o[1].Move(fyne.NewPos(0, h+gap))
		return
	}
	wide := (s.Width - gap) / 2
	for i, x := range o {
		x.Resize(fyne.NewSize(wide, s.Height))
		x.Move(fyne.NewPos(float32(i)*(wide+gap), 0))
	}
}
