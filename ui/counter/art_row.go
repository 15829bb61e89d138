package counter

import (
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// artRow is one row of artwork.
type artRow struct {
	key     string
	name    *parts.Typeahead
	named   *entry
	inches  *entry
	inks    *inkField
	on      *parts.Choice
	sets    []present.OnOption
	method  *parts.Choice
	methods []parts.Option
	more    *parts.Button
}

func newArtRow(a *artwork) *artRow {
	p := a.presenter
	r := &artRow{}
	r.name = parts.NewTypeahead("", func(text string, show func([]parts.Option)) { show(presetOptions(p, text)) })
	r.name.Field.Bare()
	search := r.name.Field.OnChanged
	r.named = newEntry(p, r.name.Field, func(text string) {
		p.SetPlacementName(r.key, text)
		search(text)
	})
	r.name.OnChosen = func(o parts.Option) { p.SetPreset(r.key, o.Key) }
	r.name.Wide(300)
	r.inches = newEntry(p, parts.NewField("11 × 8.5").Bare(), func(text string) { p.SetInches(r.key, text) })
	r.inks = newInkField(p, func(text string) { p.SetInks(r.key, text) }, a.reach)
	r.on = parts.NewChoice(nil, r.choose(p)).Bare().Small()
	r.method = parts.NewChoice(nil, func(o parts.Option) { p.SetMethod(r.key, o.Key) }).Bare().Small()
	r.more = parts.NewButton(parts.Link, "…", "", func() { a.open(r.key) })
	for _, o := range r.objects() {
		a.table.Add(o)
	}
	return r
}

func (r *artRow) choose(p *present.Counter) func(parts.Option) {
	return func(o parts.Option) {
		for _, s := range r.sets {
			if s.Name == o.Key {
				p.SetOn(r.key, s.Keys)
			}
		}
	}
}

func (r *artRow) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.name.Field, r.inches.Field, r.inks.box, r.on, r.method, r.more}
}

func (r *artRow) visible(yes bool) {
	for _, o := range r.objects() {
		visible(o, yes)
	}
}

func (r *artRow) show(v present.ArtRow, sets []present.OnOption, methods []present.Option, anew bool) {
	r.key = v.Key
	r.named.fill(v.Name, anew)
	r.named.SetWrong(v.Problems.Name != "")
	r.inches.fill(v.Inches, anew)
	r.inches.SetWrong(v.Problems.Inches != "")
	r.inks.show(v.Inks, v.Chips, v.Problems.Inks != "", anew)
	r.showOn(v, sets)
	r.showMethod(v, methods)
}

// showOn offers the sets of garments; one that was put together by hand stands as a choice of its own.
func (r *artRow) showOn(v present.ArtRow, sets []present.OnOption) {
	known := slices.ContainsFunc(sets, func(s present.OnOption) bool { return s.Name == v.On })
	if !known {
		sets = append(slices.Clone(sets), present.OnOption{Name: v.On, Keys: v.OnKeys})
	}
	if !slices.EqualFunc(r.sets, sets, func(a, b present.OnOption) bool { return a.Name == b.Name && slices.Equal(a.Keys, b.Keys) }) {
		r.sets = sets
		options := make([]parts.Option, len(sets))
		for i, s := range sets {
			options[i] = parts.Option{Key: s.Name, Name: s.Name}
		}
		r.on.SetOptions(options)
	}
	r.on.SetKey(v.On)
	r.on.SetWrong(v.Problems.On != "")
}

// showMethod offers the rate cards; the first choice is automatic and says which card that is.
func (r *artRow) showMethod(v present.ArtRow, methods []present.Option) {
	options := make([]parts.Option, len(methods))
	for i, m := range methods {
		options[i] = parts.Option{Key: m.Key, Name: m.Name, Detail: m.Note}
	}
	if len(options) > 0 && v.Fixed == "" {
		options[0].Name, options[0].Detail = v.Method, "automatic"
	}
	if !slices.Equal(r.methods, options) {
		r.methods = options
		r.method.SetOptions(options)
	}
	r.method.SetKey(v.Fixed)
	r.method.SetWrong(v.Problems.Method != "")
}
