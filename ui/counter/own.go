package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// ownFields describe a garment the customer brings.
type ownFields struct {
	box         *fyne.Container
	name, value *entry
	tags        *entry
	shade       *parts.Choice
	now         catalog.DraftGarment
}

func newOwnFields(p *present.Counter, key func() string) *ownFields {
	o := &ownFields{}
	send := func(change func(g *catalog.DraftGarment)) {
		g := o.now
		change(&g)
		p.SetOwn(key(), g)
	}
	o.name = newEntry(p, parts.NewField("what it is"), func(s string) { send(func(g *catalog.DraftGarment) { g.Name = s }) })
	o.value = newEntry(p, parts.NewNumber("0.00"), func(s string) { send(func(g *catalog.DraftGarment) { g.ValueEach = s }) })
	o.tags = newEntry(p, parts.NewField("polyester, coated"), func(s string) { send(func(g *catalog.DraftGarment) { g.Tags = s }) })
	o.shade = parts.NewChoice(parts.Words("light", "dark", "heather", "neon"), func(c parts.Option) {
		send(func(g *catalog.DraftGarment) { g.Shade = c.Key })
	})
	o.box = parts.TopRow(8, []parts.Track{parts.Share(2), parts.Share(1), parts.Share(1.6), parts.Share(1)},
		parts.NewCaptioned("The customer brings", o.name.Field), parts.NewCaptioned("Shade", o.shade),
		parts.NewCaptioned("Fabric, finish", o.tags.Field), parts.NewCaptioned("Worth, each", o.value.Field))
	return o
}

func (o *ownFields) show(g catalog.DraftGarment, anew bool) {
	o.now = g
	o.name.fill(g.Name, anew)
	o.value.fill(g.ValueEach, anew)
	o.tags.fill(g.Tags, anew)
	o.shade.SetKey(g.Shade)
}
