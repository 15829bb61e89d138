package catalog_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/jobfile"
)

const day = "2026-05-04"

func demo(t testing.TB) (catalog.Demo, catalog.Book) {
	t.Helper()
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, day)
	if err != nil {
		t.Fatal(err)
	}
	b := catalog.Book{Shop: d.Shop, Suppliers: d.Suppliers, Cards: d.Cards, Styles: make(map[int64]catalog.Style)}
	for _, s := range d.Styles {
		b.Styles[s.ID] = s
	}
	return d, b
}

func TestDemo_hasWhatAShopNeeds(t *testing.T) {
	d, b := demo(t)
	if len(d.Suppliers) < 3 || len(d.Styles) < 40 || len(d.Cards) < 5 || len(d.Drafts) != 3 {
		t.Errorf("got %d suppliers, %d styles, %d cards, %d quotes; want 3, 40, 5 at least, and 3", len(d.Suppliers), len(d.Styles), len(d.Cards), len(d.Drafts))
	}
	kinds := make(map[string]bool)
	for _, c := range d.Cards {
		kinds[c.Card.Kind] = true
	}
	if len(kinds) != 4 {
		t.Errorf("kinds of rate card: got %v, want all four", kinds)
	}
	for _, category := range []string{"tee", "long sleeve", "hoodie", "crew", "polo", "cap", "tote", "youth tee"} {
		if !slices.ContainsFunc(d.Styles, func(s catalog.Style) bool { return s.Category == category }) {
			t.Errorf("no style is a %s", category)
		}
	}
	for _, x := range d.Drafts {
		if _, problems := catalog.Freeze(x, b, day); len(problems) > 0 {
			t.Errorf("%s: %v", x.Title, problems)
		}
	}
}

// The demo's rowing club is the worked example that lies beside the repository: with the example's two cards the frozen
// job asks for the same.
func TestFreeze_demoClubIsTheWorkedExample(t *testing.T) {
	path := filepath.Join("..", "..", "shared", "examples", "regatta.job.json")
	data, err := os.ReadFile(path)
	if err != nil {
		t.Skipf("the worked example is not laid beside the repository: %v", err)
	}
	want, err := jobfile.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	d, b := demo(t)
	got, problems := catalog.Freeze(d.Drafts[0], b, day)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	alike(&got)
	if g, w := string(jobfile.Encode(got)), string(jobfile.Encode(want)); g != w {
		t.Errorf("got %s\nwant %s", g, w)
	}
}

// alike takes away what the example has no need of: other cards and suppliers, richer ink rows, what rides along.
func alike(j *quote.Job) {
	j.Paper = nil
	cards := map[string]bool{"film": true, "sheets": true}
	j.RateCards = slices.DeleteFunc(j.RateCards, func(c quote.RateCard) bool { return !cards[c.ID] })
	suppliers := map[string]bool{"northgate": true, "kiln": true}
	j.Suppliers = slices.DeleteFunc(j.Suppliers, func(s quote.Supplier) bool { return !suppliers[s.ID] })
	for i := range j.Suppliers {
		if j.Suppliers[i].ID == "northgate" {
			j.Suppliers[i].SharePercent = nil // 100 is what a left-out share means
		}
	}
	for i := range j.Garments {
		j.Garments[i].Info = quote.Info{}
		j.Garments[i].Sizes = slices.DeleteFunc(j.Garments[i].Sizes, func(s quote.Size) bool { return s.Qty == 0 })
	}
	for i := range j.Placements {
		j.Placements[i].Info = quote.Info{}
	}
	for i := range j.RateCards {
		j.RateCards[i].Info = quote.Info{}
		for k := range j.RateCards[i].Sizes {
			j.RateCards[i].Sizes[k].Prices = j.RateCards[i].Sizes[k].Prices[:2]
		}
	}
}

