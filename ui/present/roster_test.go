package present

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pressworth/catalog"
)

func team(t *testing.T) *Counter {
	t.Helper()
	c, _, _ := counter(t, false)
	c.FillSizes(c.AddGarment(1, "Navy"), "S", "M2 L1")
	c.AddLetters(LettersName)
	c.AddLetters(LettersNumber)
	return c
}

func TestRoster_pastedColumnsAreGuessedByTheirHead(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"Player", "Size", "Name on back", "No."}, {"Ana Rivera", "m", "RIVERA", "7"}, {"Jo Łukasz", "L", "ŁUKASZ", "10"}})
	want := []catalog.DraftPerson{
		{Garment: "g1", Size: "M", Person: "Ana Rivera", Name: "RIVERA", Number: "7"},
		{Garment: "g1", Size: "L", Person: "Jo Łukasz", Name: "ŁUKASZ", Number: "10"},
	}
	if got := c.Draft().Roster; fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

func TestRoster_pastedColumnsAreGuessedByWhatTheyHold(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"10", "O'NEILL", "L"}, {"", "DE VRIES", "M"}})
	var got []string
	for _, p := range c.Draft().Roster {
		got = append(got, p.Number+p.Size+p.Name)
	}
	if want := "7MRIVERA 10LO'NEILL MDE VRIES"; strings.Join(got, " ") != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestRoster_makesTheTextsOfItsPlacements(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"10", "", "L"}})
	p := c.Draft().Placements
	if got, want := fmt.Sprint(p[0].Texts, p[1].Texts), "[{g1 M RIVERA 1}] [{g1 M 7 1} {g1 L 10 2}]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	c.RemovePerson(0)
	if n := len(c.Draft().Placements[0].Texts); n != 0 {
		t.Errorf("%d names are left after their person went", n)
	}
	c.Undo()
	if n := len(c.Draft().Placements[0].Texts); n != 1 {
		t.Errorf("%d names after undo, want 1", n)
	}
}

func TestRoster_checksWhatWasTyped(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"7", "PAPADOPOULOS", "L"}, {"", "ZOË\u202e", "M"}, {"9", "ARI", "9XL"}})
	c.SetRoster(4, RosterGarment, "polo")
	r := c.View().Form.Roster
	for i, want := range []string{"number 7 is given to two", "number 7 is given to two", "a character here cannot be printed", "which size?", "which garment?"} {
		if got := r.Rows[i].Problem(); !strings.HasPrefix(got, want) {
			t.Errorf("row %d: got %q, want %q", i+1, got, want)
		}
	}
	if len(r.Remarks) != 1 || r.Remarks[0] != "Narrowed to fit 12 in: PAPADOPOULOS." {
		t.Errorf("got %v, want the name that is too long", r.Remarks)
	}
	if r.Summary != "5 people, 4 names, 3 numbers, 5 to mend" {
		t.Errorf("got %q", r.Summary)
	}
	if c.Draft().Roster[4].Garment != "polo" {
		t.Errorf("what was typed is lost: %+v", c.Draft().Roster[4])
	}
}

func TestRoster_saysWhereTheSizeRunDiffersAndCanDriveIt(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"8", "LEE", "M"}, {"9", "ARI", "XL"}})
	if got, want := strings.Join(c.View().Form.Roster.Differs, "; "), "Long-sleeve tee, Navy L: 1 in the size run, 0 on the roster; Long-sleeve tee, Navy XL: 0 in the size run, 1 on the roster"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	c.SizesFromRoster()
	if d := c.View().Form.Roster.Differs; len(d) != 0 || qty(c, "g1", "M") != "2" || qty(c, "g1", "L") != "" {
		t.Errorf("got %v, M %s, L %s", d, qty(c, "g1", "M"), qty(c, "g1", "L"))
	}
}

func TestRoster_sortingKeepsThePairs(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"1", "A", "2XL"}, {"2", "B", "S"}, {"3", "C", "M"}, {"4", "D", "S"}})
	c.SortRoster()
	var got []string
	for _, p := range c.Draft().Roster {
		got = append(got, p.Size+p.Name+p.Number)
	}
	if want := "SB2 SD4 MC3 2XLA1"; strings.Join(got, " ") != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestRoster_capitalsKeepAccents(t *testing.T) {
	c := team(t)
	c.SetRoster(0, RosterName, "Zoë Łuć")
	c.CapitalRoster()
	if got := c.Draft().Roster[0].Name; got != "ZOË ŁUĆ" {
		t.Errorf("got %s", got)
	}
}

func BenchmarkRoster_keystrokeOf500(b *testing.B) {
	shop := newFakeShop()
	c := NewCounter(shop, (&fakeEngine{}).engine())
	c.FillSizes(c.AddGarment(1, "Navy"), "S", "M250 L250")
	c.AddLetters(LettersName)
	var rows [][]string
	for i := range 500 {
		rows = append(rows, []string{fmt.Sprint(i % 99), fmt.Sprintf("PLAYER %c%d", 'A'+i%26, i), []string{"M", "L"}[i%2]})
	}
	c.PasteRoster(0, 0, rows)
	b.ResetTimer()
	start := time.Now()
	for i := range b.N {
		c.SetRoster(i%500, RosterName, fmt.Sprint("NAME ", i))
	}
	b.ReportMetric(float64(time.Since(start).Microseconds())/1000/float64(b.N), "ms/key")
}
