package counter

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// roster is the table of names and numbers. Only the rows in sight exist, so that a list of any length is as quick as a
// short one.
type roster struct {
	section   *parts.Section
	table     *fyne.Container
	words     *rosterWords
	rows      []*rosterRow
	more      *parts.Button   // opens the section; stands in the artwork section
	kinds     []*parts.Button // one to print each kind of names and numbers
	drive     *parts.Button
	mend      *parts.Button
	notes     *parts.Paragraph
	said      *parts.Paragraph // what became of a list from a file
	season    *season
	view      present.Roster
	first     int // row at the top
	mended    int // row that was gone to last
	open      bool
	presenter *present.Counter
	changed   func()
}

// rosterRow is one row in sight.
type rosterRow struct {
	fields [present.RosterColumns]*entry
	take   *parts.Button
}

// rosterSight is how many rows are in sight at most.
const rosterSight = 10

var (
	rosterHeads  = [present.RosterColumns]string{"garment", "size", "person", "name, as printed", "number"}
	rosterShares = [present.RosterColumns]float32{2.2, 0.7, 1.8, 1.8, 0.8}
)

func newRoster(p *present.Counter) *roster {
	r := &roster{presenter: p, words: &rosterWords{}}
	r.words.roster = r
	r.words.SetUp(r.words, func() fyne.Size { return fyne.NewSize(px(300), px(20)) }, r.words.draw)
	r.table = container.New(rosterLayout{r}, r.words)
	for i := range rosterSight {
		r.rows = append(r.rows, r.newRow(i))
	}
	r.more = parts.NewButton(parts.Link, "+ names and numbers", "", func() { r.begin() })
	buttons := parts.Flow(8)
	for _, kind := range present.Letterings() {
		b := parts.NewSmallButton(parts.Quiet, "+ "+kind, func() { p.AddLetters(kind) })
		r.kinds = append(r.kinds, b)
		buttons.Add(b)
	}
	r.drive = parts.NewSmallButton(parts.Quiet, "Take the size run from here", p.SizesFromRoster)
	r.mend = parts.NewSmallButton(parts.Quiet, "Go to the next to mend", r.nextToMend)
	r.notes = parts.NewParagraph("", parts.CaptionStyle)
	r.said = parts.NewParagraph("", parts.CaptionStyle)
	r.season = newSeason(r)
	for _, b := range []*parts.Button{
		r.drive, r.mend, parts.NewSmallButton(parts.Quiet, "List from a file…", func() { r.ask(r.take) }),
		parts.NewSmallButton(parts.Quiet, "By size", p.SortRoster), parts.NewSmallButton(parts.Quiet, "CAPITALS", p.CapitalRoster), r.season.open,
	} {
		buttons.Add(b)
	}
	r.section = parts.NewSection("Names and numbers", "paste a list from a spreadsheet into the first cell",
		newWheel(r.table, r.scroll), r.notes, r.said, buttons, r.season.box)
	r.section.Hide()
	return r
}

// begin opens the section for a list that is to be typed or pasted.
func (r *roster) begin() {
	r.open = true
	r.fill(true)
	visible(r.section, true)
	visible(r.more, false)
	r.changed()
	parts.Focus(r.rows[0].fields[present.RosterSize].Field)
}

func (r *roster) newRow(i int) *rosterRow {
	row := &rosterRow{}
	for k := range row.fields {
		f := parts.NewField("")
		if k == present.RosterNumber {
			f = parts.NewNumber("")
		}
		row.fields[k] = newEntry(r.presenter, f, func(text string) { r.presenter.SetRoster(r.first+i, k, text) })
		f.OnPaste = func(text string) bool { return r.paste(i, k, text) }
		f.OnKey = func(e *fyne.KeyEvent) bool { return r.key(i, k, e) }
		r.table.Add(f)
	}
	row.take = parts.NewButton(parts.Link, "×", "", func() { r.presenter.RemovePerson(r.first + i) })
	r.table.Add(row.take)
	return row
}

// paste takes cells of a spreadsheet; a single word goes where it is pasted.
func (r *roster) paste(i, k int, text string) bool {
	if !strings.ContainsAny(text, "\t\n") {
		return false
	}
	var block [][]string
	for _, line := range strings.Split(strings.Trim(strings.ReplaceAll(text, "\r\n", "\n"), "\n"), "\n") {
		block = append(block, strings.Split(line, "\t"))
	}
	r.say(r.presenter.PasteRoster(r.first+i, k, block))
	r.fill(true) // the cell that was pasted into as well
	return true
}

