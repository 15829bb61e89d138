package present

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"

	"pressworth/catalog"
)

func TestRoster_drivesASizeRunThatIsNotTypedOtherwise(t *testing.T) {
	c, _, _ := counter(t, false)
	c.AddGarment(1, "Navy")
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"8", "LEE", "M"}, {"9", "ARI", "L"}})
	if m, l := qty(c, "g1", "M"), qty(c, "g1", "L"); m != "2" || l != "1" {
		t.Errorf("an empty size run: got M %q, L %q, want 2 and 1", m, l)
	}
	c.RemovePerson(0)
	if m := qty(c, "g1", "M"); m != "1" {
		t.Errorf("after one person went: got M %q, want 1", m)
	}
	c.SetSize("g1", "M", "5")
	c.SetRoster(2, RosterSize, "m")
	if m := qty(c, "g1", "M"); m != "5" {
		t.Errorf("typed otherwise: got M %q, want the 5 that was typed", m)
	}
	if d := c.View().Form.Roster.Differs; len(d) != 1 {
		t.Errorf("got %q, want the difference told", d)
	}
	c.Undo()
	c.Undo()
	c.Undo()
	if m := qty(c, "g1", "M"); m != "2" || len(c.Draft().Roster) != 3 {
		t.Errorf("undone: got M %q and %d people, want 2 and 3", m, len(c.Draft().Roster))
	}
}

func TestRoster_heightsAreThoseOfTheAgeGroup(t *testing.T) {
	c, _, _ := counter(t, false)
	c.FillSizes(c.AddOwnGarment("Tee"), "S", "YM3 M2")
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"8", "LEE", "YM"}})
	c.AddLetters(LettersName)
	c.AddLetters(LettersSleeve)
	var got []string
	for _, p := range c.Draft().Placements {
		got = append(got, fmt.Sprintf("%s %s×%s %v", p.Name, p.Width, p.Height, p.Texts))
	}
	want := "Name, adult 12×2 [{g1 M RIVERA 1}]|Name, youth 9×1.5 [{g1 YM LEE 2}]|" +
		"Sleeve number, adult 4×3 [{g1 M 7 1}]|Sleeve number, youth 3×2 [{g1 YM 8 2}]"
	if s := strings.Join(got, "|"); s != want {
		t.Errorf("got  %s\nwant %s", s, want)
	}
}

func TestRoster_badInputIsSaidWithItsRowAndNothingIsLost(t *testing.T) {
	c := team(t)
	long := strings.Repeat("A", 201)
	typed := [][]string{
		{"Garment", "Size", "Player", "Name", "Number", "E-mail"},
		{"cap", "M", "Ana", "RIVERA", "1", "a@x"},
		{"", "9XL", "Bo", "LEE", "2", ""},
		{"", "M", "Cy", "שלום", "3", ""},
		{"", "M", "Di", "王", "4", ""},
		{"", "M", "Ed", long, "5", ""},
		{"", "L", "Fi\u202e", "FI", "6", ""},
		{"", "L", "Gus", "G\x07US", "", ""},
	}
	said := c.PasteRoster(0, 0, typed)
	if want := "7 rows taken over: garment from column 1 (Garment), size from column 2 (Size), person from column 3 (Player), " +
		"name from column 4 (Name) and number from column 5 (Number). Not used: column 6 (E-mail)."; said != want {
		t.Errorf("got  %s\nwant %s", said, want)
	}
	want := []string{
		"which garment? It is none of this job", "which size?", "written from right to left", "the lettering has no “王”", "more people than pieces: the size run has 2 in M",
		"a character here cannot be printed", "more people than pieces: the size run has 1 in L",
	}
	rows := c.View().Form.Roster.Rows
	for i, w := range want {
		if got := rows[i].Problem(); !strings.HasPrefix(got, w) {
			t.Errorf("row %d: got %q, want %q", i+1, got, w)
		}
		if p := c.Draft().Roster[i]; p.Name != typed[i+1][3] || p.Person != typed[i+1][2] || p.Number != typed[i+1][4] {
			t.Errorf("row %d: got %+v, typed was %q", i+1, p, typed[i+1])
		}
	}
	if got := rows[4].Problems[RosterName]; !strings.HasPrefix(got, "too long") {
		t.Errorf("a name of 201 characters: got %q", got)
	}
	if got := rows[6].Problems[RosterName]; !strings.HasPrefix(got, "a character here cannot be printed") {
		t.Errorf("a name with a control character: got %q", got)
	}
	if c.Draft().Roster[0].Garment != "cap" || c.Draft().Roster[1].Size != "9XL" {
		t.Errorf("what was typed is lost: %+v", c.Draft().Roster[:2])
	}
	if n := len(c.View().Form.Roster.Mend); n != 7 {
		t.Errorf("got %d rows to mend, want 7", n)
	}
}

