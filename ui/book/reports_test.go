package book_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/book/booktest"
)

// figures are invented finished jobs and sales, and what was done with them.
type figures struct {
	fails   error
	left    int    // decided quotes to be worked out
	watch   func() // called before any is
	altered string // what is wrong with one of them
	rates   quote.Shop
	tables  map[string][][]string
	figured map[string]string
}

func cents(units int64) money.Amount { return money.FromMinor(units, 2) }

func (f *figures) Times(context.Context) (catalog.Times, error) {
	return catalog.Times{Now: booktest.Day, Shop: catalog.DefaultShopCalendar(), Booked: []catalog.Booked{
		{QuoteID: 9, Number: "2026-0140", Customer: "Northshore Band", Title: "Hoodies", NeededBy: booktest.Day.AddDate(0, 0, 1).Format("2006-01-02"), Hours: money.Int(5)},
	}}, f.fails
}

func (f *figures) WorkOut(context.Context, int) (int, error) {
	if f.watch != nil {
		f.watch()
	}
	left := f.left
	f.left = max(f.left-200, 0)
	return left, f.fails
}

func (f *figures) Figured(_ context.Context, from, to string) ([]catalog.Figured, error) {
	all := []catalog.Figured{
		{Sale: catalog.Sale{Number: "2026-0101", Customer: "Harbour Rowing Club", Won: true, Decided: "2026-10-03", Subtotal: cents(100000), Cost: cents(60000), Lines: []catalog.SaleLine{
			{Methods: "Plastisol sheets", Category: "tee", Pieces: 40, Goods: cents(90000), Cost: cents(60000)},
		}}},
		{Sale: catalog.Sale{Number: "2026-0102", Customer: "=Café", Decided: "2026-10-09", Subtotal: cents(20000), Cost: cents(10000)}},
	}
	if from == "" {
		all = nil
		for range 5 {
			all = append(all, catalog.Figured{Done: &catalog.Done{
				Number: "2026-0101", Customer: "Harbour Rowing Club", Pieces: 100, Pressed: 100, PlannedSetUp: 20, PlannedPressing: 100, SetUp: 20, Pressing: 130, Handling: 30, Allowance: 12,
				Outturn: quote.Outturn{Planned: cents(4000), Left: cents(-1500), Time: cents(5500)},
			}})
		}
	}
	if f.altered != "" {
		all = append(all, catalog.Figured{Altered: f.altered})
	}
	return all, f.fails
}

func (f *figures) Rates(context.Context) (quote.Shop, error) { return f.rates, f.fails }

func (f *figures) TakeOver(_ context.Context, path string, n money.Number) error {
	f.figured[path] = n.String()
	return f.fails
}

func (f *figures) WriteTable(_ context.Context, name string, rows [][]string) (string, error) {
	f.tables[name] = rows
	return name + ".csv", f.fails
}

// openFigures is the Quote book with figures, and their tab pressed.
func openFigures(t *testing.T, tab string) (*desk, *figures) {
	t.Helper()
	f := &figures{tables: map[string][][]string{}, figured: map[string]string{}}
	f.rates.Handling, f.rates.AllowancePercent = money.Int(30), money.Int(12)
	d := open(t, func(d *desk) { d.place.Figures = f })
	d.press(tab)
	return d, f
}

func TestWeek_showsWhatIsPromised(t *testing.T) {
	d, _ := openFigures(t, "Week")
	d.want("1 job to be pressed, 5.0 hours", "5.0 of 30.0 h promised", "2026-0140 · Northshore Band · Hoodies", "5 h")
	d.press("Later")
	d.wantNot("Northshore Band")
	d.press("This week")
	d.want("Northshore Band")
}

func TestLearned_isTakenOverOnAClickOnly(t *testing.T) {
	d, f := openFigures(t, "Learned")
	d.want("5 jobs took 25 % longer than planned", "12 % → 40 %", "Jobs that lost money", "55.00")
	if len(f.figured) != 0 {
		t.Errorf("taken over before anything was pressed: %v", f.figured)
	}
	d.press("Take over")
	if f.figured["allowance_percent"] != "40" || len(f.figured) != 1 {
		t.Errorf("taken over %v, want an allowance of 40 and nothing else", f.figured)
	}
	d.press("Undo")
	if f.figured["allowance_percent"] != "12" {
		t.Errorf("taken back to %s, want 12", f.figured["allowance_percent"])
	}
	d.press("Save as CSV")
	if rows := f.tables["finished-jobs"]; len(rows) != 6 || rows[1][11] != "-15.00" {
		t.Errorf("table %v, want a title and five jobs that left −15.00", rows)
	}
}

func TestReports_areWrittenAsTables(t *testing.T) {
	d, f := openFigures(t, "Reports")
	d.want("Won and lost", "1 won, 1,000.00 · 1 lost, 200.00", "33.3 % of 900.00", "40.0 % of 1,000.00", "Hours promised")
	d.press("Save as CSV")
	if rows := f.tables["won-and-lost"]; len(rows) != 2 || rows[1][2] != "1000.00" || rows[1][4] != "200.00" {
		t.Errorf("table %v, want October with 1000.00 won and 200.00 lost", rows)
	}
	d.want("Written: won-and-lost.csv")
}

func TestReports_sayWhatCannotBeRead(t *testing.T) {
	d, f := openFigures(t, "Reports")
	f.fails = errors.New("the file is locked")
	for _, tab := range []string{"Week", "Learned", "Reports"} {
		d.press(tab)
		d.want("the file is locked")
	}
}

func TestReports_whatHasToBeWorkedOutFirstIsCounted(t *testing.T) {
	d, f := openFigures(t, "Quotes")
	said := ""
	f.left = 450
	f.watch = func() { said += d.says() }
	d.press("Reports")
	if !strings.Contains(said, "450 quotes to go") || !strings.Contains(said, "50 quotes to go") || !strings.Contains(said, "Stop") {
		t.Errorf("said on the way:\n%s", said)
	}
	d.want("Won and lost", "1 won, 1,000.00")
	d.wantNot("to go")
}

func TestReports_nameWhatTheyLeaveOut(t *testing.T) {
	d, f := openFigures(t, "Quotes")
	f.altered = "revision 2 of quote 2026-0107 does not match its SHA-256"
	for _, tab := range []string{"Reports", "Learned"} {
		d.press(tab)
		d.want("revision 2 of quote 2026-0107 does not match its SHA-256. It is left out here.")
	}
}
