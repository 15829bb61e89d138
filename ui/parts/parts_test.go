package parts

import (
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
)

// onScreen puts parts into a window of the toolkit's test driver, under a layer, with Pressworth's theme.
func onScreen(t *testing.T, objects ...fyne.CanvasObject) fyne.Window {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	w := test.NewWindow(NewLayered(Column(8, objects...)))
	w.Resize(fyne.NewSize(700, 500))
	return w
}

func key(f fyne.Focusable, names ...fyne.KeyName) {
	for _, n := range names {
		f.TypedKey(&fyne.KeyEvent{Name: n})
	}
}

// drawnTexts are the texts a part draws now.
func drawnTexts(o fyne.CanvasObject) []string {
	var texts []string
	for _, child := range test.WidgetRenderer(o.(fyne.Widget)).Objects() {
		if line, ok := child.(*canvas.Text); ok && line.Visible() && line.Text != "" {
			texts = append(texts, line.Text)
		}
	}
	return texts
}

func TestField_typingReplacesWhatIsSelectedOnFocus(t *testing.T) {
	f := NewField("hint")
	w := onScreen(t, f)
	var told []string
	f.OnChanged = func(s string) { told = append(told, s) }
	f.SetText("old")
	w.Canvas().Focus(f)
	test.Type(f, "new")
	if f.Text() != "new" || len(told) != 3 {
		t.Errorf("got %q after %q, want new after three changes", f.Text(), told)
	}
	f.SetText("set")
	if len(told) != 3 {
		t.Errorf("setting the text was reported: %q", told)
	}
}

func TestField_editing(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(f *Field)
		want string
	}{
		{"backspace takes the rune before the caret", func(f *Field) { key(f, fyne.KeyEnd, fyne.KeyBackspace) }, "12 cap"},
		{"delete takes the rune after it", func(f *Field) { key(f, fyne.KeyHome, fyne.KeyDelete) }, "2 caps"},
		{"ctrl and backspace take a word", func(f *Field) {
			key(f, fyne.KeyEnd)
			f.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyBackspace, Modifier: fyne.KeyModifierControl})
		}, "12 "},
		{"shift and an arrow select", func(f *Field) {
			key(f, fyne.KeyEnd)
			f.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
			key(f, fyne.KeyLeft, fyne.KeyLeft)
			f.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
			f.TypedRune('X')
		}, "12 caX"},
		{"left from a selection goes to its start", func(f *Field) { key(f, fyne.KeyLeft); f.TypedRune('9') }, "912 caps"},
		{"pasted lines become one", func(f *Field) { f.Paste("a\r\nb\tc\x00\n") }, "a b c"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := NewField("")
			w := onScreen(t, f)
			f.SetText("12 caps")
			w.Canvas().Focus(f)
			c.do(f)
			if f.Text() != c.want {
				t.Errorf("got %q, want %q", f.Text(), c.want)
			}
		})
	}
}

func TestField_cutAndPasteUseTheClipboard(t *testing.T) {
	f := NewField("")
	w := onScreen(t, f)
	board := fyne.CurrentApp().Clipboard()
	f.SetText("27.25")
	w.Canvas().Focus(f)
	f.TypedShortcut(&fyne.ShortcutCut{Clipboard: board})
	if f.Text() != "" || board.Content() != "27.25" {
		t.Errorf("cut: field %q, clipboard %q", f.Text(), board.Content())
	}
	f.TypedShortcut(&fyne.ShortcutPaste{Clipboard: board})
	if f.Text() != "27.25" {
		t.Errorf("paste: got %q, want 27.25", f.Text())
	}
}

func TestField_keysItDoesNotUseReachTheWindow(t *testing.T) {
	f := NewField("")
	w := onScreen(t, f)
	var keys []fyne.KeyName
	w.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) { keys = append(keys, e.Name) })
	w.Canvas().Focus(f)
	key(f, fyne.KeyF2, fyne.KeyEscape, fyne.KeyLeft)
	if len(keys) != 2 || keys[0] != fyne.KeyF2 || keys[1] != fyne.KeyEscape {
		t.Errorf("got %v, want F2 and Escape", keys)
	}
}

func TestField_numbersStandAgainstTheRightEdge(t *testing.T) {
	f := NewNumber("")
	onScreen(t, f)
	f.SetText("27.25")
	var line *canvas.Text
	for _, o := range test.WidgetRenderer(f).Objects() {
		if l, ok := o.(*canvas.Text); ok && l.Text == "27.25" {
			line = l
		}
	}
	got := line.Position().X + line.MinSize().Width
	if want := f.Size().Width - f.pad(); got < want-0.5 || got > want+0.5 {
		t.Errorf("right edge: got %.1f, want %.1f", got, want)
	}
}