// key walks through the table: Up, Down and Enter keep the column, the pages jump.
func (r *roster) key(i, k int, e *fyne.KeyEvent) bool {
	by := map[fyne.KeyName]int{
		fyne.KeyUp: -1, fyne.KeyDown: 1, fyne.KeyReturn: 1, fyne.KeyEnter: 1,
		fyne.KeyPageUp: 1 - rosterSight, fyne.KeyPageDown: rosterSight - 1,
	}[e.Name]
	if by == 0 {
		return false
	}
	to := min(max(r.first+i+by, 0), len(r.view.Rows))
	r.reveal(to)
	parts.Focus(r.rows[to-r.first].fields[k].Field)
	return true
}

func (r *roster) reveal(row int) {
	switch {
	case row < r.first:
		r.scrollTo(row)
	case row >= r.first+rosterSight:
		r.scrollTo(row - rosterSight + 1)
	}
}

func (r *roster) scroll(by int) { r.scrollTo(r.first + by) }

func (r *roster) scrollTo(first int) {
	first = min(max(first, 0), max(len(r.view.Rows)+1-rosterSight, 0))
	if first != r.first {
		r.first = first
		r.fill(true)
	}
}

// inSight is how many rows are shown: those there are, and an empty one to type into.
func (r *roster) inSight() int { return min(len(r.view.Rows)+1-r.first, rosterSight) }

func (r *roster) show(v *present.View, anew bool) {
	r.view = v.Form.Roster
	used := len(r.view.Rows) > 0 || r.view.HasNames || r.view.HasNumbers
	visible(r.section, used || r.open)
	visible(r.more, !used && !r.open && len(v.Form.Blocks) > 0)
	if !used && !r.open {
		return
	}
	r.section.Hint.SetText(firstOf(r.view.Summary, "paste a list from a spreadsheet into the first cell"))
	for i, kind := range present.Letterings() {
		visible(r.kinds[i], slices.Contains(r.view.Missing, kind))
	}
	visible(r.drive, len(r.view.Differs) > 0)
	visible(r.mend, len(r.view.Mend) > 0 && len(r.view.Rows) > rosterSight)
	r.season.show(r.view)
	r.first = min(r.first, max(len(r.view.Rows)+1-rosterSight, 0))
	r.fill(anew)
	remarks := append([]string{}, r.view.Remarks...)
	for i, d := range r.view.Differs {
		if i == 3 {
			remarks = append(remarks, fmt.Sprintf("… and %d more", len(r.view.Differs)-i))
			break
		}
		remarks = append(remarks, d)
	}
	r.notes.SetText(strings.Join(remarks, "\n"))
	visible(r.notes, len(remarks) > 0)
	visible(r.said, r.said.Text() != "")
}

// fill brings the rows in sight to the list.
func (r *roster) fill(anew bool) {
	n := r.inSight()
	for i, row := range r.rows {
		at := r.first + i
		for k, f := range row.fields {
			visible(f.Field, i < n)
			text, wrong := "", false
			if at < len(r.view.Rows) {
				text, wrong = r.view.Rows[at].Cells[k], r.view.Rows[at].Problems[k] != ""
			}
			f.fill(text, anew)
			f.SetWrong(wrong)
		}
		visible(row.take, at < len(r.view.Rows))
	}
	r.words.Redraw()
	relay(r.table)
}

// nextToMend goes to the next row with a problem, after the one in which the typist is, or the first.
func (r *roster) nextToMend() {
	if len(r.view.Mend) == 0 {
		return
	}
	to := r.view.Mend[0]
	for _, row := range r.view.Mend {
		if row > r.mended {
			to = row
			break
		}
	}
	r.mended = to
	r.reveal(to)
	for k, said := range r.view.Rows[to].Problems {
		if said != "" {
			parts.Focus(r.rows[to-r.first].fields[k].Field)
			return
		}
	}
}

// say tells what became of a list.
func (r *roster) say(text string) {
	r.said.SetText(text)
	visible(r.said, text != "")
	r.changed()
}

// ask opens the file chooser for a list, and hands its rows on.
func (r *roster) ask(then func(name string, rows [][]string)) {
	w := windowOf(r.table)
	if w == nil {
		return
	}
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err == nil && f != nil {
			r.read(f, then)
		}
	}, w)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".csv", ".tsv", ".txt", ".xlsx"}))
	d.Show()
}

// read takes a list from a file, off the window's goroutine.
func (r *roster) read(f fyne.URIReadCloser, then func(name string, rows [][]string)) {
	parts.Background(func() func() {
		defer f.Close()
		rows, err := present.ReadRoster(f)
		return func() {
			if err != nil {
				r.say("The list could not be read: " + err.Error())
				return
			}
			then(f.URI().Name(), rows)
		}
	})
}

// take puts the rows of a list below those that are there.
func (r *roster) take(_ string, rows [][]string) {
	r.say(r.presenter.PasteRoster(len(r.view.Rows), 0, rows))
}
