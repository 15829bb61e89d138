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
	Suppliers(ctx context.Context) ([]catalog.Supplier, error)
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
	save   *parts.Button
	fault  *parts.Band

	suppliers []catalog.Supplier
	changed   bool
}

func newStylePage(p *Place) *stylePage {
	e := &stylePage{place: p, body: parts.Column(look.SectionApart), fault: parts.NewBand(parts.Fault, "")}
	e.save = parts.NewButton(parts.Filled, "Save style", "", e.keep)
	e.object = parts.PageInset(parts.NewPageScroll(e.body))
	return e
}

// show fills the page with a style.
func (e *stylePage) show(s catalog.Style) {
	e.text, e.changed = textOf(s), s.ID == 0
	e.fault.SetText("")
	parts.Background(func() func() {
		all, err := e.place.Keeper.Suppliers(context.Background())
		return func() {
			if err != nil {
				e.fault.SetText("The suppliers could not be read: " + err.Error())
			}
			e.suppliers = all
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
	press := parts.NewSection("At the press", "", parts.Fields(170,
		f.Number("weight", "Weight", "g/m²"), f.Text("heat_limit", "Heat limit", "like 320 °F"), f.Number("handling", "Handling a piece", "s"),
		f.Text("tags", "Tags, divided by commas", "like nylon, waterproof"), f.Text("caution", "Caution", "what to mind")))
	e.colors = e.grid(&e.text.colors, 4, 150, 90).Words(0, 1, 2, 3)
	e.prices = e.grid(&e.text.prices, 0, 110, 72).Words(0)
	e.fill()
	colors := parts.NewSection("Colours", "name, colour as #rrggbb, shade: light, dark, heather or neon", e.colors)
	prices := parts.NewSection("Prices each", "one row a size; a range can be pasted", e.prices)
	e.body.Objects = []fyne.CanvasObject{garment, press, container.New(halves{}, prices, colors)}
	for path, text := range e.text.texts {
		f.Set(path, text)
	}
	e.body.Refresh()
	e.judge()
	parts.Focus(f.Field("number"))
}

// grid is a table of texts with an empty row below; columns 0 means one more than are in use.
func (e *stylePage) grid(rows *[][]string, columns int, first, wide float32) *parts.Grid {
	g := parts.NewGrid(first, wide)
	put := func(row, col int, text string) {
		for len(*rows) <= row {
			*rows = append(*rows, nil)
		}
		for len((*rows)[row]) <= col {
			(*rows)[row] = append((*rows)[row], "")
		}
		(*rows)[row][col] = text
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

// fill shows both tables, each with an empty row below.
func (e *stylePage) fill() {
	e.colors.Set([]string{"colour", "#rrggbb", "shade", "retired"}, withBlank(e.text.colors))
	wide := 2
	for _, row := range e.text.prices {
		for c, text := range row {
			if text != "" {
				wide = max(wide, c+2)
			}
		}
	}
	heads := make([]string, wide)
	heads[0] = "size"
	e.prices.Set(heads, withBlank(e.text.prices))
	e.prices.Cell(0, 0).Disable()
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
	_, problems := e.text.style()
	e.form.Show(problems)
	if e.changed && len(problems) == 0 {
		e.save.Enable()
	} else {
		e.save.Disable()
	}
}

func (e *stylePage) keep() {
	style, problems := e.text.style()
	if len(problems) > 0 {
		return
	}
	before := e.text.was
	e.place.keepStyle(style, func(kept catalog.Style, err error) {
		var found quote.Problems
		switch {
		case errors.As(err, &found):
			e.form.Show(found)
		case err != nil:
			e.fault.SetText("The style could not be saved: " + err.Error())
		default:
			if before.ID != 0 {
				e.place.undo = append(e.place.undo, e.place.backTo(before))
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
