package blanks

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

func TestEditor_priceTypedIsSavedAndCanBeTakenBack(t *testing.T) {
	p, k := editing(t)
	e := p.editor
	if !e.save.Disabled() {
		t.Error("there is something to save before anything was typed")
	}
	into(e.prices.Cell(1, 1), "3.40")
	test.Tap(e.save)
	if len(k.saved) != 1 || k.saved[0].Sizes[0].Each[0].Each.String() != "3.40" || k.saved[0].Sizes[2].Size != "2XL" {
		t.Fatalf("saved %+v; said %q", k.saved, e.fault.Text())
	}
	if e.object.Visible() || !strings.Contains(p.notice.Text(), "TS-0") {
		t.Errorf("editor open %v, said %q", e.object.Visible(), p.notice.Text())
	}
	p.Undo()
	if len(k.saved) != 2 || k.saved[1].Sizes[0].Each[0].Each.String() != "3.10" {
		t.Errorf("undo saved %+v", k.saved[len(k.saved)-1].Sizes)
	}
	p.Redo()
	if len(k.saved) != 3 || k.saved[2].Sizes[0].Each[0].Each.String() != "3.40" {
		t.Errorf("redo saved %+v", k.saved[len(k.saved)-1].Sizes)
	}
	p.Undo()
	if len(k.saved) != 4 || k.saved[3].Sizes[0].Each[0].Each.String() != "3.10" {
		t.Errorf("undo after redo saved %+v", k.saved[len(k.saved)-1].Sizes)
	}
}

func TestEditor_problemsStandBesideTheirFields(t *testing.T) {
	p, _ := editing(t)
	e := p.editor
	into(e.form.Field("number"), " ")
	if e.form.ProblemAt("number") == "" || !e.save.Disabled() {
		t.Errorf("no number: said %q, button off %v", e.form.ProblemAt("number"), e.save.Disabled())
	}
	into(e.form.Field("number"), "TS-1")
	into(e.prices.Cell(1, 1), "3,1O")
	if got := e.form.ProblemAt("sizes"); !strings.Contains(got, "size S") || !e.save.Disabled() {
		t.Errorf("bad price: said %q", got)
	}
}

func TestEditor_leavingWithSomethingTypedIsAskedForOnce(t *testing.T) {
	p, _ := editing(t)
	into(p.editor.form.Field("name"), "Other tee")
	p.Escape()
	if !p.editor.object.Visible() || p.editor.fault.Text() == "" {
		t.Fatal("what was typed is gone without a word")
	}
	p.Escape()
	if p.editor.object.Visible() {
		t.Error("the second Esc did not leave")
	}
}

func TestEditor_styleComesBackAsItWas(t *testing.T) {
	s, _ := stock(3).Style(context.Background(), 1)
	s.SupplierID, s.Tags = 7, []string{"cotton", "tee"}
	s.Printable = []catalog.Printable{{Size: "S", Width: money.Int(11), Height: money.Int(13)}}
	s.ByColor = map[string][]catalog.StyleSize{"Navy": {{Size: "2XL", Each: []quote.Break{{From: 1, Each: money.FromMinor(415, 2)}}}}}
	s.Colors[0].Sizes = []string{"S", "M", "2XL"}
	kept := []catalog.Price{{Kind: catalog.NetPrice, Size: "S", Each: s.Sizes[0].Each, From: "2026-01-05"}}
	back, own, problems := textOf(s, kept).style("2026-12-02")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if len(own) != 1 || !own[0].SaysAs(kept[0]) {
		t.Errorf("own prices: got %+v, want %+v", own, kept)
	}
	if got, want := fmt.Sprintf("%+v", back), fmt.Sprintf("%+v", s); got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
}
