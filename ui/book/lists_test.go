package book_test

import (
	"context"
	"slices"
	"strconv"
	"testing"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
)

func TestToBuy_shortDeliveryIsCountedIn(t *testing.T) {
	d := open(t)
	d.openFirst("harb")
	d.acceptAtOnce()
	d.place.Escape()
	d.press("To buy")
	d.press("All ordered")
	d.press("Count in")
	d.enter("what was said about it", "two sent later")
	rows, err := d.PurchaseList(context.Background(), true)
	if err != nil {
		t.Fatal(err)
	}
	first := rows[0]
	d.field(first.Size + " of " + itoa(first.Ordered)).SetText(itoa(first.Ordered - 2))
	d.press("Take in")
	rows, err = d.PurchaseList(context.Background(), true)
	if err != nil {
		t.Fatal(err)
	}
	if r := rows[0]; r.Short != 2 || r.Received != first.Ordered-2 {
		t.Errorf("got %d here and %d short, want %d and 2", r.Received, r.Short, first.Ordered-2)
	}
	d.wantNot("2 short") // nothing of it is awaited any more
	d.press("what is done with too")
	d.want("2 short")
	d.place.Undo()
	d.wantNot("2 short")
}

func TestCustomers_areFoundEditedAndChecked(t *testing.T) {
	d := open(t)
	d.press("Customers")
	d.want("3 customers", "net 30 days")
	d.enter("Search by name, contact, e-mail or telephone", "amar")
	d.want("1 customer", "Café Amaryllis")
	d.enter("E-mail", "not an address")
	d.want("enter an e-mail address")
	d.enter("E-mail", "ada@amaryllis.example")
	d.wantNot("enter an e-mail address")
	d.press("pays no sales tax")
	d.want("enter the number of the exemption certificate")
	d.enter("Certificate", "TX-17")
	d.press("Save")
	d.want("Café Amaryllis saved.", "exempt")
	c, err := d.Customer(context.Background(), 2)
	if err != nil || c.Email != "ada@amaryllis.example" || !c.TaxExempt || c.Certificate != "TX-17" {
		t.Errorf("kept %+v, %v", c, err)
	}
	d.place.Undo()
	if c, err = d.Customer(context.Background(), 2); err != nil || c.TaxExempt {
		t.Errorf("after undo: %+v, %v", c, err)
	}
}

func TestCustomers_keptTwiceAreMadeOne(t *testing.T) {
	d := open(t)
	if _, err := d.SaveCustomer(context.Background(), catalog.Customer{Name: "Harbour R. C.", Email: "ines@harbour.example"}); err != nil {
		t.Fatal(err)
	}
	d.press("Customers")
	d.press("Look")
	d.want("same e-mail", "Harbour R. C.", "1 quote and no designs come over")
	d.press("Keep this one")
	d.want("Nobody is kept twice")
	d.press("Undo")
	d.want("They are customers of their own again.", "same e-mail")
	d.press("Keep this one")
	d.place.Escape()
	d.want("3 customers")
}

func TestCustomers_quotesOfOneOpen(t *testing.T) {
	d := open(t)
	d.press("Customers")
	d.press("2026-0001")
	d.want("Send the quote")
	d.place.Escape()
	d.want("3 customers")
}

func TestShelf_thingsAreKeptAndTakenOff(t *testing.T) {
	d := open(t)
	d.press("Shelf")
	d.want("Nothing on the shelf.")
	d.press("Put something on it")
	d.enter("Pieces", "4")
	d.enter("Style", "LS-240")
	d.press("Save")
	d.wantNot("4 × LS-240")
	d.enter("Size", "M")
	d.key(fyne.KeyTab)
	d.press("Save")
	d.want("4 × LS-240 on the shelf.", "1 thing")
	d.press("Take it off")
	d.want("LS-240 is off the shelf.")
	d.place.Undo()
	d.want("1 thing")
}

func TestShelf_isOfferedToTheNextQuoteThatCouldUseIt(t *testing.T) {
	d := open(t)
	if _, err := d.SaveShelfItem(context.Background(), catalog.ShelfItem{Kind: catalog.ShelfBlank, Style: "LS-240", Size: "M", Qty: 3}); err != nil {
		t.Fatal(err)
	}
	d.openFirst("harb")
	d.want("3 of LS-240 on the shelf", "can be used once the quote is accepted")
	d.acceptAtOnce()
	d.press("Use 3")
	d.want("3 taken from the shelf")
	d.wantNot("3 of LS-240 on the shelf")
	d.press("Undo")
	d.want("3 of LS-240 on the shelf", "is bought as before")
}

func itoa(n int) string { return strconv.Itoa(n) }

func TestBookkeeping_writesWhatIsBetweenTwoDays(t *testing.T) {
	d := open(t)
	d.press("Bookkeeping")
	d.enter("up to", "2026-11-30")
	d.press("Write CSV")
	d.want("on or after the first one")
	d.enter("up to", "2026-12-15")
	d.press("Write CSV")
	if !slices.Contains(d.Written, "bookkeeping 2026-12-01 2026-12-15") {
		t.Errorf("written %q", d.Written)
	}
	d.want("/papers/bookkeeping")
}
