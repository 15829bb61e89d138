package present

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/present/artwork"
)

func TestEdit_pricesOncePerKey(t *testing.T) {
	c, _, e := counter(t, true)
	before := e.priced
	c.SetSize("g1", "M", "1")
	c.SetSize("g1", "M", "12")
	if e.priced != before+2 {
		t.Errorf("got %d pricings for two keys, want 2", e.priced-before)
	}
}

func TestUndo_takesBackAWholeFieldAtOnce(t *testing.T) {
	c, _, _ := counter(t, true)
	c.SetSize("g1", "M", "1")
	c.SetSize("g1", "M", "12")
	c.Undo()
	if got := qty(c, "g1", "M"); got != "11" {
		t.Errorf("after undo: got %s, want 11", got)
	}
	c.Redo()
	if got := qty(c, "g1", "M"); got != "12" {
		t.Errorf("after redo: got %s, want 12", got)
	}
	c.Leave()
	c.SetSize("g1", "M", "13")
	c.Undo()
	if got := qty(c, "g1", "M"); got != "12" {
		t.Errorf("a field that was left is a step of its own: got %s, want 12", got)
	}
}

func TestUndo_goesBackToTheEmptyFormAndForthAgain(t *testing.T) {
	c, _, _ := counter(t, true)
	want := fmt.Sprint(c.Draft())
	steps := 0
	for c.View().CanUndo {
		c.Undo()
		steps++
	}
	if n := len(c.Draft().Garments) + len(c.Draft().Placements); n != 0 {
		t.Errorf("%d lines are left after %d undos, want none", n, steps)
	}
	for c.View().CanRedo {
		c.Redo()
	}
	if got := fmt.Sprint(c.Draft()); got != want {
		t.Errorf("after redoing all: got %s, want %s", got, want)
	}
}

func TestDraft_isNeverChangedInPlace(t *testing.T) {
	c, _, _ := counter(t, true)
	before := c.Draft()
	want := fmt.Sprint(before)
	c.SetSize("g1", "M", "99")
	c.SetInks("p1", "red")
	c.SetOn("p1", []string{"g1"})
	c.SetVariant("p1", 0, "YS", "5 x 4")
	c.RemoveGarment("g1")
	c.SetExtraCharge("bag", "9")
	if got := fmt.Sprint(before); got != want {
		t.Errorf("an old draft changed: got %s, want %s", got, want)
	}
}

func TestGarments_coloursOfOneStyleShareAHeader(t *testing.T) {
	c, _, _ := counter(t, true)
	blocks := c.View().Form.Blocks
	if len(blocks) != 2 || len(blocks[0].Rows) != 2 || blocks[0].Note != "one price for both colours" {
		t.Fatalf("got %+v, want long sleeves in two colours, then caps", blocks)
	}
	c.SetSize(c.AddGarment(1, "Navy"), "XL", "2")
	if got := len(c.Draft().Garments); got != 3 {
		t.Errorf("a colour that is there was added again: %d lines", got)
	}
	if got := blocks[0].Rows[0].Total; got != "29" {
		t.Errorf("got %s navy pieces, want 29", got)
	}
}

func TestArtwork_goesOnWhatItSuits(t *testing.T) {
	c, _, _ := counter(t, true)
	rows := c.View().Form.Artwork
	got := []string{rows[0].On, rows[2].On, rows[0].Method, rows[0].Against, rows[0].Each, rows[0].Inches, fmt.Sprint(rows[2].Chips)}
	want := []string{"long sleeves", "caps", "Sheets", "film costs 62.18 more", "3.64", "11 × 8.5", "[full colour]"}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %q, want %q", got, want)
	}
	c.RemoveGarment("g3")
	if got := c.View().Form.Artwork[2].On; got != "no garment" {
		t.Errorf("artwork of a garment that is gone: got %q, want no garment", got)
	}
}

