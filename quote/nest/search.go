package nest

// hunt is a search for a layout on a number of sheets of height h: it changes a
// sequence a little, and keeps what leaves no more area out.
type hunt struct {
	*trial
	h     int64
	count int // sheets
	dice  dice
	stop  func() bool
}

// from starts with a sequence, which it changes, and says whether all pieces
// were laid before the work was done.
func (u *hunt) from(seq []int32, work int) bool {
	spare := float64(u.count)*product(u.t.w, u.h).float() - u.t.area().float()
	end := u.work + work
	if u.run(seq, u.h, u.count, unlimited) == u.t.n {
		return true
	}
	if len(u.t.kinds) == 1 && !u.t.kinds[0].turn {
		return false
	}
	out := u.out()
	for poll := u.work + pollWork; u.work < end; {
		if u.work >= poll {
			if u.stopped() {
				return false
			}
			poll = u.work + pollWork
		}
		c := u.draw(seq)
		c.apply(seq)
		if u.run(seq, u.h, u.count, spare+out) == u.t.n {
			return true
		}
		if now := u.out(); u.lost <= spare+out && now <= out {
			out = now
		} else {
			c.apply(seq)
		}
	}
	return false
}

// change swaps two places of a sequence or, where they are one, turns the piece
// there; applied again it takes itself back.
type change struct{ i, j int }

func (u *hunt) draw(seq []int32) change {
	i := u.dice.below(len(seq))
	if u.dice.below(4) == 0 && u.t.kinds[seq[i]>>1].turn {
		return change{i, i}
	}
	j := u.dice.below(len(seq))
	for tries := 0; seq[i] == seq[j] && tries < 8; tries++ {
		j = u.dice.below(len(seq))
	}
	return change{i, j}
}

func (c change) apply(seq []int32) {
	if c.i == c.j {
		seq[c.i] ^= 1
		return
	}
	seq[c.i], seq[c.j] = seq[c.j], seq[c.i]
}

// pollWork is how much work goes by between two looks at Stop.
const pollWork = 1 << 18

func (u *hunt) stopped() bool { return u.stop != nil && u.stop() }

// workPerStep is how many candidates for a gap make a step.
const workPerStep = 16

// steps is the effort spent so far.
func (r *trial) steps() int { return r.work / workPerStep }

// sequence lists every copy, in an order of kinds. Its elements are a kind times
// two, plus one where the piece would rather lie turned.
func (t *task) sequence(order []int) []int32 {
	seq := make([]int32, 0, t.n)
	for _, k := range order {
		for range t.kinds[k].count {
			seq = append(seq, int32(k)<<1)
		}
	}
	return seq
}
