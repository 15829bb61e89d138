package nest

import (
	"cmp"
	"slices"
)

// orders are the orders of kinds the constructive methods try.
func (t *task) orders() [][]int {
	keys := []func(k kind) int64{
		nil, // by area, as they are
		func(k kind) int64 { return max(k.w, k.h) },
		func(k kind) int64 { return k.w },
		func(k kind) int64 { return k.h },
		func(k kind) int64 { return k.w + k.h },
	}
	var out [][]int
	for _, key := range keys {
		o := make([]int, len(t.kinds))
		for i := range o {
			o[i] = i
		}
		if key != nil {
			slices.SortStableFunc(o, func(a, b int) int { return cmp.Compare(key(t.kinds[b]), key(t.kinds[a])) })
		}
		out = append(out, o)
	}
	return out
}