func TestRoster_smallLettersAmongCapitalsAreNamed(t *testing.T) {
	c := team(t)
	c.PasteRoster(0, 0, [][]string{{"7", "RIVERA", "M"}, {"8", "Zoë", "M"}, {"9", "ŁUĆ", "L"}})
	if got, want := strings.Join(c.View().Form.Roster.Remarks, "|"), "Not in capitals like the others: Zoë."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestReadRoster_takesOtherEncodings(t *testing.T) {
	text := "Size,Name,Number\r\nM,NUÑEZ,7\r\nL,ZOË,8\r\n"
	utf16le := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(text)) {
		utf16le = append(utf16le, byte(u), byte(u>>8))
	}
	var latin []byte
	for _, r := range text {
		latin = append(latin, byte(r))
	}
	for name, data := range map[string][]byte{
		"UTF-8": []byte(text), "UTF-8 with a mark": append([]byte("\xef\xbb\xbf"), text...), "UTF-16": utf16le, "Latin-1": latin,
	} {
		rows, err := ReadRoster(bytes.NewReader(data))
		if err != nil || len(rows) != 3 || rows[1][1] != "NUÑEZ" || rows[2][1] != "ZOË" {
			t.Errorf("%s: got %q, %v", name, rows, err)
		}
	}
}

func TestRoster_lastSeasonSaysWhoIsNewAndTakesTheOthersOver(t *testing.T) {
	c := team(t)
	last := catalog.PastRoster{Number: "2025-0099", People: []catalog.DraftPerson{
		{Garment: "g9", Size: "M", Person: "Ana Rivera", Name: "RIVERA", Number: "7"},
		{Garment: "g9", Size: "m", Person: "Jo Lee", Name: "LEE", Number: "12"},
	}}
	c.PasteRoster(0, 0, [][]string{{"Player", "Size", "Name", "No."}, {"Ana Rivera", "L", "RIVERA", "7"}, {"Zoë Ng", "M", "NG", "4"}})
	c.CompareWith(last)
	r := c.View().Form.Roster
	got := strings.Join(r.Season, "|")
	want := "New: Zoë Ng.|Size changed: Ana Rivera M → L.|Not on the list any more: Jo Lee.|Numbers free again: 12.|All free numbers: 1–3, 5–6 and 8–99."
	if got != want || r.SeasonOf != "quote 2025-0099" {
		t.Errorf("got  %s\nwant %s\nof %s", got, want, r.SeasonOf)
	}
	c.TakeLastRoster()
	if p := c.Draft().Roster[2]; p != (catalog.DraftPerson{Garment: "g1", Size: "M", Person: "Jo Lee", Name: "LEE", Number: "12"}) {
		t.Errorf("got %+v, want Jo Lee on this job's garment", p)
	}
	c.CompareNoMore()
	if r := c.View().Form.Roster; r.SeasonOf != "" || r.Season != nil {
		t.Errorf("got %+v after it was put away", r.Season)
	}
}

func BenchmarkRoster_importOf5000(b *testing.B) {
	var text strings.Builder
	text.WriteString("Player,Size,Name,Number\n")
	for i := range 5000 {
		fmt.Fprintf(&text, "Player %d,%s,NAME%d,%d\n", i, []string{"M", "L", "XL"}[i%3], i, i)
	}
	for b.Loop() {
		c := NewCounter(newFakeShop(), (&fakeEngine{}).engine())
		c.AddGarment(1, "Navy")
		c.AddLetters(LettersName)
		c.AddLetters(LettersNumber)
		rows, err := ReadRoster(strings.NewReader(text.String()))
		if err != nil {
			b.Fatal(err)
		}
		c.PasteRoster(0, 0, rows)
		if n := len(c.Draft().Roster); n != 5000 {
			b.Fatalf("%d people, want 5000", n)
		}
	}
}