func TestField_longTextScrollsSoThatTheCaretStaysInSight(t *testing.T) {
	f := NewField("")
	w := onScreen(t, f)
	f.Resize(fyne.NewSize(120, 30))
	w.Canvas().Focus(f)
	test.Type(f, strings.Repeat("abcdefghij", 20)+"END")
	shown := drawnTexts(f)
	if len(shown) != 1 || !strings.HasSuffix(shown[0], "END") || len(shown[0]) > 30 {
		t.Errorf("got %q, want a short piece that ends with END", shown)
	}
	key(f, fyne.KeyHome)
	if shown = drawnTexts(f); len(shown) != 1 || !strings.HasPrefix(shown[0], "abc") {
		t.Errorf("at the start: got %q, want a piece that begins with abc", shown)
	}
}

func TestField_followsTheTheme(t *testing.T) {
	f, s := NewField(""), NewText("amount", Style{})
	onScreen(t, f, s)
	f.SetText("x")
	before := textColor(t, f)
	fyne.CurrentApp().Settings().SetTheme(look.NewTheme(look.Dark, 130))
	for _, o := range []fyne.CanvasObject{f, s} {
		o.Refresh() // as the toolkit does for every widget on the canvas
		if got, want := textColor(t, o), look.Color(look.Ink); got == before || got != want {
			t.Errorf("%T: text is %v, before %v, want %v", o, got, before, want)
		}
	}
	if got := f.MinSize().Height; got != 39 {
		t.Errorf("field at 130 %%: got %.1f high, want 39", got)
	}
}

func textColor(t *testing.T, o fyne.CanvasObject) color.Color {
	t.Helper()
	for _, child := range test.WidgetRenderer(o.(fyne.Widget)).Objects() {
		if line, ok := child.(*canvas.Text); ok && line.Text != "" {
			return line.Color
		}
	}
	t.Fatalf("%T draws no text", o)
	return nil
}

func TestTypeahead_takesWhatTheKeysMark(t *testing.T) {
	many := make([]Option, 100_000)
	for i := range many {
		many[i] = Option{Key: string(rune('a' + i%26)), Name: "option " + string(rune('a'+i%26))}
	}
	var chosen Option
	ta := NewTypeahead("", func(text string, show func([]Option)) { show(many) })
	ta.OnChosen = func(o Option) { chosen = o }
	w := onScreen(t, ta.Field)
	w.Canvas().Focus(ta.Field)
	test.Type(ta.Field, "o")
	key(ta.Field, fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyReturn)
	if chosen.Key != "b" {
		t.Errorf("got %+v, want the second option", chosen)
	}
	if w.Canvas().Focused() != ta.Field {
		t.Errorf("the focus went to %v", w.Canvas().Focused())
	}
}

func TestTypeahead_dropsResultsOfOlderTexts(t *testing.T) {
	var late []func([]Option)
	ta := NewTypeahead("", func(text string, show func([]Option)) { late = append(late, show) })
	w := onScreen(t, ta.Field)
	w.Canvas().Focus(ta.Field)
	test.Type(ta.Field, "ab")
	late[1](Words("newer"))
	late[0](Words("older", "still older"))
	if got := ta.Options(); len(got) != 1 || got[0].Name != "newer" {
		t.Errorf("got %v, want only the newer result", got)
	}
}

func TestTypeahead_clickInTheListTakes(t *testing.T) {
	var chosen Option
	ta := NewTypeahead("", func(text string, show func([]Option)) { show(Words("first", "second")) })
	ta.OnChosen = func(o Option) { chosen = o }
	w := onScreen(t, ta.Field)
	w.Canvas().Focus(ta.Field)
	test.Type(ta.Field, "x")
	list := w.Content().(*Layered).list
	test.TapAt(list, fyne.NewPos(20, listMargin+1.5*listRow))
	if chosen.Name != "second" || list.Visible() {
		t.Errorf("got %+v, list still open: %v", chosen, list.Visible())
	}
}

func TestChoice_typingGoesToTheOptionThatBeginsSo(t *testing.T) {
	var told []string
	c := NewChoice(Words("club", "retail", "resale", "non-profit"), func(o Option) { told = append(told, o.Key) })
	w := onScreen(t, c)
	w.Canvas().Focus(c)
	test.Type(c, "res")
	if c.Key() != "resale" {
		t.Errorf("got %q, want resale", c.Key())
	}
	test.Type(c, "n")
	if c.Key() != "non-profit" || strings.Join(told, " ") != "retail resale non-profit" {
		t.Errorf("got %q after %v", c.Key(), told)
	}
	key(c, fyne.KeyReturn, fyne.KeyUp, fyne.KeyUp, fyne.KeyReturn)
	if c.Key() != "retail" {
		t.Errorf("from the list: got %q, want retail", c.Key())
	}
}

