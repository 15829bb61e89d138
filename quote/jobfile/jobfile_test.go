package jobfile_test

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// fill puts random values into every field of a struct, so that a field the codec forgets is found.
func fill(t *rapid.T, v reflect.Value) {
	switch v.Interface().(type) {
	case money.Amount:
		a, _ := money.ParseAmount(fmt.Sprintf("%d.%02d", rapid.IntRange(-50, 900).Draw(t, "units"), rapid.IntRange(0, 99).Draw(t, "cents")))
		v.Set(reflect.ValueOf(a))
		return
	case money.Number:
		n, _ := money.ParseNumber(fmt.Sprintf("%d.%03d", rapid.IntRange(-50, 900).Draw(t, "whole"), rapid.IntRange(0, 999).Draw(t, "part")))
		v.Set(reflect.ValueOf(n))
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if rapid.Bool().Draw(t, "given") {
			v.Set(reflect.New(v.Type().Elem()))
			fill(t, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(t, v.Field(i))
			word(t, v.Type().Field(i).Name, v, v.Field(i))
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), rapid.IntRange(0, 2).Draw(t, "len"), 2))
		for i := range v.Len() {
			fill(t, v.Index(i))
		}
	case reflect.Map:
		x := reflect.New(v.Type().Elem()).Elem()
		fill(t, x)
		v.Set(reflect.MakeMap(v.Type()))
		v.SetMapIndex(reflect.ValueOf("2XL"), x)
	case reflect.String:
		v.SetString(rapid.SampledFrom([]string{"", "a", "Ærø <&> \"7\"", "日本\n\t"}).Draw(t, "text"))
	case reflect.Int:
		v.SetInt(int64(rapid.IntRange(-9, 500).Draw(t, "count")))
	case reflect.Bool:
		v.SetBool(rapid.Bool().Draw(t, "flag"))
	}
}

// word keeps the fields that take one of a few words, or a number as text, to those.
func word(t *rapid.T, name string, owner, field reflect.Value) {
	words := map[string][]string{
		"Unit": {"", "in", "mm"}, "Basis": {"", "margin", "hourly"}, "SheetShare": {"", "alone", "first"}, "Rule": {"tax_excess"},
		"By": {"", "stitches"}, "ChargeBy": {"", "text", "character"}, "Kind": {"area", "roll"}, "Length": {"", "24.5"}, "UsedPercent": {"", "97.0"},
		"X": {"0.25"}, "Y": {"0"}, "W": {"1"}, "H": {"2.5"},
	}
	_, pricing := owner.Interface().(quote.Pricing)
	_, run := owner.Interface().(quote.Run)
	switch {
	case field.Kind() != reflect.String && name != "On":
	case name == "Sizes" && pricing:
		field.SetString(rapid.SampledFrom([]string{"", "table"}).Draw(t, "sizes"))
	case run && (name == "Width" || name == "Height"):
		field.SetString("13")
	case name == "On" && owner.Type() == reflect.TypeFor[quote.Tax]():
		field.Set(reflect.ValueOf(rapid.SampledFrom([][]string{nil, {"goods", "extras"}}).Draw(t, "on")))
	case words[name] != nil && field.Kind() == reflect.String:
		field.SetString(rapid.SampledFrom(words[name]).Draw(t, name))
	}
}

// same compares by meaning: amounts by value, and no list like an empty one, except where On keeps them apart.
func same(a, b reflect.Value, path string) string {
	switch x := a.Interface().(type) {
	case money.Amount:
		if x.Cmp(b.Interface().(money.Amount)) != 0 {
			return fmt.Sprintf("%s: %v, %v", path, x, b)
		}
		return ""
	case money.Number:
		if x.Cmp(b.Interface().(money.Number)) != 0 {
			return fmt.Sprintf("%s: %v, %v", path, x, b)
		}
		return ""
	}
	switch a.Kind() {
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				return path + ": one is nil"
			}
			return ""
		}
		return same(a.Elem(), b.Elem(), path)
	case reflect.Struct:
		for i := range a.NumField() {
			if d := same(a.Field(i), b.Field(i), path+"."+a.Type().Field(i).Name); d != "" {
				return d
			}
		}
		return ""
	case reflect.Slice:
		if a.Len() != b.Len() {
			return fmt.Sprintf("%s: %v, %v", path, a, b)
		}
		for i := range a.Len() {
			if d := same(a.Index(i), b.Index(i), fmt.Sprintf("%s[%d]", path, i)); d != "" {
				return d
			}
		}
		return ""
	case reflect.Map:
		for _, k := range a.MapKeys() {
			if !b.MapIndex(k).IsValid() {
				return path + ": key missing"
			}
			if d := same(a.MapIndex(k), b.MapIndex(k), path+"."+k.String()); d != "" {
				return d
			}
		}
		return ""
	}
	if !reflect.DeepEqual(a.Interface(), b.Interface()) {
		return fmt.Sprintf("%s: %v, %v", path, a, b)
	}
	return ""
}

