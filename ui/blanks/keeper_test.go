package blanks

import (
	"context"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote/money"
	"pressworth/ui/parts"
)

// keeper keeps what is edited.
type keeper struct {
	saved     []catalog.Style
	own       []catalog.Price // of the last one saved
	suppliers []catalog.Supplier
	fails     error
}

func (k *keeper) StyleAsListed(ctx context.Context, id int64) (catalog.Style, []catalog.Price, error) {
	s, err := stock(10).Style(ctx, id)
	s.SupplierID = 7
	return s, k.own, err
}

func (k *keeper) SaveListed(ctx context.Context, s catalog.Style, own []catalog.Price, person string) (catalog.Style, error) {
	kept, err := k.SaveStyle(ctx, s, person)
	if err == nil {
		k.own = own
	}
	return kept, err
}

func (k *keeper) SaveSupplier(_ context.Context, s catalog.Supplier) (catalog.Supplier, error) {
	if s.ID == 0 {
		s.ID = int64(len(k.suppliers) + 1)
		k.suppliers = append(k.suppliers, s)
	}
	for i := range k.suppliers {
		if k.suppliers[i].ID == s.ID {
			k.suppliers[i] = s
		}
	}
	return s, nil
}

func (k *keeper) SaveStyle(_ context.Context, s catalog.Style, _ string) (catalog.Style, error) {
	if k.fails != nil {
		return s, k.fails
	}
	k.saved = append(k.saved, s)
	return s, nil
}

func (k *keeper) Suppliers(context.Context) ([]catalog.Supplier, error) {
	return slices.Clone(k.suppliers), nil
}

func editing(t *testing.T) (*Place, *keeper) {
	t.Helper()
	k := &keeper{suppliers: []catalog.Supplier{{ID: 7, Key: "northgate", Name: "Northgate Blanks", SharePercent: money.Int(100)}}}
	p := New(stock(10), func() time.Time { return day })
	p.Keeper = k
	onScreen(t, p)
	key(p.search, fyne.KeyReturn)
	if p.editor == nil || !p.editor.object.Visible() {
		t.Fatal("Enter did not open the editor")
	}
	return p, k
}

func into(f *parts.Field, text string) {
	parts.Focus(f)
	test.Type(f, text)
}
