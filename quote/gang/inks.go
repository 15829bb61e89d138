package gang

// palette counts inks and designs over sets of items.
type palette struct {
	names [][]int // by item: the numbers of its named inks, each once
	own   []int   // by item: inks it shares only with its own placement
	place []int   // by item: the number of its placement
	seen  []int   // by name, then by placement: the last count that met it
	size  int     // how many different names there are
	count int     // counts made so far
}

func newPalette(items []Item) *palette {
	p := &palette{}
	byName, byPlace := map[string]int{}, map[int]int{}
	for _, it := range items {
		var ids []int
		mine := map[string]bool{}
		for _, name := range it.Inks {
			if !mine[name] {
				mine[name] = true
				ids = append(ids, number(byName, name))
			}
		}
		own := 0
		if len(it.Inks) == 0 {
			own = max(it.InkCount, 0)
		}
		p.names = append(p.names, ids)
		p.own = append(p.own, own)
		p.place = append(p.place, number(byPlace, it.Placement))
	}
	p.size = len(byName)
	p.seen = make([]int, len(byName)+len(byPlace))
	return p
}

// number gives each key its own number, in the order of asking.
func number[K comparable](of map[K]int, key K) int {
	n, ok := of[key]
	if !ok {
		n = len(of)
		of[key] = n
	}
	return n
}

// union counts the different inks and the different placements of some items.
// Sizes of one placement share its inks even where only their number is known.
func (p *palette) union(items []int) (inks, designs int) {
	p.count++
	for _, i := range items {
		for _, n := range p.names[i] {
			if p.seen[n] != p.count {
				p.seen[n] = p.count
				inks++
			}
		}
		if at := p.size + p.place[i]; p.seen[at] != p.count {
			p.seen[at] = p.count
			designs++
			inks = sum(inks, p.own[i])
		}
	}
	return inks, designs
}
