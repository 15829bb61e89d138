package pricefile

import (
	"strings"
	"testing"

	"pressworth/catalog"
)

// taken reads a list as it is guessed.
func taken(t *testing.T, text string) (rows []catalog.PriceRow, refused []catalog.Refused) {
	t.Helper()
	f, err := Open(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	err = f.Rows(f.Guess(), func(r catalog.PriceRow) error {
		rows = append(rows, r)
		return nil
	}, func(r catalog.Refused) { refused = append(refused, r) })
	if err != nil {
		t.Fatal(err)
	}
	return rows, refused
}

// A decimal comma in a list divided by commas makes two cells of a price: 4 must not be taken for 4,35.
func TestRows_aDividedPriceIsRefusedNotCut(t *testing.T) {
	rows, refused := taken(t, "Style,Colour,Size,Price\nA-1,Navy,M,4,35\nA-1,Navy,L,4.35\nA-1,Navy,XL,5.35,\n")
	if len(rows) != 2 || len(refused) != 1 || refused[0].Line != 2 || refused[0].Field != "row" {
		t.Errorf("got rows %+v, refused %+v; want line 2 refused, empty cells passed over", rows, refused)
	}
}

func TestRows_aNameOverTwoLinesIsOne(t *testing.T) {
	rows, _ := taken(t, "Style,Name,Size,Price\nA-1,\"Crew tee,\n  heavy\",M,4.35\n")
	if len(rows) != 1 || rows[0].Name != "Crew tee, heavy" {
		t.Errorf("got %+v, want the name in one line", rows)
	}
}
