package cells_test

import (
	"testing"

	"pressworth/quote/cells"
)

func TestHarmless_noFormulaRuns(t *testing.T) {
	for cell, want := range map[string]string{
		"": "", "Navy": "Navy", "=1+1": "'=1+1", "+1 555": "'+1 555", "+49 30": "'+49 30", "-12.50": "-12.50", "-cmd": "'-cmd", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", " =1": "' =1",
		"-4.35": "-4.35", "4.35": "4.35", "-4.35.1": "'-4.35.1", "＝1": "'＝1", "a=1": "a=1", "-": "'-", "-1-2": "'-1-2",
	} {
		if got := cells.Harmless(cell); got != want {
			t.Errorf("%q: got %q, want %q", cell, got, want)
		}
	}
}
