package nest

import "sort"

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
			sort.SliceStable(o, func(a, b int) bool { return key(t.kinds[o[a]]) > key(t.kinds[o[b]]) })
		}
		out = append(out, o)
	}
	return out
}
