package pricefile

import (
	"fmt"
	"strings"
	"testing"
)

func TestTable_givesTheRowsOfAListInAnyEncoding(t *testing.T) {
	// "José" in Windows-1252, divided by semicolons
	f, err := Open(strings.NewReader("Name;Size\nJos\xe9;M\nLee;L\n"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := f.Table(2)
	if got, want := fmt.Sprint(rows), "[[Name Size] [José M]]"; err != nil || got != want {
		t.Errorf("got %s, %v; want %s", got, err, want)
	}
}
