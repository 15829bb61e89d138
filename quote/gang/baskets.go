package gang

import (
	"cmp"
	"container/heap"
	"slices"
)

// baskets comes upon the baskets that satisfy all rules of a cover, cheapest first, of equals those with fewer lengths:
// always the part of a basket that could become the cheapest is completed first.
type baskets struct {
	cover
	open    pending
	left    int     // parts that may still be looked at
	counts  []int   // room for baskets to come
	demands []int64 // and for what they leave open
}

// nodes is how many parts of baskets are looked at.
const nodes = 3000

// portion is a basket of which the lengths before j are chosen.
type portion struct {
	basket basket
	j      int
	count  int
	cost   Price
	least  Price   // of all baskets made from it
	rest   []int64 // by rule: demand left
}

type pending []*portion

func (q pending) Len() int      { return len(q) }
func (q pending) Swap(a, b int) { q[a], q[b] = q[b], q[a] }
func (q *pending) Push(x any)   { *q = append(*q, x.(*portion)) }
func (q *pending) Pop() any {
	last := len(*q) - 1
	x := (*q)[last]
	*q = (*q)[:last]
	return x
}

func (q pending) Less(a, b int) bool {
	x, y := q[a], q[b]
	return cmp.Or(
		cmp.Compare(x.least, y.least), cmp.Compare(x.count, y.count), cmp.Compare(y.j, x.j),
		slices.Compare(y.basket, x.basket),
	) < 0
}

func (c cover) baskets() *baskets {
	bs := &baskets{cover: c, left: nodes}
	bs.add(&portion{basket: make(basket, len(c.st.lengths)), rest: c.demands()})
	return bs
}

// add puts a portion where it belongs if it can become a basket at all.
func (bs *baskets) add(p *portion) {
	more := bs.more(p.rest, p.j)
	var ok bool
	if p.least, ok = plus(p.cost, more); ok && more < most {
		heap.Push(&bs.open, p)
	}
}

// next is the next basket with its cost. It is false when there are no more, or too many have been looked at.
func (bs *baskets) next() (basket, Price, bool) {
	for len(bs.open) > 0 && bs.left > 0 {
		bs.left--
		p := heap.Pop(&bs.open).(*portion)
		if p.j == len(bs.st.lengths) {
			return p.basket, p.cost, true
		}
		if cost, ok := plus(p.cost, bs.st.lengths[p.j].each); ok {
			bs.add(bs.taken(p, cost))
		}
		p.j++
		bs.add(p)
	}
	return nil, 0, false
}

// taken is p with one more of its length.
func (bs *baskets) taken(p *portion, cost Price) *portion {
	q := &portion{j: p.j, count: p.count + 1, cost: cost}
	many := min(nodes-bs.left, batch) // as many again as there were
	q.basket, bs.counts = copied(p.basket, bs.counts, many)
	q.rest, bs.demands = copied(p.rest, bs.demands, many)
	q.basket[q.j]++
	for i := range bs.rules {
		q.rest[i] -= bs.rules[i].holds[q.j]
	}
	return q
}

// batch is for how many copies room is made at once, at most.
const batch = 32

// copied is a copy of a list in room that was made for many, and the room that is left.
func copied[T int | int64](list, room []T, many int) (copied, left []T) {
	n := len(list)
	if len(room) < n {
		room = make([]T, many*n)
	}
	copy(room, list)
	return room[:n:n], room[n:]
}

// least is a cost that no basket still to come goes below.
func (bs *baskets) least() Price {
	if len(bs.open) == 0 {
		return most
	}
	return bs.open[0].least
}
