package present

import (
	"regexp"
	"slices"
	"strings"

	"pressworth/catalog"
)

// AddPlacement puts artwork at a place on the draft and returns its key. A name among the shop's presets brings its
// usual size; artwork for caps goes on the caps, other artwork on everything but caps.
func (c *Counter) AddPlacement(name string) string {
	key := freshKey("p", placementKeys(c.draft))
	c.edit("", func(d *catalog.Draft) {
		p := catalog.DraftPlacement{Key: key, On: c.usualGarments(*d, name)}
		c.applyPreset(&p, name)
		d.Placements = append(d.Placements, p)
	})
	return key
}

// DuplicatePlacement puts the same artwork on the draft once more and returns the new row's key.
func (c *Counter) DuplicatePlacement(key string) string {
	fresh := freshKey("p", placementKeys(c.draft))
	c.edit("", func(d *catalog.Draft) {
		i := slices.IndexFunc(d.Placements, func(p catalog.DraftPlacement) bool { return p.Key == key })
		if i < 0 {
			return
		}
		p := d.Placements[i]
		p.Key, p.On = fresh, slices.Clone(p.On)
		p.Variants, p.Texts = slices.Clone(p.Variants), slices.Clone(p.Texts)
		d.Placements = slices.Insert(d.Placements, i+1, p)
	})
	return fresh
}

// RemovePlacement takes a row of artwork off the draft.
func (c *Counter) RemovePlacement(key string) {
	c.edit("", func(d *catalog.Draft) {
		d.Placements = slices.DeleteFunc(d.Placements, func(p catalog.DraftPlacement) bool { return p.Key == key })
	})
}

// SetPlacementName renames a row without touching its size.
func (c *Counter) SetPlacementName(key, name string) {
	c.placement("placement "+key, key, func(p *catalog.DraftPlacement) { p.Name = name })
}

// SetPreset gives a row the name and the usual size of a preset.
func (c *Counter) SetPreset(key, name string) {
	c.placement("", key, func(p *catalog.DraftPlacement) { c.applyPreset(p, name) })
}

// SetInches takes width and height typed in one field: "11 x 8.5", "11 × 8.5", "11 8.5", "11".
func (c *Counter) SetInches(key, text string) {
	c.placement("inches "+key, key, func(p *catalog.DraftPlacement) {
		p.Width, p.Height = splitInches(text)
		c.keepAspect(p)
	})
}

var times = regexp.MustCompile(`\s*[x×X*]\s*|\s+by\s+`)

// splitInches divides "11 x 8.5" or "11 8.5"; a fraction like "3 1/2" is one measure.
func splitInches(text string) (w, h string) {
	text = strings.TrimSpace(strings.NewReplacer(`"`, " ", "″", " ", " in", " ").Replace(text))
	if parts := times.Split(text, 2); len(parts) == 2 {
		return strings.TrimSpace(parts[0]), strings.TrimSpace(parts[1])
	}
	if parts := strings.Fields(text); len(parts) == 2 && !strings.Contains(text, "/") {
		return parts[0], parts[1]
	}
	return text, ""
}

// SetInks takes inks as typed: names divided by commas, a count, or "full colour".
func (c *Counter) SetInks(key, text string) {
	c.placement("inks "+key, key, func(p *catalog.DraftPlacement) {
		p.FullColor = isFullColor(text)
		p.Inks = strings.TrimSpace(text)
		if p.FullColor {
			p.Inks = ""
		}
	})
}

func isFullColor(text string) bool {
	t := strings.ToLower(strings.TrimSpace(text))
	return t == "fc" || t == "photo" || strings.HasPrefix(t, "full")
}

// SetStitches takes the thousands of stitches of embroidery.
func (c *Counter) SetStitches(key, text string) {
	c.placement("stitches "+key, key, func(p *catalog.DraftPlacement) { p.Stitches = strings.TrimSpace(text) })
}

// SetMethod fixes the rate card of a row; empty: the engine chooses.
func (c *Counter) SetMethod(key, card string) {
	c.placement("", key, func(p *catalog.DraftPlacement) { p.Method = card })
}

// SetNoTurn forbids turning the artwork on a sheet, or allows it.
func (c *Counter) SetNoTurn(key string, yes bool) {
	c.placement("", key, func(p *catalog.DraftPlacement) { p.NoTurn = yes })
}

// SetOn says which garments a row goes on; nil: every garment.
func (c *Counter) SetOn(key string, garments []string) {
	c.placement("", key, func(p *catalog.DraftPlacement) { p.On = slices.Clone(garments) })
}

// SetVariant takes another size of the artwork for some garment sizes; one past the last adds a variant, and empty
// sizes with an empty measure remove it.
func (c *Counter) SetVariant(key string, i int, sizes, measure string) {
	c.placement("variant "+key, key, func(p *catalog.DraftPlacement) {
		w, h := splitInches(measure)
		v := catalog.DraftVariant{Sizes: sizes, Width: w, Height: h}
		if i >= len(p.Variants) {
			p.Variants = append(p.Variants, v)
			return
		}
		p.Variants[i] = v
	})
}

// RemoveVariant takes a variant off a row.
func (c *Counter) RemoveVariant(key string, i int) {
	c.placement("", key, func(p *catalog.DraftPlacement) {
		if i < len(p.Variants) {
			p.Variants = slices.Delete(p.Variants, i, i+1)
		}
	})
}

func (c *Counter) placement(path, key string, change func(p *catalog.DraftPlacement)) {
	c.edit(path, func(d *catalog.Draft) {
		if p := placementAt(d, key); p != nil {
			change(p)
		}
	})
}
