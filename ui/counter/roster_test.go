package counter

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
	"pressworth/ui/present"
)

func TestCounter_aPastedRosterDrivesSizesAndPrice(t *testing.T) {
	d := newDesk(t, -1, usual)
	parts.Focus(d.counter.form.garments.search.Field)
	d.typed("ls nav", fyne.KeyReturn)
	r := d.counter.form.roster
	r.begin()
	r.rows[0].fields[present.RosterGarment].Paste("7\tRIVERA\tM\n10\tO'NEILL\tL\n11\tLEE\tM\n")
	r.kinds[0].Tapped(nil)
	r.drive.Tapped(nil)
	if !d.p.Ready() || d.p.Draft().Pieces() != 3 {
		t.Fatalf("got %d pieces, not priced: %v", d.p.Draft().Pieces(), d.p.Problems())
	}
	if got := r.rows[0].fields[present.RosterGarment].Text(); got != "Long-sleeve tee, Navy" {
		t.Errorf("got %q in the cell that was pasted into", got)
	}
	if got := r.rows[1].fields[present.RosterName].Text(); got != "O'NEILL" {
		t.Errorf("got %q in the second row", got)
	}
	_, result, _ := d.p.Job()
	if len(result.Methods) != 1 || result.Methods[0].Needed != 3 {
		t.Errorf("got methods %+v, want three names and no spares", result.Methods)
	}
	parts.Focus(r.rows[0].fields[present.RosterNumber].Field)
	d.typed("10")
	if text := strings.Join(words(r.section), "\n"); !strings.Contains(text, "number 10 is given to two") {
		t.Errorf("the doubled number is not said:\n%s", text)
	}
}

func TestCounter_aLongRosterIsWalkedThroughByKeys(t *testing.T) {
	d := newDesk(t, 0, usual)
	r := d.counter.form.roster
	r.begin()
	var lines []string
	for i := range 60 {
		lines = append(lines, fmt.Sprintf("%d\tNAME%d\tM", i+1, i+1))
	}
	r.rows[0].fields[0].Paste(strings.Join(lines, "\n"))
	parts.Focus(r.rows[0].fields[present.RosterName].Field)
	for range 40 {
		d.press(fyne.KeyDown)
	}
	f, ok := d.focused().(*parts.Field)
	if !ok || f.Text() != "NAME41" {
		t.Errorf("got %v, want the 41st name", d.focused())
	}
}