func TestFreeze_problemsNameTheirField(t *testing.T) {
	d, b := demo(t)
	base := d.Drafts[0]
	cases := map[string]struct {
		change func(*catalog.Draft)
		path   string
		says   string
	}{
		"a quantity that is no number":     {func(d *catalog.Draft) { d.Garments[0].Sizes[1].Qty = "1o" }, "garments[0].sizes[1].qty", "whole number"},
		"half a piece":                     {func(d *catalog.Draft) { d.Garments[0].Sizes[1].Qty = "2.5" }, "garments[0].sizes[1].qty", "whole number"},
		"a million pieces":                 {func(d *catalog.Draft) { d.Garments[0].Sizes[1].Qty = "1000000" }, "garments[0].sizes[1].qty", "100000"},
		"a negative quantity":              {func(d *catalog.Draft) { d.Garments[0].Sizes[1].Qty = "-3" }, "garments[0].sizes[1].qty", "whole number"},
		"a size without a price":           {func(d *catalog.Draft) { d.Garments[0].Sizes[1].Size = "9XL" }, "garments[0].sizes[1].size", "no price for 9XL"},
		"a colour it does not come in":     {func(d *catalog.Draft) { d.Garments[1].Color = "Plaid" }, "garments[1].color", "Plaid"},
		"no colour":                        {func(d *catalog.Draft) { d.Garments[1].Color = "" }, "garments[1].color", "choose a colour"},
		"a garment that left the catalog":  {func(d *catalog.Draft) { d.Garments[1].StyleID = 9999 }, "garments[1].style", "choose another"},
		"a garment not chosen":             {func(d *catalog.Draft) { d.Garments[2] = catalog.DraftGarment{Key: "x"} }, "garments[2].style", "choose a garment"},
		"a customer's garment, unnamed":    {func(d *catalog.Draft) { d.Garments[2] = catalog.DraftGarment{Key: "x", FromCustomer: true} }, "garments[2].name", "say what"},
		"a typed price that is none":       {func(d *catalog.Draft) { d.Garments[0].Price = "cheap" }, "garments[0].price", "amount"},
		"no garment":                       {func(d *catalog.Draft) { d.Garments = nil }, "garments", "add a garment"},
		"no piece":                         {func(d *catalog.Draft) { empty(d) }, "garments[0].sizes", "how many"},
		"no width":                         {func(d *catalog.Draft) { d.Placements[2].Width = "" }, "placements[2].width", "inches"},
		"a width of nothing":               {func(d *catalog.Draft) { d.Placements[2].Width = "0" }, "placements[2].width", "inches"},
		"a third of an inch":               {func(d *catalog.Draft) { d.Placements[2].Height = "3 1/3" }, "placements[2].height", "inches"},
		"no ink":                           {func(d *catalog.Draft) { d.Placements[0].Inks = " , " }, "placements[0].inks", "name the inks"},
		"too many inks":                    {func(d *catalog.Draft) { d.Placements[0].Inks = "99" }, "placements[0].inks", "1 to 24"},
		"a card that does not hold":        {func(d *catalog.Draft) { d.Placements[0].Method = "gone" }, "placements[0].method", "choose another"},
		"on garments that were taken away": {func(d *catalog.Draft) { d.Placements[0].On = []string{"zz"} }, "placements[0].on", "at least one"},
		"a variant without its sizes": {func(d *catalog.Draft) {
			d.Placements[0].Variants = []catalog.DraftVariant{{Width: "8", Height: "6"}}
		}, "placements[0].variants[0].sizes", "YS YM"},
		"minutes that are none":      {func(d *catalog.Draft) { d.ArtMinutes = "half" }, "art.minutes", "number"},
		"a negative charge":          {func(d *catalog.Draft) { d.ArtCharge = "-4" }, "art.charge", "amount"},
		"a rush that is none":        {func(d *catalog.Draft) { d.RushPercent = "a lot" }, "pricing.rush_percent", "number"},
		"a discount with an E":       {func(d *catalog.Draft) { d.Discount = "1e3" }, "pricing.discount", "amount"},
		"an extra's cost":            {func(d *catalog.Draft) { d.Extras[0].Cost = "x" }, "extras[0].cost", "amount"},
		"a day that is none":         {func(d *catalog.Draft) { d.NeededBy = "2026-02-30" }, "needed_by", "date"},
		"a level the shop lost":      {func(d *catalog.Draft) { d.Level = "friends" }, "level", "friends"},
		"a ladder with a word in it": {func(d *catalog.Draft) { d.Ladder = "12 dozen" }, "ladder", "whole number"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			x := clone(t, base)
			c.change(&x)
			_, problems := catalog.Freeze(x, b, day)
			if !slices.ContainsFunc(problems, func(p quote.Problem) bool { return p.Path == c.path && strings.Contains(p.Problem, c.says) }) {
				t.Errorf("got %v, want one at %s that says %q", problems, c.path, c.says)
			}
		})
	}
}

func empty(d *catalog.Draft) {
	for i := range d.Garments {
		for k := range d.Garments[i].Sizes {
			d.Garments[i].Sizes[k].Qty = ""
		}
	}
}

