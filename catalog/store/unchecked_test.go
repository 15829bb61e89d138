package store_test

import (
	"path/filepath"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// An import looks at its rows itself; what it leaves must stand the check of a whole file, and the next change is checked
// again.
func TestApply_checksAreBackAfterwards(t *testing.T) {
	s := emptyShop(t)
	list := filepath.Join(t.TempDir(), "list.csv")
	writeList(t, list, shapes["styles_in_10_colours_and_5_sizes"], 0)
	importFile(t, s, list, "2026-05-04")
	if _, err := s.SaveSupplier(ctx, catalog.Supplier{Key: "", Name: "nobody"}); err == nil {
		t.Error("a supplier without a key was taken: constraints are not looked at any more")
	}
	if _, err := s.SaveStyle(ctx, catalog.Style{SupplierID: 4711, Number: "X-1", Name: "nobody's"}, ""); err == nil {
		t.Error("a style of a supplier that is not there was taken: references are not looked at any more")
	}
	if found, err := store.Check(ctx, s.Path()); err != nil || len(found.Problems) > 0 {
		t.Errorf("the whole file: got %v, %v, want no problem", found.Problems, err)
	}
}
