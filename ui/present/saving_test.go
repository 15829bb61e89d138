package present

import "testing"

// The job was priced before the quote had a number; what is printed after the first save must have it.
func TestSave_aNewQuotesPaperHasItsNumber(t *testing.T) {
	c, _, _ := counter(t, true)
	c.SetSize("g1", "M", "12")
	if err := c.Save(); err != nil {
		t.Fatal(err)
	}
	job, _, ok := c.Job()
	if !ok || job.Paper == nil || job.Paper.Number != "2026-0147" {
		t.Errorf("got paper %+v, priced %v, want number 2026-0147", job.Paper, ok)
	}
}
