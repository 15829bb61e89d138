package counter

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
	"pressworth/ui/present/presenttest"
)

// desk is a Counter in a window of the toolkit's test driver, typed into as a person would: every key goes to whatever
// has the focus, and is counted.
type desk struct {
	t       testing.TB
	counter *Counter
	p       *present.Counter
	shop    *presenttest.Shop
	win     fyne.Window
	keys    int
}

func newDesk(t testing.TB, draft int, size fyne.Size) *desk {
	t.Helper()
	t.Cleanup(parts.Inline())
	app := test.NewApp()
	t.Cleanup(app.Quit)
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	shop := presenttest.New()
	p := shop.Counter(draft)
	c := New(p)
	w := test.NewWindow(parts.NewLayered(c.Content()))
	w.SetPadded(false)
	w.Resize(size)
	return &desk{t: t, counter: c, p: p, shop: shop, win: w}
}

var usual = fyne.NewSize(1316, 820)

// typed types text, then presses keys.
func (d *desk) typed(text string, keys ...fyne.KeyName) {
	d.t.Helper()
	for _, r := range text {
		d.focused().TypedRune(r)
		d.keys++
	}
	for _, k := range keys {
		d.press(k)
	}
}

func (d *desk) press(k fyne.KeyName) {
	d.keys++
	if k == fyne.KeyTab {
		d.win.Canvas().(software.WindowlessCanvas).FocusNext()
		return
	}
	d.focused().TypedKey(&fyne.KeyEvent{Name: k})
}

func (d *desk) focused() fyne.Focusable {
	d.t.Helper()
	f := d.win.Canvas().Focused()
	if f == nil {
		d.t.Fatalf("nothing has the focus after %d keys", d.keys)
	}
	return f
}

// panel reads back every visible word of the cost panel.
func (d *desk) panel() []string { return words(d.counter.panel.scroll) }

// says tells whether a word stands on the panel as a text of its own.
func (d *desk) says(want string) bool {
	for _, w := range d.panel() {
		if w == want {
			return true
		}
	}
	return false
}

// words are the visible texts below an object.
func words(o fyne.CanvasObject) []string {
	if !o.Visible() {
		return nil
	}
	var out []string
	children := func(objects []fyne.CanvasObject) {
		for _, c := range objects {
			out = append(out, words(c)...)
		}
	}
	switch o := o.(type) {
	case *canvas.Text:
		if o.Text != "" {
			out = append(out, o.Text)
		}
	case *fyne.Container:
		children(o.Objects)
	case *container.Scroll:
		out = words(o.Content)
	case fyne.Widget:
		children(test.WidgetRenderer(o).Objects())
	}
	return out
}

func TestCounter_costFollowsTyping(t *testing.T) {
	d := newDesk(t, 0, usual)
	if !d.says("1,261.38") || !d.says("636.85") {
		t.Fatalf("the worked example is not on the panel: %q", d.panel())
	}
	_, row := d.counter.form.garments.find(d.p.Draft().Garments[0].Key)
	row.cells.Focus(1)
	d.typed("3")
	three := d.p.View().Panel.Total
	d.typed("0")
	thirty := d.p.View().Panel.Total
	if three == "1,261.38" || thirty == three || !d.says(thirty) {
		t.Errorf("got totals %s after 3 and %s after 30, on the panel %q", three, thirty, d.panel())
	}
}

func TestCounter_aKnownCustomersQuoteTakesAtMost45Keys(t *testing.T) {
	d := newDesk(t, -1, usual)
	d.counter.Focus()
	d.typed("harb", fyne.KeyReturn)
	d.typed("ls nav", fyne.KeyReturn)
	d.typed("6/11/9/0/3", fyne.KeyReturn)
	d.press(fyne.KeyReturn) // nothing more to wear: on to the artwork
	d.typed("fb", fyne.KeyReturn)
	d.typed("2", fyne.KeyReturn)
	d.typed("sl", fyne.KeyReturn)
	d.typed("2", fyne.KeyReturn)
	draft := d.p.Draft()
	if draft.Customer.Name != "Harbour Rowing Club" || len(draft.Garments) != 1 || len(draft.Placements) != 2 {
		t.Fatalf("got customer %q, %d garments, placements %+v", draft.Customer.Name, len(draft.Garments), draft.Placements)
	}
	if !d.p.Ready() || draft.Pieces() != 29 {
		t.Fatalf("got %d pieces, not priced: %v", draft.Pieces(), d.p.Problems())
	}
	const toNewAndPrint = 2 // Ctrl+N before, Ctrl+P after
	if d.keys+toNewAndPrint > 45 {
		t.Errorf("took %d keys, want at most 45", d.keys+toNewAndPrint)
	}
	t.Logf("%d keys with Ctrl+N and Ctrl+P", d.keys+toNewAndPrint)
}

func TestCounter_aSizeRunIsReadWhileItIsTyped(t *testing.T) {
	d := newDesk(t, 0, usual)
	_, row := d.counter.form.garments.find(d.p.Draft().Garments[0].Key)
	row.cells.Focus(0)
	d.typed("1/2/3")
	if got := row.cells.Cell(1).Text() + row.cells.Cell(2).Text(); got != "23" {
		t.Errorf("before Enter: got %q in the cells after the first, want 2 and 3", got)
	}
	d.press(fyne.KeyReturn)
	if got := row.cells.Cell(0).Text(); got != "1" {
		t.Errorf("after Enter: got %q in the first cell, want 1", got)
	}
}

