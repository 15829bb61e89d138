package shop

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// build makes the page once, and the words that lead to its sections.
func (p *Place) build() fyne.CanvasObject {
	p.logo = newLogo(p)
	sections := []*parts.Section{
		parts.NewSection("Time", "what an hour of pressing costs", parts.Fields(128, p.fields(timeFields)...), p.table(handlingTable, 150, 96)),
		parts.NewSection("Overhead and press", "what goes on whether anything is pressed or not",
			parts.Fields(150, p.fields(overheadFields)...), p.table(equipment, 150, 96)),
		parts.NewSection("Spares", "bought against misprints", parts.Fields(100, p.fields(spareFields)...)),
		p.levels.section(),
		p.levels.taxSection(),
		parts.NewSection("Extras", "charges and costs beside garments and artwork; yes or empty in the last three", p.table(extras, 150, 78)),
		parts.NewSection("Placements", "usual sizes, common practice", p.table(presets, 150, 100)),
		parts.NewSection("Quotes", "", parts.Fields(220, p.fields(quoteFields)...)),
	}
	names := []string{"Time", "Overhead", "Spares", "Price levels", "Tax", "Extras", "Placements", "Quotes"}
	if p.Settings != nil {
		sections[7].Body.Add(parts.Fields(150, p.fields(numberingFields)...))
		letter := parts.NewSection("E-mail", "what a quote is sent with", parts.Column(8, p.fields(letterFields)...), parts.NewParagraph(letterHint, parts.MutedStyle))
		sections = append(sections, letter, p.calendarSection(), p.letteringSection())
		names = append(names, "E-mail", "Calendar", "Names and numbers")
	}
	sections = append(sections, p.letterheadSection())
	names = append(names, "Letterhead")
	if p.PIN != nil {
		sections = append(sections, p.pinSection())
		names = append(names, "PIN")
	}
	p.body.Objects = []fyne.CanvasObject{p.fault, p.form.Rest()}
	for _, s := range sections {
		p.body.Add(s)
	}
	p.body.Add(p.fileSection())
	return p.jumps(names, sections)
}

// fileSection says where everything lies, and leads to its copies.
func (p *Place) fileSection() *parts.Section {
	s := parts.NewSection("Shop file", "everything is kept in this one file", parts.NewText(p.path, parts.MutedStyle.Shortened()))
	if p.Backups != nil {
		s.Right.Add(parts.NewSmallButton(parts.Quiet, "Backups", p.Backups))
	}
	return s
}

// jumps are words that lead to the sections.
func (p *Place) jumps(names []string, sections []*parts.Section) fyne.CanvasObject {
	line := parts.Flow(6)
	for i, s := range sections {
		line.Add(parts.NewWordChip(names[i], func() { p.scroll.ScrollToOffset(fyne.NewPos(0, s.Position().Y)) }))
	}
	return line
}

func (p *Place) calendarSection() *parts.Section {
	hours := parts.Fields(72, p.fields(hourFields())...)
	return parts.NewSection("Calendar", "hours of pressing on each day of the week", hours,
		p.ticks("goods are taken in on", receivingTicks()), p.ticks("", holidayTicks),
		parts.Fields(220, p.form.Text(calendarFields[0].path, calendarFields[0].caption, "24 dec, 2026-12-28..2027-01-01, 4 thu nov +1"),
			p.form.Number(calendarFields[1].path, calendarFields[1].caption, "days")))
}

func (p *Place) letteringSection() *parts.Section {
	return parts.NewSection("Names and numbers", "heights for youth and adult: common practice", p.table(lettering, 150, 100),
		parts.Fields(150, p.fields(letteringFields)...))
}

func (p *Place) letterheadSection() *parts.Section {
	s := parts.NewSection("Letterhead", "printed on every paper", parts.Fields(220, p.fields(letterhead)...))
	if p.Settings != nil {
		s.Body.Add(p.logo.object)
		s.Body.Add(parts.Row(8, []parts.Track{parts.Fixed(150)}, p.form.Choice("units.temperature", "Temperatures in", temperatures)))
	}
	return s
}

func (p *Place) fields(all []bound) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, b := range all {
		if b.words {
			out = append(out, p.form.Text(b.path, b.caption, ""))
			continue
		}
		out = append(out, p.form.Number(b.path, b.caption, b.unit))
	}
	return out
}

// ticks are boxes in a line, with what they say together before them.
func (p *Place) ticks(before string, all []ticked) fyne.CanvasObject {
	line := parts.Flow(16)
	if before != "" {
		line.Add(parts.Inset(0, 3, parts.NewText(before, parts.MutedStyle)))
	}
	for _, t := range all {
		line.Add(p.form.Check(t.path, t.words))
	}
	return p.form.Around(form.Parent(all[0].path), "", line)
}
