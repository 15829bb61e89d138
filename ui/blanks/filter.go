package blanks

import (
	"context"
	"strconv"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// filter is the line of choices under the search box.
type filter struct {
	object    fyne.CanvasObject
	supplier  *parts.Choice
	category  *parts.Choice
	shade     *parts.Choice
	size      *parts.Field
	most      *parts.Field
	retired   *parts.Check
	suppliers []catalog.Supplier
}

func all(word string, options ...parts.Option) []parts.Option {
	return append([]parts.Option{{Name: word}}, options...)
}

func newFilter(changed func()) *filter {
	told := func(parts.Option) { changed() }
	typed := func(string) { changed() }
	f := &filter{
		supplier: parts.NewChoice(all("every supplier"), told),
		category: parts.NewChoice(all("every category", parts.Words(categories...)...), told),
		shade:    parts.NewChoice(all("every shade", parts.Words("light", "dark", "heather", "neon")...), told),
		size:     parts.NewField("size, like 3XL"), most: parts.NewNumber("price at most"),
		retired: parts.NewCheck("retired", func(bool) { changed() }),
	}
	for _, c := range []*parts.Choice{f.supplier, f.category, f.shade} {
		c.SetKey("")
	}
	f.size.OnChanged, f.most.OnChanged = typed, typed
	f.object = parts.Fields(96, f.supplier, f.category, f.shade, f.size, f.most, f.retired)
	return f
}

// offer fills in the suppliers there are.
func (f *filter) offer(c Catalog) {
	parts.Background(func() func() {
		found, err := c.Suppliers(context.Background())
		return func() {
			if err != nil {
				return // the list itself says what cannot be read
			}
			f.suppliers = found
			options := all("every supplier")
			for _, s := range found {
				options = append(options, parts.Option{Key: strconv.FormatInt(s.ID, 10), Name: s.Name})
			}
			f.supplier.SetOptions(options)
		}
	})
}

// value is the filter as the shop file understands it. A price that cannot be read is marked and lets everything through.
func (f *filter) value() catalog.StyleFilter {
	out := catalog.StyleFilter{Category: f.category.Key(), Shade: f.shade.Key(), Retired: f.retired.Checked()}
	out.SupplierID, _ = strconv.ParseInt(f.supplier.Key(), 10, 64)
	r := form.Reader{Get: func(path string) string {
		return map[string]string{"size": f.size.Text(), "most": f.most.Text()}[path]
	}}
	out.Size = r.Text("size")
	if r.Text("most") != "" {
		if most := r.Amount("most"); len(r.Problems) == 0 {
			out.AtMost = &most
		}
	}
	f.most.SetWrong(len(r.Problems) > 0)
	return out
}