func TestSizeCells_arrowsMoveAndShorthandFills(t *testing.T) {
	s := NewSizeCells(4)
	w := onScreen(t, s)
	var typed []string
	s.OnChanged = func(at int, qty string) { typed = append(typed, string(rune('0'+at))+":"+qty) }
	s.Spread = func(at int, text string) ([]string, string) {
		if text == "bad x" {
			return nil, "write a quantity for each size"
		}
		return strings.Split(text, "/"), ""
	}
	problem := ""
	s.OnProblem = func(text string) { problem = text }
	s.Focus(0)
	test.Type(s.Cell(0), "6")
	key(s.Cell(0), fyne.KeyRight)
	test.Type(s.Cell(1), "11")
	if got := strings.Join(typed, " "); got != "0:6 1:1 1:11" {
		t.Errorf("typed: got %s", got)
	}
	s.Focus(0)
	test.Type(s.Cell(0), "1/2/3/4")
	key(s.Cell(0), fyne.KeyReturn)
	for i, want := range []string{"1", "2", "3", "4"} {
		if got := s.Cell(i).Text(); got != want {
			t.Errorf("cell %d: got %q, want %q", i, got, want)
		}
	}
	s.Focus(1)
	test.Type(s.Cell(1), "bad x")
	key(s.Cell(1), fyne.KeyReturn)
	if problem == "" || !s.Cell(1).Wrong() || s.Cell(1).Text() != "bad x" {
		t.Errorf("bad shorthand: problem %q, marked %v, text %q", problem, s.Cell(1).Wrong(), s.Cell(1).Text())
	}
	w.Canvas().Unfocus()
}

func TestSizeCells_pastedRowGoesToTheRight(t *testing.T) {
	s := NewSizeCells(3)
	onScreen(t, s)
	s.Focus(1)
	s.Cell(1).Paste("5\t7\t9\r\n1\t1\t1\r\n")
	for i, want := range []string{"", "5", "7"} {
		if got := s.Cell(i).Text(); got != want {
			t.Errorf("cell %d: got %q, want %q", i, got, want)
		}
	}
}

func TestBasisRow_cutsTheBasisAndOpensItWhole(t *testing.T) {
	long := "27 × 6.85 + 3 × 8.90 + 7 × 6.85 + 10 × 4.15 and as much again that nobody could show in one line"
	r := NewBasisRow(BasisText{Name: "Blanks", Basis: long, Amount: "301.10"})
	onScreen(t, r)
	r.Resize(fyne.NewSize(400, r.MinSize().Height))
	closed := r.MinSize().Height
	if got := drawnTexts(r); len(got) != 3 || !strings.HasSuffix(got[1], "…") {
		t.Errorf("closed: got %q, want the basis cut", got)
	}
	key(r, fyne.KeyReturn)
	r.Resize(fyne.NewSize(400, r.MinSize().Height))
	if got := strings.Join(drawnTexts(r.whole), " "); got != long {
		t.Errorf("open: got %q, want the whole basis", got)
	}
	if r.MinSize().Height <= closed {
		t.Errorf("the open row is not higher: %.1f, closed %.1f", r.MinSize().Height, closed)
	}
}

func TestButton_enterAndSpacePressIt(t *testing.T) {
	n := 0
	b := NewButton(Quiet, "Cost sheet", "", func() { n++ })
	onScreen(t, b)
	test.Tap(b)
	key(b, fyne.KeyReturn, fyne.KeySpace)
	b.Disable()
	test.Tap(b)
	if n != 3 {
		t.Errorf("pressed %d times, want 3", n)
	}
}

func TestParagraph_breaksBetweenWords(t *testing.T) {
	p := NewParagraph("one two three four five six seven eight nine ten", Style{})
	onScreen(t, p)
	p.Resize(fyne.NewSize(90, 10))
	lines := drawnTexts(p)
	if len(lines) < 3 || strings.Join(lines, " ") != p.Text() {
		t.Errorf("got %q", lines)
	}
	for _, l := range lines {
		if w := (Style{}).measure(l).Width; w > 90 {
			t.Errorf("%q is %.1f wide, want 90 or less", l, w)
		}
	}
}

func TestCaptioned_problemStandsBelowTheField(t *testing.T) {
	f := NewField("")
	c := NewCaptioned("Wage an hour", f)
	onScreen(t, c)
	before := c.MinSize().Height
	c.SetProblem("not a number: write 18 or 18.50")
	if c.MinSize().Height <= before || !f.Wrong() {
		t.Errorf("height %.1f, before %.1f, marked %v", c.MinSize().Height, before, f.Wrong())
	}
	c.SetProblem("")
	if c.MinSize().Height != before || f.Wrong() {
		t.Errorf("after: height %.1f, want %.1f, marked %v", c.MinSize().Height, before, f.Wrong())
	}
}
