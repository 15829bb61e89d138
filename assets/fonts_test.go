package assets

import "testing"

func TestFallbacks_everyEmbeddedFileIsListed(t *testing.T) {
	files, err := fallback.ReadDir("fonts/fallback")
	if err != nil {
		t.Fatal(err)
	}
	got := Fallbacks()
	if len(got) != len(files) {
		t.Errorf("got %d fonts, want the %d files that are embedded", len(got), len(files))
	}
	for _, f := range got {
		if len(f.Data) < 10_000 {
			t.Errorf("%s: got %d bytes, want a font", f.Name, len(f.Data))
		}
	}
}