func clone(t *testing.T, d catalog.Draft) (c catalog.Draft) {
	t.Helper()
	b, err := json.Marshal(d)
	if err == nil {
		err = json.Unmarshal(b, &c)
	}
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestFreeze_allProblemsTogether(t *testing.T) {
	d, b := demo(t)
	x := clone(t, d.Drafts[0])
	x.Garments[0].Sizes[0].Qty, x.Placements[1].Width, x.ArtMinutes, x.NeededBy = "a", "b", "c", "d"
	_, problems := catalog.Freeze(x, b, day)
	var paths []string
	for _, p := range problems {
		paths = append(paths, p.Path)
	}
	want := []string{"garments[0].sizes[0].qty", "placements[1].width", "art.minutes", "needed_by"}
	slices.Sort(want)
	slices.Sort(paths)
	if !slices.Equal(paths, want) {
		t.Errorf("got %v, want %v", paths, want)
	}
}

func TestFreeze_readsWhatPeopleType(t *testing.T) {
	d, b := demo(t)
	x := clone(t, d.Drafts[0])
	x.Placements[0].Width, x.Placements[0].Height = "10 1/2", ` 8.5" `
	x.Placements[1].Inks, x.Placements[0].Inks = "2", "White, gold,  WHITE"
	x.ArtCharge, x.DeliveryCost, x.Garments[0].Price = "$1,250.00", ".5", "15"
	x.Ladder = "12, 24/36"
	x.Level, x.TaxExempt = "Club and school", true
	job, problems := catalog.Freeze(x, b, day)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	got := []string{
		job.Placements[0].Width.String(), job.Placements[0].Height.String(), strings.Join(job.Placements[0].Inks, "+"),
		job.Art.Charge.String(), job.Pricing.DeliveryCost.String(), job.Garments[0].Price.String(), job.Pricing.Percent.String(),
	}
	want := []string{"10.5", "8.5", "white+gold", "1250.00", "0.5", "15", "40"}
	if !slices.Equal(got, want) || job.Placements[1].InkCount != 2 || !slices.Equal(job.Ladder, []int{12, 24, 36}) || !job.Pricing.Tax.Exempt {
		t.Errorf("got %v, %d inks, ladder %v, exempt %v; want %v, 2, [12 24 36], true", got, job.Placements[1].InkCount, job.Ladder, job.Pricing.Tax.Exempt, want)
	}
}

func TestFreeze_onlyCardsOfTheDay(t *testing.T) {
	d, b := demo(t)
	b.Cards[0].ValidTo = "2026-05-03"
	b.Cards[1].ValidFrom = "2026-05-05"
	b.Cards[2].Active = false
	job, _ := catalog.Freeze(d.Drafts[0], b, day)
	var ids []string
	for _, c := range job.RateCards {
		ids = append(ids, c.ID)
	}
	if want := []string{"stitch", "vinyl"}; !slices.Equal(ids, want) {
		t.Errorf("got %v, want %v", ids, want)
	}
}

func TestFreeze_customersOwnGarment(t *testing.T) {
	d, b := demo(t)
	x := catalog.NewDraft(b.Shop)
	x.Garments = []catalog.DraftGarment{{
		Key: "own", FromCustomer: true, Name: "denim jacket", Shade: "dark", Tags: "cotton, denim", ValueEach: "60",
		Sizes: []catalog.DraftSize{{Size: "L", Qty: "3"}},
	}}
	x.Placements = clone(t, d.Drafts[2]).Placements
	x.Placements[0].On = nil
	job, problems := catalog.Freeze(x, b, day)
	g := job.Garments[0]
	if len(problems) > 0 || !g.FromCustomer || g.Supplier != "" || g.Style != "denim jacket" || g.ValueEach.String() != "60" || !slices.Equal(g.Tags, []string{"cotton", "denim"}) {
		t.Errorf("got %+v, %v", g, problems)
	}
	if len(x.Extras) != 1 || x.Extras[0].Key != "bag" {
		t.Errorf("a new draft takes the usual extras: got %+v, want bag", x.Extras)
	}
}

// Any draft may be frozen: no text makes it panic, and a draft that is saved comes back the same.
func TestFreeze_anyDraft(t *testing.T) {
	_, b := demo(t)
	draft := rapid.MakeCustom[catalog.Draft](rapid.MakeConfig{})
	rapid.Check(t, func(t *rapid.T) {
		d := draft.Draw(t, "draft")
		catalog.Freeze(d, b, day)
		saved, err := json.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		var back catalog.Draft
		if err := json.Unmarshal(saved, &back); err != nil {
			t.Fatal(err)
		}
		again, err := json.Marshal(back)
		if err != nil || string(again) != string(saved) {
			t.Errorf("got %s, %v\nwant %s", again, err, saved)
		}
	})
}

func TestDraft_comesBackFromJSON(t *testing.T) {
	d, _ := demo(t)
	for _, x := range d.Drafts {
		if got := clone(t, x); !reflect.DeepEqual(got, x) {
			t.Errorf("got %+v\nwant %+v", got, x)
		}
	}
}

func BenchmarkFreeze(b *testing.B) {
	d, book := demo(b)
	for b.Loop() {
		catalog.Freeze(d.Drafts[0], book, day)
	}
}
