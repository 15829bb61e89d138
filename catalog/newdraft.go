package catalog

import "strings"

// NewDraft is an empty job for the shop, with the extras it usually takes. The caller gives it its day.
func NewDraft(shop Shop) Draft {
	d := Draft{State: "draft"}
	for _, x := range shop.Extras {
		if x.Usual {
			d.Extras = append(d.Extras, TakeExtra(x))
		}
	}
	return d
}

// TakeExtra puts one of the shop's extras on a draft, as text that can be changed there.
func TakeExtra(x Extra) DraftExtra {
	return DraftExtra{
		Key: x.Key, Name: x.Extra.Name, PerOrder: x.Extra.PerOrder,
		Cost: x.Extra.Cost.String(), Seconds: x.Extra.Seconds.String(), Charge: x.Extra.Charge.String(),
		Taxable: x.Extra.Taxable,
	}
}

// TakePreset puts one of the shop's placement presets on a draft under a key of its own.
func TakePreset(p Preset, key string) DraftPlacement {
	return DraftPlacement{Key: key, Name: p.Name, Width: p.Width.String(), Height: p.Height.String(), Position: p.Position}
}

// Pieces is how many pieces the draft asks for, as far as its cells hold whole numbers.
func (d Draft) Pieces() int {
	var e entries
	sum := 0
	for _, g := range d.Garments {
		for _, s := range g.Sizes {
			sum += e.count("", strings.TrimSpace(s.Qty))
		}
	}
	return sum
}