func TestArtwork_aNewColourJoinsTheArtworkOfItsStyle(t *testing.T) {
	c, _, _ := counter(t, false)
	c.AddGarment(1, "Navy")
	c.AddGarment(2, "Navy")
	c.AddPlacement("Full back")
	c.AddGarment(1, "White")
	if got, want := fmt.Sprint(c.Draft().Placements[0].On), "[g1 g3]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestSizes_whatCannotBeReadIsSaidAndTheRestTaken(t *testing.T) {
	c, _, _ := counter(t, true)
	c.FillSizes("g1", "S", "S1 M2 9XXL4")
	row := c.View().Form.Blocks[0].Rows[0]
	if row.Problem == "" || row.Cells[0].Qty != "1" || row.Cells[1].Qty != "2" {
		t.Errorf("got problem %q, cells %+v; want the problem, and S and M taken", row.Problem, row.Cells)
	}
	c.FillSizes("g1", "M", "5/6")
	row = c.View().Form.Blocks[0].Rows[0]
	if row.Problem != "" || row.Cells[1].Qty != "5" || row.Cells[2].Qty != "6" || row.Cells[0].Qty != "1" {
		t.Errorf("got problem %q, cells %+v; want 5 and 6 from M on", row.Problem, row.Cells)
	}
}

func TestOff_isPercentOrAmount(t *testing.T) {
	c, _, _ := counter(t, true)
	c.SetOff("10 %")
	if d := c.Draft(); d.DiscountPercent != "10" || d.Discount != "" {
		t.Errorf("got %q %% and %q, want 10 %%", d.DiscountPercent, d.Discount)
	}
	c.SetOff("10")
	if d := c.Draft(); d.DiscountPercent != "" || d.Discount != "10" {
		t.Errorf("got %q %% and %q, want 10.00 off", d.DiscountPercent, d.Discount)
	}
}

