package book

import (
	"context"
	"os"
	"strings"
	"testing"

	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// Open gives two quotes with small prints on the same sheet card.
func (s shelf) Open(context.Context) ([]Open, error) {
	data, err := os.ReadFile("../../testdata/jobs/regatta.job.json")
	if err != nil {
		return nil, err
	}
	job, err := jobfile.Decode(data)
	if err != nil {
		return nil, err
	}
	job.Placements = job.Placements[:1]
	job.Placements[0].Width, job.Placements[0].Height, job.Placements[0].Method = money.Int(4), money.Int(4), "sheets"
	return []Open{{"2026-0001", "Harbour Rowing Club", job}, {"2026-0002", "Café Amaryllis", job}}, s.fails
}

func TestShareSheets_saysWhatOpenQuotesWouldSave(t *testing.T) {
	p := open(t, shelf{})
	p.showSharing(true)
	if !p.shared.object.Visible() || p.detail.object.Visible() {
		t.Fatal("the sharing page does not stand in the place of the quote")
	}
	said := texts(p.shared.object)
	for _, want := range []string{"saves", "Plastisol sheets", "2026-0001", "2026-0002", "Café Amaryllis"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said in %q", want, said)
		}
	}
	p.selected(0)
	if p.shared.object.Visible() {
		t.Error("a marked quote does not come back")
	}
}

func TestShareSheets_aFaultIsSaid(t *testing.T) {
	p := open(t, shelf{fails: os.ErrClosed})
	p.showSharing(true)
	if !strings.Contains(p.shared.fault.Text(), "planned together") {
		t.Errorf("got the fault %q", p.shared.fault.Text())
	}
}