func TestCounter_whatIsWrongStandsBesideItsFieldAndNothingIsLost(t *testing.T) {
	d := newDesk(t, 0, usual)
	row := d.counter.form.artwork.rows[0]
	parts.Focus(row.inches.Field)
	d.typed("wide")
	form := strings.Join(words(d.counter.form.scroll), "\n")
	if !strings.Contains(form, "enter inches") || row.inches.Text() != "wide" || !row.inches.Wrong() {
		t.Errorf("got %q in the field (wrong %v) and the form\n%s", row.inches.Text(), row.inches.Wrong(), form)
	}
	if !d.says("1,261.38") {
		t.Errorf("the last good figures are gone: %q", d.panel())
	}
	if hint := d.counter.panel.hint.Text(); !strings.Contains(hint, "Full back") {
		t.Errorf("got hint %q, want it to name the row", hint)
	}
	parts.Focus(d.counter.form.head.title.Field)
	if row.inches.Text() != "wide" {
		t.Errorf("after leaving: got %q, want what was typed", row.inches.Text())
	}
}

func TestCounter_hostileWordsAnywhereNeverStopIt(t *testing.T) {
	hostile := []string{"-1", "1e999", "9999999999999", "٣", "\x00\u202e", strings.Repeat("9", 60), "S12 M", "//", "½", "NaN", "%", "'; --"}
	d := newDesk(t, 0, usual)
	var fields []*parts.Field
	var collect func(o fyne.CanvasObject)
	collect = func(o fyne.CanvasObject) {
		if !o.Visible() {
			return
		}
		switch o := o.(type) {
		case *parts.Field:
			fields = append(fields, o)
		case *fyne.Container:
			for _, c := range o.Objects {
				collect(c)
			}
		case *container.Scroll:
			collect(o.Content)
		case fyne.Widget:
			for _, c := range test.WidgetRenderer(o).Objects() {
				collect(c)
			}
		}
	}
	collect(d.counter.Content())
	if len(fields) < 25 {
		t.Fatalf("found %d fields, want the whole form", len(fields))
	}
	for i, f := range fields {
		for k := range 4 { // each field gets some, all of them come up several times
			text := hostile[(4*i+k)%len(hostile)]
			if d.win.Canvas().Focus(f); !f.Focused() {
				t.Fatalf("%q cannot be reached", f.Hint)
			}
			f.SelectAll()
			d.typed(text)
			d.win.Canvas().Unfocus()
		}
		d.p.Undo()
	}
}

func TestCounter_undoBringsFieldsBack(t *testing.T) {
	d := newDesk(t, 0, usual)
	row := d.counter.form.artwork.rows[0]
	parts.Focus(row.inches.Field)
	d.typed("9 x 7")
	d.p.Undo()
	if got := row.inches.Text(); got != "11 × 8.5" {
		t.Errorf("got %q, want the size before", got)
	}
}

func TestCounter_aTypedPriceSaysWhatItLeaves(t *testing.T) {
	d := newDesk(t, 0, usual)
	before := d.p.View().Panel.Margin
	parts.Focus(d.counter.panel.prices.fields[0])
	d.typed("15")
	v := d.p.View().Panel
	if v.Margin == before || !d.says(v.Margin) || !d.says("by the rules 27.25") {
		t.Errorf("got margin %s (before %s), panel %q", v.Margin, before, d.panel())
	}
	if !v.BelowFloor || !d.says("margin, under floor") {
		t.Errorf("15.00 is under the floor, but the panel does not say so: %q", d.panel())
	}
}

func TestCounter_inksAreChipsUntilTheFieldIsReached(t *testing.T) {
	d := newDesk(t, 0, usual)
	k := d.counter.form.artwork.rows[0].inks
	if got := strings.Join(words(k.box), " "); got != "white gold" {
		t.Errorf("got %q, want the two inks as chips", got)
	}
	parts.Focus(k.field)
	if k.field.Text() != "white, gold" || k.chips.Visible() {
		t.Errorf("reached: got %q, chips visible %v", k.field.Text(), k.chips.Visible())
	}
	d.typed("red, blue, green")
	d.win.Canvas().Unfocus()
	if got := strings.Join(words(k.box), " "); got != "red blue green" {
		t.Errorf("left: got %q, want three chips", got)
	}
}

func TestCounter_enterWalksThroughTheWholeForm(t *testing.T) {
	d := newDesk(t, 0, usual)
	f := d.counter.form
	d.counter.Focus()
	d.press(fyne.KeyReturn)
	if !f.garments.search.Field.Focused() {
		t.Fatal("Enter in customer does not lead to the search for blanks")
	}
	d.press(fyne.KeyReturn)
	if !f.artwork.add.Field.Focused() {
		t.Fatal("Enter in an empty search does not lead to artwork")
	}
	d.press(fyne.KeyReturn)
	if !f.extras.rows[0].field.Focused() {
		t.Fatal("Enter in an empty placement does not lead to extras")
	}
}

func TestCounter_aCustomersOwnGarmentIsTakenFromTheSearch(t *testing.T) {
	d := newDesk(t, -1, usual)
	parts.Focus(d.counter.form.garments.search.Field)
	d.typed("zzgrandpa jacket", fyne.KeyReturn)
	d.typed("M2 YS4", fyne.KeyReturn)
	g := d.p.Draft().Garments
	if len(g) != 1 || !g[0].FromCustomer || g[0].Name != "zzgrandpa jacket" || d.p.Draft().Pieces() != 6 {
		t.Fatalf("got %+v", g)
	}
	if !d.p.Ready() {
		t.Errorf("a customer's garment is not priced: %v", d.p.Problems())
	}
}
