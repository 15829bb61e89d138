package counter

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// form is the job form.
type form struct {
	scroll     *container.Scroll
	column     *fyne.Container
	head       *head
	garments   *garments
	artwork    *artwork
	roster     *roster
	extras     *extras
	generation int
	height     float32
}

func newForm(p *present.Counter) *form {
	f := &form{head: newHead(p), garments: newGarments(p), artwork: newArtwork(p), roster: newRoster(p), extras: newExtras(p)}
	f.head.next = f.garments.reach
	f.garments.next = f.artwork.reach
	f.artwork.next = f.extras.reach
	f.artwork.changed = f.fit
	f.garments.changed = f.fit
	f.extras.changed = f.fit
	f.roster.changed = f.fit
	f.artwork.section.Right.Add(f.roster.more)
	f.column = parts.Column(look.SectionApart, f.head.box, f.garments.section, f.artwork.section, f.roster.section, f.extras.section)
	f.scroll = parts.NewScroll(parts.Inset(look.PageMargin, 18, f.column))
	return f
}

// show brings the form to a view. It never writes into a field that is being typed into, unless the whole draft is
// another.
func (f *form) show(v present.View) {
	anew := v.Generation != f.generation
	f.generation = v.Generation
	f.head.show(&v, anew)
	f.garments.show(&v, anew)
	f.artwork.show(&v, anew)
	f.roster.show(&v, anew)
	f.extras.show(&v, anew)
	f.fit()
}

// fit lays the form out anew where its height has changed.
func (f *form) fit() {
	if h := f.column.MinSize().Height; h != f.height {
		f.height = h
		fitScroll(f.scroll, f.column)
	}
}
