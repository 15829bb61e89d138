package quote_test

import (
	"reflect"
	"testing"

	"pressworth/quote"
)

func TestFirst_isTheWholeResultWithoutCliffsAndRoom(t *testing.T) {
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
		for i := range whole.Plans {
			for j := range whole.Plans[i].Runs {
				if first.Plans[i].Runs[j].Room != nil {
					t.Errorf("%s: the first result has looked for room on run %d of plan %d", name, j, i)
				}
				first.Plans[i].Runs[j].Room = whole.Plans[i].Runs[j].Room
			}
		}
		if !reflect.DeepEqual(first, whole) {
			t.Errorf("%s: first differs from the whole result in more than cliffs and room", name)
		}
	}
}