func TestBands_staleResultsAreDropped(t *testing.T) {
	c, shop, e := counter(t, true)
	asked, stops := len(e.asked), 0
	c.engine.Stop = func() { stops++ }
	c.SetSize("g1", "M", "1")
	shop.step() // the window was drawn
	c.SetSize("g1", "M", "12")
	c.SetSize("g1", "M", "123")
	if n := len(shop.waiting); n != 1 {
		t.Fatalf("%d searches wait after three keys, want one", n)
	}
	if stops != 2 {
		t.Errorf("the search for the first key was given up %d times, want at both keys after it", stops)
	}
	if !c.View().Panel.Bands.Seeking {
		t.Error("the panel does not say that the bands are being worked out")
	}
	shop.run()
	b := c.View().Panel.Bands
	if b.Seeking || len(e.asked) != asked+2 {
		t.Errorf("seeking %v after %d searches, want the first dropped and a second one shown", b.Seeking, len(e.asked)-asked)
	}
	var rows []string
	for _, r := range b.Rows {
		rows = append(rows, fmt.Sprint(r.Name, r.Own, " ", r.Spans[len(r.Spans)-1].Label))
	}
	if got, want := strings.Join(rows, "; "), "1 inkfalse sheets from 13; 2 inkstrue sheets from 22; full colourfalse film at every quantity"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestBands_areGoneWhereTheSearchFails(t *testing.T) {
	c, shop, e := counter(t, true)
	engine := e.engine()
	engine.Cheapest = func(quote.Job, string, int) (quote.CheapestFromTo, error) {
		return quote.CheapestFromTo{}, errors.New("cannot be served")
	}
	c.engine = engine
	c.SetSize("g1", "M", "12")
	shop.run()
	if b := c.View().Panel.Bands; len(b.Rows) != 0 || b.Seeking {
		t.Errorf("got %+v, want no bands", b)
	}
}

func TestSave_keepsTheNumberItWasGiven(t *testing.T) {
	c, shop, _ := counter(t, true)
	if err := c.Save(); err != nil || len(shop.saved) != 1 {
		t.Fatalf("got %v, %d saved", err, len(shop.saved))
	}
	if got, want := c.View().Status.Line(), "2026-0147 · draft · saved 12:04"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if err := c.Save(); err != nil || len(shop.saved) != 1 {
		t.Errorf("an unchanged draft was saved again")
	}
	c.Undo()
	if c.Draft().Number != "2026-0147" || !c.Unsaved() {
		t.Errorf("after undo: number %q, unsaved %v; want the number kept and the change to be saved", c.Draft().Number, c.Unsaved())
	}
	shop.saveErr = errors.New("the shop file is locked by another window")
	if err := c.Save(); err == nil || !c.View().Status.Failed || !c.Unsaved() {
		t.Errorf("got %v, %+v; want the failure shown and the change still to be saved", err, c.View().Status)
	}
}

func TestPrice_typedOnAnyLineHoldsForItsGroup(t *testing.T) {
	c, _, _ := counter(t, true)
	c.SetPrice("g2", "25")
	c.SetPrice("g1", "26")
	d := c.Draft()
	if d.Garments[0].Price != "26" || d.Garments[1].Price != "" {
		t.Errorf("got %q and %q, want the last typed price alone", d.Garments[0].Price, d.Garments[1].Price)
	}
}

func TestPresets_areFoundByInitialsAndTakenOnesComeLast(t *testing.T) {
	c, _, _ := counter(t, false)
	if got := c.Presets("fb"); len(got) != 1 || got[0].Name != "Full back" {
		t.Errorf("fb: got %v, want Full back", got)
	}
	c.AddPlacement("Full back")
	if got := c.Presets(""); len(got) != 3 || got[2].Name != "Full back" {
		t.Errorf("got %v, want Full back last", got)
	}
}

func TestClear_isOneUndoAway(t *testing.T) {
	c, _, _ := counter(t, true)
	c.Clear()
	if len(c.Draft().Garments) != 0 || len(c.Draft().Extras) != 1 {
		t.Fatalf("got %+v, want an empty form with the usual extra", c.Draft())
	}
	c.Undo()
	if len(c.Draft().Garments) != 3 {
		t.Errorf("got %d garments after undo, want the job back", len(c.Draft().Garments))
	}
}

func qty(c *Counter, key, size string) string {
	for _, g := range c.Draft().Garments {
		for _, s := range g.Sizes {
			if g.Key == key && s.Size == size {
				return s.Qty
			}
		}
	}
	return "?"
}

var (
	_ Shop = (*fakeShop)(nil)
	_      = catalog.Draft{}
)

func TestWhole_replacesTheFirstStageOnceAndPapersWaitForIt(t *testing.T) {
	c, shop, e := counter(t, true)
	whole, settled := 0, 0
	full := func(n *int) func(quote.Job) (quote.Result, error) {
		return func(j quote.Job) (quote.Result, error) {
			*n++
			r := regatta(j)
			r.Cliffs = []quote.Cliff{{From: 46, To: 48, Saves: amount("3.10")}}
			return r, nil
		}
	}
	engine := e.engine()
	engine.Whole, engine.Settled = full(&whole), full(&settled)
	c.engine = engine
	c.SetSize("g1", "M", "1")
	shop.step() // the window was drawn
	c.SetSize("g1", "M", "12")
	if n := len(c.View().Panel.Ladder.Cliffs); n != 0 {
		t.Errorf("got %d cliffs on the key, want none yet", n)
	}
	shop.run()
	if got := c.View().Panel.Ladder.Cliffs; whole != 2 || len(got) != 1 || got[0] != "48 pieces cost 3.10 less in all than 46." {
		t.Errorf("got %v after %d whole results, want the second one shown", got, whole)
	}
	c.SetSize("g1", "M", "13")
	if _, r, ok := c.Job(); !ok || len(r.Cliffs) != 1 || settled != 1 {
		t.Errorf("a paper got cliffs %v after %d settlings, want the whole result", r.Cliffs, settled)
	}
}

func TestOpen_showsACellForEverySizeOfTheStyle(t *testing.T) {
	c, _, _ := counter(t, false)
	c.Open(catalog.Draft{QuotedOn: "2026-12-02", Garments: []catalog.DraftGarment{{
		Key: "a", StyleID: 1, Color: "Navy",
		Sizes: []catalog.DraftSize{{Size: "L", Qty: "2"}, {Size: "9XL", Qty: "1"}},
	}}})
	var got []string
	for _, k := range c.View().Form.Blocks[0].Rows[0].Cells {
		got = append(got, k.Size+k.Qty)
	}
	if want := "S M L2 XL 2XL 9XL1"; strings.Join(got, " ") != want {
		t.Errorf("got %v, want %s", got, want)
	}
	if c.Unsaved() {
		t.Error("opening counts as a change")
	}
}

func TestLevers_areWorkedOutOnlyWhileLookedAt(t *testing.T) {
	c, shop, e := counter(t, true)
	asked := 0
	engine := e.engine()
	engine.Levers = func(quote.Job) ([]quote.Lever, error) {
		asked++
		return []quote.Lever{
			{Name: quote.LeverBlanks, Less: amount("-54.75"), More: amount("54.75")},
			{Name: quote.LeverWage, Less: amount("-8.00"), More: amount("0.00")},
		}, nil
	}
	c.engine = engine
	c.SetSize("g1", "M", "12")
	shop.run()
	if asked != 0 {
		t.Fatalf("asked %d times while nobody looks", asked)
	}
	c.OpenLevers(true)
	shop.run()
	l := c.View().Panel.Levers
	if len(l.Rows) != 2 || l.Rows[0].More != "+54.75" || l.Rows[0].Less != "−54.75" || l.Rows[0].Up != 1 || l.Seeking {
		t.Errorf("got %+v", l)
	}
	c.SetSize("g1", "M", "13")
	if !c.View().Panel.Levers.Seeking {
		t.Error("levers of the job before are shown as if they held")
	}
	shop.run()
	if asked != 2 || c.View().Panel.Levers.Seeking {
		t.Errorf("asked %d times, seeking %v; want them to follow", asked, c.View().Panel.Levers.Seeking)
	}
}

func TestPicture_bringsInksAndKeepsItsShape(t *testing.T) {
	c, _, _ := counter(t, true)
	pic := artwork.Picture{Width: 1200, Height: 600, Inks: []artwork.Ink{{Name: "red"}, {Name: "navy"}}}
	c.AttachPicture("p1", "/art/crest.png", pic)
	row := c.View().Form.Artwork[0]
	if row.Inks != "red, navy" || row.Inches != "11 × 5.5" || row.Picture.Name != "crest.png" || row.Picture.Found != "2 inks found" {
		t.Errorf("got inks %q, inches %q, picture %+v", row.Inks, row.Inches, row.Picture)
	}
	if !row.Picture.Coarse || row.Picture.Offer != "4 × 2 in at 300 dots per inch" {
		t.Errorf("got %+v, want a warning at 109 dots per inch and the sharp size", row.Picture)
	}
	if n := c.View().Panel.Notes[1].Text; n != "Full back: the picture has only 109 dots per inch at this size." {
		t.Errorf("got %q among the notes", n)
	}
	c.SetInches("p1", "6")
	if got := c.View().Form.Artwork[0].Inches; got != "6 × 3" {
		t.Errorf("one side typed: got %s, want 6 × 3", got)
	}
	c.TakeSharpSize("p1")
	if row = c.View().Form.Artwork[0]; row.Inches != "4 × 2" || row.Picture.Coarse || row.Picture.Offer != "" {
		t.Errorf("got %s, %+v", row.Inches, row.Picture)
	}
	c.Undo()
	if got := c.View().Form.Artwork[0].Inches; got != "6 × 3" {
		t.Errorf("after undo: got %s", got)
	}
	c.AttachPicture("p1", "/art/photo.jpg", artwork.Picture{Width: 3000, Height: 3000, Photo: true})
	if row = c.View().Form.Artwork[0]; !row.FullColor || row.Picture.Found != "a photo: full colour" {
		t.Errorf("got %+v", row)
	}
}

func TestUndo_aJobThatWasNeverSavedDoesNotTakeTheNumberOfTheNext(t *testing.T) {
	c, shop, _ := counter(t, true)
	shop.saveErr = errors.New("the disk is full")
	_ = c.Save()
	shop.saveErr = nil
	c.Clear()
	c.SetTitle("the next job")
	if err := c.Save(); err != nil || c.Draft().ID == 0 {
		t.Fatalf("got %v, id %d", err, c.Draft().ID)
	}
	c.Undo()
	if c.Draft().Number == "" {
		t.Error("an earlier state of the saved job has lost its number")
	}
	c.Undo()
	if d := c.Draft(); len(d.Garments) != 3 || d.ID != 0 || d.Number != "" {
		t.Errorf("got %d garments, id %d, number %q; want the unsaved job without a number", len(d.Garments), d.ID, d.Number)
	}
}
