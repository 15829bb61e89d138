package quote_test

import (
	"reflect"
	"testing"

	"pressworth/quote"
)

func TestFirst_isTheWholeResultWithoutCliffs(t *testing.T) {
	for name, job := range map[string]quote.Job{"demo": demoJob(t), "six by six": sixBySix(t)} {
		k := quote.NewMemory()
		first, err := k.First(job)
		if err != nil {
			t.Fatal(name, err)
		}
		whole, err := k.Price(job)
		if err != nil {
			t.Fatal(name, err)
		}
		if len(first.Cliffs) != 0 {
			t.Errorf("%s: got cliffs %v, want none", name, first.Cliffs)
		}
		first.Cliffs = whole.Cliffs
		if !reflect.DeepEqual(first, whole) {
			t.Errorf("%s: first differs from the whole result in more than cliffs", name)
		}
	}
}
