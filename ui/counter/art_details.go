package counter

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// artDetails is what is seldom needed of a row of artwork: which lines it goes on, other sizes for some garments,
// stitches, turning, a copy, taking it away. It is shown below one row at a time.
type artDetails struct {
	box       *fyne.Container
	lines     *fyne.Container // a chip for every garment line
	chips     []*parts.Chip
	stitches  *entry
	stitchBox *parts.Captioned
	charWide  *entry
	charge    *entry
	byDigit   *parts.Chip // the charge is for each character
	taxed     *parts.Chip
	lettering *fyne.Container // for names and numbers
	variant   *parts.Button
	turn      *parts.Chip
	variants  []*variantRow
	list      *fyne.Container
	picture   *artPicture
	art       *artwork
	key       string
	row       present.ArtRow
	options   []present.Option
}

// variantRow is another size of the artwork for some garment sizes.
type variantRow struct {
	box         *fyne.Container
	sizes, size *entry
}

func newArtDetails(a *artwork) *artDetails {
	d := &artDetails{art: a, lines: parts.Flow(6), list: parts.Column(4), picture: newArtPicture(a.presenter)}
	p := a.presenter
	d.stitches = newEntry(p, parts.NewNumber("6.5"), func(text string) { p.SetStitches(d.key, text) })
	d.stitchBox = parts.NewCaptioned("Stitches, thousands", d.stitches.Field)
	d.turn = parts.NewWordChip("may be turned on the sheet", func() { p.SetNoTurn(d.key, !d.row.NoTurn) })
	d.addLettering(p)
	d.variant = parts.NewSmallButton(parts.Quiet, "+ size for youth or wide", d.addVariant)
	buttons := container.NewHBox(
		d.variant,
		parts.NewSmallButton(parts.Quiet, "Copy this row", func() { p.DuplicatePlacement(d.key) }),
		parts.NewSmallButton(parts.Quiet, "Take it away", d.remove),
	)
	inner := parts.Column(8, d.picture.box, d.lettering, d.lines, parts.Row(10, []parts.Track{parts.Fixed(140), parts.Fit()}, d.stitchBox, d.turn), d.list, buttons)
	d.box = container.NewStack(parts.NewGround(look.Fill), parts.Inset(12, 10, inner))
	d.box.Hide()
	return d
}

// addLettering makes the fields of a row whose texts come from the roster.
func (d *artDetails) addLettering(p *present.Counter) {
	send := func(string) { p.SetLettering(d.key, d.charWide.Text(), d.charge.Text()) }
	d.charWide = newEntry(p, parts.NewNumber("1.8"), send)
	d.charge = newEntry(p, parts.NewNumber("in the price"), send)
	d.byDigit = parts.NewWordChip("for each character", func() { p.ChargeByCharacter(d.key, !d.row.ByDigit) })
	d.taxed = parts.NewWordChip("taxed", func() { p.ChargeTaxed(d.key, d.row.Untaxed) })
	d.lettering = parts.Row(10, []parts.Track{parts.Fixed(140), parts.Fixed(140), parts.Fit(), parts.Fit()},
		parts.NewCaptioned("A character's width, in", d.charWide.Field), parts.NewCaptioned("Charged for each text", d.charge.Field),
		d.byDigit, d.taxed)
}

func (d *artDetails) remove() {
	key := d.key
	d.key = ""
	d.art.reach()
	d.art.presenter.RemovePlacement(key)
}

// addVariant offers the sizes that mostly need one first.
func (d *artDetails) addVariant() {
	d.art.presenter.SetVariant(d.key, len(d.row.Variants), "YS YM YL", d.row.Inches)
	if n := len(d.row.Variants); n > 0 && n <= len(d.variants) {
		parts.Focus(d.variants[n-1].size.Field)
	}
}

func (d *artDetails) show(v *present.View, anew bool) {
	i := slices.IndexFunc(v.Form.Artwork, func(r present.ArtRow) bool { return r.Key == d.key })
	visible(d.box, i >= 0)
	if i < 0 {
		d.key = ""
		return
	}
	d.row = v.Form.Artwork[i]
	d.picture.show(d.key, d.row.Picture)
	letters := d.row.Letters != ""
	visible(d.picture.box, !letters)
	visible(d.lettering, letters)
	visible(d.variant, !letters)
	d.charWide.fill(d.row.CharWidth, anew)
	d.charge.fill(d.row.ChargeEach, anew)
	d.byDigit.SetChosen(d.row.ByDigit)
	d.taxed.SetChosen(!d.row.Untaxed)
	d.showLines()
	d.stitches.fill(d.row.Stitches, anew)
	visible(d.stitchBox, d.row.NeedStitch && d.row.Letters == "")
	d.turn.SetChosen(!d.row.NoTurn)
	for len(d.variants) < len(d.row.Variants) {
		d.addRow(len(d.variants))
	}
	for k, r := range d.variants {
		visible(r.box, k < len(d.row.Variants))
		if k < len(d.row.Variants) {
			r.sizes.fill(d.row.Variants[k].Sizes, anew)
			r.size.fill(d.row.Variants[k].Width+" × "+d.row.Variants[k].Height, anew)
		}
	}
}

func (d *artDetails) addRow(k int) {
	p := d.art.presenter
	r := &variantRow{}
	send := func(sizes, measure string) { p.SetVariant(d.key, k, sizes, measure) }
	r.sizes = newEntry(p, parts.NewField("YS YM YL"), func(s string) { send(s, r.size.Text()) })
	r.size = newEntry(p, parts.NewField("8.5 × 7"), func(s string) { send(r.sizes.Text(), s) })
	take := parts.NewButton(parts.Link, "×", "", func() { p.RemoveVariant(d.key, k) })
	r.box = parts.Row(8, []parts.Track{parts.Fit(), parts.Fixed(150), parts.Fit(), parts.Fixed(110), parts.Fit()},
		parts.NewText("On sizes", parts.MutedStyle), r.sizes.Field, parts.NewText("it is", parts.MutedStyle), r.size.Field, take)
	d.variants = append(d.variants, r)
	d.list.Add(r.box)
}

// showLines has a chip for every garment line; pressing it puts the artwork on that line or takes it off.
func (d *artDetails) showLines() {
	d.options = d.art.presenter.GarmentOptions()
	for len(d.chips) < len(d.options) {
		i := len(d.chips)
		c := parts.NewWordChip("", func() { d.toggle(i) })
		d.chips = append(d.chips, c)
		d.lines.Add(c)
	}
	for i, c := range d.chips {
		visible(c, i < len(d.options))
		if i < len(d.options) {
			c.Set(d.options[i].Name, "")
			c.SetChosen(d.row.OnKeys == nil || slices.Contains(d.row.OnKeys, d.options[i].Key))
		}
	}
}

func (d *artDetails) toggle(i int) {
	keys := []string{}
	for k, o := range d.options {
		on := d.row.OnKeys == nil || slices.Contains(d.row.OnKeys, o.Key)
		if on != (k == i) {
			keys = append(keys, o.Key)
		}
	}
	if len(keys) == len(d.options) {
		keys = nil
	}
	d.art.presenter.SetOn(d.key, keys)
}