func TestEncode_everyFieldComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var job quote.Job
		fill(t, reflect.ValueOf(&job).Elem())
		data := jobfile.Encode(job)
		got, err := jobfile.Decode(data)
		if err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
		if d := same(reflect.ValueOf(job), reflect.ValueOf(got), "job"); d != "" {
			t.Fatalf("differs at %s\n%s", d, data)
		}
		for i, p := range job.Placements {
			if (p.On == nil) != (got.Placements[i].On == nil) {
				t.Fatalf("placements[%d].on: nil %v, came back nil %v", i, p.On == nil, got.Placements[i].On == nil)
			}
		}
		if again := jobfile.Encode(got); !bytes.Equal(data, again) {
			t.Fatalf("written twice:\n%s\nand\n%s", data, again)
		}
	})
}

func TestDecode_defaults(t *testing.T) {
	job, err := jobfile.Decode([]byte(`{"format":"pressworth.job/1","garments":[{"id":"a","price":""},
		{"id":"b","supplied_by":"customer","clothing":false,"handling_s":"0"}],
		"placements":[{"id":"p"},{"id":"q","turn":false,"on":[]}],"extras":[{"id":"e"},{"id":"o","per":"order"}],
		"suppliers":[{"id":"s"}],"paper":{"customer":"Alder School","shop":{"name":"Harbour & Pine","phone":"5550100"}}}`))
	if err != nil {
		t.Fatal(err)
	}
	a, b := job.Garments[0], job.Garments[1]
	if a.FromCustomer || a.NotClothing || a.Handling != nil || a.Price != nil {
		t.Errorf("garment with nothing given: %+v", a)
	}
	if !b.FromCustomer || !b.NotClothing || b.Handling == nil || b.Handling.Sign() != 0 {
		t.Errorf("garment with everything given: %+v", b)
	}
	if p, q := job.Placements[0], job.Placements[1]; p.NoTurn || p.On != nil || !q.NoTurn || q.On == nil || len(q.On) != 0 {
		t.Errorf("placements: %+v %+v", p, q)
	}
	if job.Extras[0].PerOrder || !job.Extras[1].PerOrder || job.Suppliers[0].SharePercent != nil || job.Pricing.MayRise {
		t.Errorf("extras %+v, suppliers %+v, pricing %+v", job.Extras, job.Suppliers, job.Pricing)
	}
	if job.Paper.Customer.Name != "Alder School" || job.Paper.Shop.Phone != "5550100" {
		t.Errorf("paper: %+v", job.Paper)
	}
}

