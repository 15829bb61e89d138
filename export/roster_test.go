package export

import (
	"fmt"
	"strings"
	"testing"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// team is the regatta with a name and a number on the navy long sleeves of some rowers.
func team(tb testing.TB) quote.Job {
	tb.Helper()
	job, _ := regatta(tb)
	number := func(s string) money.Number {
		n, err := money.ParseNumber(s)
		if err != nil {
			tb.Fatal(err)
		}
		return n
	}
	name := quote.Placement{ID: "name", Name: "Name", Width: number("11"), Height: number("2"), Inks: []string{"white"}, On: []string{"ls-navy"}, Personal: true, CharWidth: number("1.2")}
	digits := quote.Placement{ID: "number", Name: "Number", Width: number("10"), Height: number("8"), Inks: []string{"gold"}, On: []string{"ls-navy"}, Personal: true, CharWidth: number("5")}
	for _, p := range []struct{ size, name, number string }{
		{"L", "Halvorsen", "24"}, {"S", "Oyelaran-Whitcombe", "7"}, {"M", "Åse", "11"}, {"L", "Nuñez", "3"}, {"2XL", "Li", "1"}, {"M", "", "19"},
	} {
		if p.name != "" {
			name.Texts = append(name.Texts, quote.Text{Garment: "ls-navy", Size: p.size, Text: p.name})
		}
		digits.Texts = append(digits.Texts, quote.Text{Garment: "ls-navy", Size: p.size, Text: p.number})
	}
	job.Placements = append(job.Placements[1:], name, digits)
	return job
}

func TestRoster_pairsNamesWithNumbersInTheOrderOfTheList(t *testing.T) {
	var got []string
	for _, b := range roster(team(t)) {
		got = append(got, b.size+" "+b.words())
	}
	want := "L Halvorsen, 24|S Oyelaran-Whitcombe, 7|M Åse, 11|L Nuñez, 3|2XL Li, 1|M 19"
	if s := strings.Join(got, "|"); s != want {
		t.Errorf("got  %s\nwant %s", s, want)
	}
	got = nil
	for _, b := range bySize(team(t), roster(team(t))) {
		got = append(got, b.size+" "+b.words())
	}
	want = "S Oyelaran-Whitcombe, 7|M Åse, 11|M 19|L Halvorsen, 24|L Nuñez, 3|2XL Li, 1"
	if s := strings.Join(got, "|"); s != want {
		t.Errorf("in the order of pressing: got  %s\nwant %s", s, want)
	}
}

func TestRoster_aNumberWithoutANameStaysANumber(t *testing.T) {
	b := roster(team(t))[5]
	if b.words() != "19" || b.texts[0] != "" || b.texts[1] != "19" {
		t.Errorf("got %q after reading the words %q, want no name and the number 19", b.texts, b.words())
	}
}

func TestDocuments_everySpellingIsOnProofTicketAndBagList(t *testing.T) {
	job := team(t)
	result := resultOf(t, job)
	for name, lay := range map[string]func(*doc){
		"proof":    func(d *doc) { layProof(d, job, result, date) },
		"ticket":   func(d *doc) { layTicket(d, job, result, Approval{}, date) },
		"bag list": func(d *doc) { d.bags(job, roster(job), "packed") },
	} {
		text := words(job, lay)
		for _, b := range roster(job) {
			for _, x := range nonEmpty(b.texts...) {
				if !strings.Contains(text, `"`+x+`"`) {
					t.Errorf("%s: %q is not on it", name, x)
				}
			}
		}
	}
	files, err := Documents(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range files {
		names = append(names, f.Name)
	}
	for _, want := range []string{"bag-list-2026-0147.pdf", "labels-2026-0147.pdf"} {
		if !strings.Contains(strings.Join(names, " "), want) {
			t.Errorf("%s is missing among %v", want, names)
		}
	}
}

func TestLabels_everyLabelStaysOnItsLabel(t *testing.T) {
	job := team(t)
	for range 5 { // 96 labels: four sheets of thirty
		for k := range job.Placements {
			job.Placements[k].Texts = append(job.Placements[k].Texts, job.Placements[k].Texts...)
		}
	}
	var r paper.Record
	b := roster(job)[0]
	b.texts[0] = strings.Repeat("Wolfeschlegelsteinhausen ", 8)
	label(&r, job, b, 1, [4]float64{100, 200, 189, 72})
	for line := range strings.SplitSeq(strings.TrimSpace(r.String()), "\n") {
		var x, y float64
		if _, err := fmt.Sscanf(line, "text %f %f", &x, &y); err != nil {
			t.Fatal(err)
		}
		if x < 100 || x > 289 || y < 206 || y > 272 {
			t.Errorf("outside of its label: %s", line)
		}
	}
	if _, err := LabelsOn(LabelSheet{}, job, date); err == nil {
		t.Error("a sheet without labels gives no error")
	}
	if _, err := Labels(job, quote.Result{}, date); err != nil {
		t.Error(err)
	}
}

func TestReprint_hasTheSpoiledPiecesAndNoOthers(t *testing.T) {
	job, result := regatta(t)
	spoiled := []Spoiled{{Garment: "ls-navy", Size: "M", Qty: 2}, {Garment: "cap", Size: "OS"}, {Garment: "other", Size: "M", Qty: 3}}
	again, err := onlySpoiled(job, result, spoiled)
	if err != nil {
		t.Fatal(err)
	}
	text := words(job, func(d *doc) { d.counts(job, again); d.pressings(job, again) })
	if !strings.Contains(text, "Long-sleeve tee, navy") || strings.Contains(text, "cap") || strings.Contains(text, "spares") || !strings.Contains(text, "2 transfers") {
		t.Errorf("the ticket says %s", text)
	}
	if _, err := Pictured(nil).Reprint(job, result, nil, Approval{}, date); err == nil {
		t.Error("a reprint of nothing gives no error")
	}
	if _, err := Pictured(nil).Reprint(job, result, spoiled, Approval{}, date); err != nil {
		t.Error(err)
	}
}

func TestReceipt_saysWhatWasPaid(t *testing.T) {
	job, result := regatta(t)
	cents := func(n int64) money.Amount { return money.FromMinor(n, 2) }
	pdf, err := Pictured(nil).Receipt(job, result, Paid{Payments: []Payment{{"2026-11-26", "cash", cents(63069)}}, Together: cents(63069), Open: cents(63069)}, date)
	if err != nil || len(pdf) < 1000 {
		t.Errorf("got %d bytes, %v", len(pdf), err)
	}
}

func TestRoster_aNamelessPersonKeepsTheirNumberWhoeverComesBefore(t *testing.T) {
	job := team(t)
	paper := *job.Paper
	paper.Roster = []quote.Wearer{{Garment: "ls-navy", Size: "M", Person: "Ida"}, {Garment: "ls-navy", Size: "M", Person: "Åse H."}, {Garment: "ls-navy", Size: "L", Person: "Bo"}}
	job.Paper = &paper
	text := func(size, words string, row int) quote.Text {
		return quote.Text{Garment: "ls-navy", Size: size, Text: words, Row: row}
	}
	n := len(job.Placements)
	job.Placements[n-2].Texts = []quote.Text{text("M", "ÅSE", 2)}
	job.Placements[n-1].Texts = []quote.Text{text("M", "19", 1), text("M", "11", 2)}
	var got []string
	for _, b := range roster(job) {
		got = append(got, b.person+" "+b.size+" "+b.words())
	}
	if s, want := strings.Join(got, "|"), "Ida M 19|Åse H. M ÅSE, 11|Bo L "; s != want {
		t.Errorf("got %s, want %s", s, want)
	}
	sheet := words(job, func(d *doc) { d.bags(job, roster(job), "packed") })
	for _, want := range []string{`"for"`, `"Åse H."`, `"Bo"`} {
		if !strings.Contains(sheet, want) {
			t.Errorf("the bag list has no %s", want)
		}
	}
}

func TestProof_showsLongestAndShortestOnSmallestAndLargest(t *testing.T) {
	var got []string
	for _, v := range extremes(team(t)) {
		got = append(got, v.caption)
	}
	want := "Oyelaran-Whitcombe, 24 on Navy, back, size S, long-sleeve tee|Li, 24 on Navy, back, size S, long-sleeve tee|" +
		"Oyelaran-Whitcombe, 24 on Navy, back, size 2XL, long-sleeve tee|Li, 24 on Navy, back, size 2XL, long-sleeve tee"
	if s := strings.Join(got, "|"); s != want {
		t.Errorf("got  %s\nwant %s", s, want)
	}
}

func TestPurchases_digitsAreCountedOneByOneWithSpares(t *testing.T) {
	job := team(t)
	n := len(job.Placements)
	card := quote.RateCard{
		ID: "digits", Name: "Stock numerals", Supplier: job.RateCards[0].Supplier, Kind: quote.PieceCard, By: "character", MaxInks: 1,
		Prices: []quote.PieceRow{{Upto: money.Int(9), Each: []quote.Break{{From: 1, Each: money.FromMinor(80, 2)}}}},
	}
	job.RateCards = append(job.RateCards, card)
	job.Placements[n-1].Method = "digits"
	job.Shop.Spares.DigitPercent, job.Shop.Spares.DigitAtLeast = money.Int(10), 1
	result := resultOf(t, job)
	// 24, 7, 11, 3, 1, 19: four ones, and one each of 2, 3, 4, 7, 9; one spare of each
	text := words(job, func(d *doc) { d.transfersFrom(job, result, card.Supplier) })
	for _, want := range []string{"number, one by one with spares: 1 × 5,", "2 × 2, 3 × 2, 4 × 2, 7 × 2, 9 × 2"} {
		if !strings.Contains(text, want) {
			t.Errorf("want %s in\n%s", want, text)
		}
	}
	table, err := PurchasesCSV(job, result)
	if err != nil || !strings.Contains(string(table), `"Number, 1",,,5`) {
		t.Errorf("%v, got\n%s", err, table)
	}
}

// A spoiled piece of somebody's own is pressed again with its own name and number, and with no other's.
func TestReprint_aPersonsPieceHasTheirTexts(t *testing.T) {
	job := listed(team(t))
	result := resultOf(t, job)
	spoiled := []Spoiled{{Garment: "ls-navy", Size: "L", Qty: 1, Row: 4}}
	again, err := onlySpoiled(job, result, spoiled)
	if err != nil {
		t.Fatal(err)
	}
	own := ownPieces(job, spoiled)
	if len(own) != 1 || own[0].words() != roster(job)[3].words() || own[0].words() == "" {
		t.Fatalf("pressed again: %+v, want the fourth of the roster", own)
	}
	text := words(job, func(d *doc) {
		d.pressings(onlyTexts(job, spoiled), again)
		d.bags(job, own, "pressed")
	})
	if !strings.Contains(text, own[0].texts[0]) || strings.Contains(text, roster(job)[0].words()) || !strings.Contains(text, "1 text,") {
		t.Errorf("the ticket says %s", text)
	}
	if pdf, err := Pictured(nil).Reprint(job, result, spoiled, Approval{}, date); err != nil || len(pdf) < 1000 {
		t.Errorf("got %d bytes, %v", len(pdf), err)
	}
}

// listed is a team whose texts stand on the lines of a roster, in order.
func listed(job quote.Job) quote.Job {
	bags, paper := roster(job), *job.Paper
	for _, b := range bags {
		paper.Roster = append(paper.Roster, quote.Wearer{Garment: b.garment.ID, Size: b.size, Person: "Rower " + b.words()})
	}
	job.Paper = &paper
	for i, p := range job.Placements {
		for k, t := range p.Texts {
			for row, b := range bags {
				if b.size == t.Size && strings.Contains(b.words(), t.Text) {
					job.Placements[i].Texts[k].Row = row + 1
				}
			}
		}
	}
	return job
}