// The paths in the order of the file; every one of them has to be found in one reading.
func TestDecode_problems(t *testing.T) {
	cases := []struct {
		name, in string
		paths    []string
	}{
		{"an empty file", ``, []string{""}},
		{"no object", `[1]`, []string{""}},
		{"cut off", `{"format":"pressworth.job/1","title":"x`, []string{""}},
		{"another form", `{"format":"pressworth.job/2"}`, []string{"format"}},
		{"no form", `{}`, []string{"format"}},
		{"something after the end", `{"format":"pressworth.job/1"} {}`, []string{""}},
		{"a key given twice", job(`"title":"a","title":"b"`), []string{"title"}},
		{"a key given twice inside", job(`"pricing":{"tax":{"percent":"1","percent":"2"}}`), []string{"pricing.tax.percent"}},
		{"a key in another case", job(`"Title":"a"`), []string{"Title"}},
		{"unknown keys", job(`"colour":1,"shop":{"wage":"1"},"extras":[{},{"x y":2}]`), []string{"colour", "shop.wage", `extras[1]["x y"]`}},
		{"a number for a string", job(`"placements":[{},{"width":8.5}]`), []string{"placements[1].width"}},
		{"numbers of no good form", job(`"placements":[{"width":"1e3","height":"+1"},{"width":" 1","height":"1,5"},{"width":".5","height":"1."},` +
			`{"width":"1234567890123","height":"0.123456789"},{"width":"","height":"--1"}]`), []string{
			"placements[0].width", "placements[0].height", "placements[1].width", "placements[1].height", "placements[2].width",
			"placements[2].height", "placements[3].width", "placements[3].height", "placements[4].width", "placements[4].height",
		}},
		{"counts", job(`"ladder":[1,2.0,1e2,"3",99999999999999999999,4]`), []string{"ladder[1]", "ladder[2]", "ladder[3]", "ladder[4]"}},
		{"null", job(`"title":null,"art":null`), []string{"title", "art"}},
		{"words that are none of the few", job(`"unit":"cm","rate_cards":[{"kind":"film","by":"weight"}],"shop":{"sheet_share":"all"},` +
			`"pricing":{"basis":"gut","sizes":"free","tax":{"on":["goods","tips"],"clothing":{"rule":"x","amount":"1"}}},` +
			`"extras":[{"per":"box"}],"garments":[{"supplied_by":"me"}]`), []string{
			"unit", "rate_cards[0].kind", "rate_cards[0].by",
			"shop.sheet_share", "pricing.basis", "pricing.sizes", "pricing.tax.on[1]", "pricing.tax.clothing.rule", "extras[0].per", "garments[0].supplied_by",
		}},
		{
			"what breaks and sizes need", job(`"garments":[{"sizes":[{"qty":1,"each":[{"from":1},{"each":"2"}]}]}]`),
			[]string{"garments[0].sizes[0].size", "garments[0].sizes[0].each[0].each", "garments[0].sizes[0].each[1].from"},
		},
		{"text that is no UTF-8", job("\"title\":\"a\xffb\",\"art\":{\"minutes\":\"x\"}"), []string{"title", "art.minutes"}},
		{"half of a surrogate pair", job(`"title":"\ud800"`), []string{"title"}},
		{"lists for objects and the other way", job(`"shop":[],"garments":{},"extras":[7]`), []string{"shop", "garments", "extras[0]"}},
		{
			"a plan's figures", job(`"frozen":[{"pieces":1,"plans":[{"card":"c","runs":[{"width":"w","pieces":[{"placement":"p","x":"1","y":"y","w":"1","h":"1"}]}]}]}]`),
			[]string{"frozen[0].plans[0].runs[0].width", "frozen[0].plans[0].runs[0].pieces[0].y"},
		},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := jobfile.Decode([]byte(c.in))
			var problems quote.Problems
			if !errors.As(err, &problems) {
				t.Fatalf("got %v, want problems at %q", err, c.paths)
			}
			var got []string
			for _, p := range problems {
				got = append(got, p.Path)
				if p.Problem == "" {
					t.Errorf("%s: no reason given", p.Path)
				}
			}
			if !slices.Equal(got, c.paths) {
				t.Errorf("paths\n got %q\nwant %q\n%v", got, c.paths, err)
			}
		})
	}
}

func job(fields string) string { return `{"format":"pressworth.job/1",` + fields + `}` }

func TestDecode_marksInTheTextAreKept(t *testing.T) {
	got, err := jobfile.Decode([]byte(job("\"title\":\"a\uFFFDb\\ufffd\"")))
	if err != nil || got.Title != "a\uFFFDb\uFFFD" {
		t.Errorf("got %q, %v", got.Title, err)
	}
}

func TestDecode_deepNestingIsRefused(t *testing.T) {
	deep := job(`"x":` + string(bytes.Repeat([]byte("["), 100_000)) + string(bytes.Repeat([]byte("]"), 100_000)))
	if _, err := jobfile.Decode([]byte(deep)); err == nil {
		t.Error("100,000 lists within one another were read")
	}
}

func TestTogether_consequencesAreLeftOut(t *testing.T) {
	form := quote.Problems{{Path: "placements[1].width", Problem: "is a number"}, {Path: "extras[0].x", Problem: "unknown key: remove it"}}
	content := quote.Problems{
		{Path: "placements[1].width", Problem: "has to be above 0"},
		{Path: "placements[1]", Problem: "no card serves it"},
		{Path: "placements[10]", Problem: "has no inks"},
		{Path: "extras[0]", Problem: "has no id"},
	}
	var got []string
	for _, p := range jobfile.Together(form, content) {
		got = append(got, p.Path)
	}
	if want := []string{"placements[1].width", "extras[0].x", "placements[10]", "extras[0]"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestResult_comesBack(t *testing.T) {
	r := quote.Result{Currency: "USD", Pieces: 3, Warnings: []quote.Warning{{Code: "below_floor", Text: "<5 %"}}}
	got, err := jobfile.DecodeResult(jobfile.EncodeResult(r))
	if err != nil || got.Pieces != 3 || got.Format != quote.ResultFormat || got.Warnings[0].Text != "<5 %" {
		t.Errorf("got %+v, %v", got, err)
	}
	if _, err := jobfile.DecodeResult([]byte(`{"format":"pressworth.result/9"}`)); err == nil {
		t.Error("a result of another form was read")
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(job(`"garments":[{"id":"a","sizes":[{"size":"M","qty":1,"each":[{"from":1,"each":"2.50"}]}]}]`)))
	f.Add([]byte(`{"a":[{"b":null}]`))
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := jobfile.Decode(data)
		if err != nil {
			return
		}
		if _, err := jobfile.Decode(jobfile.Encode(j)); err != nil {
			t.Errorf("what was read cannot be read again: %v", err)
		}
	})
}
