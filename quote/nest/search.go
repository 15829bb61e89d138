package nest

// hunt is a search for a layout on a number of sheets of height h, by swapping
// two pieces of a sequence and keeping what leaves no more area out.
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
	now := u.out()
	poll := u.work + pollWork
	for u.work < end {
		if u.work >= poll {
			if u.stopped() {
				return false
			}
			poll = u.work + pollWork
		}
		i, j := u.dice.below(len(seq)), u.dice.below(len(seq))
		flip := u.dice.below(4) == 0 && u.t.kinds[seq[i]>>1].turn
		if flip {
			j = i
			seq[i] ^= 1
		} else {
			for tries := 0; seq[i] == seq[j] && tries < 8; tries++ {
				j = u.dice.below(len(seq))
			}
			seq[i], seq[j] = seq[j], seq[i]
		}
		if u.run(seq, u.h, u.count, spare+now) == u.t.n {
			return true
		}
		if c := u.out(); u.lost <= spare+now && c <= now {
			now = c
		} else {
			if flip {
				seq[i] ^= 1
			} else {
				seq[i], seq[j] = seq[j], seq[i]
			}
		}
	}
	return false
}

// pollWork is how much work goes by between two looks at Stop.
const pollWork = 1 << 18

func (u *hunt) stopped() bool { return u.stop != nil && u.stop() }

// workPerStep is how many candidates for a gap make a step.
const workPerStep = 16

// steps is the effort spent so far.
func (r *trial) steps() int { return r.work / workPerStep }

// sequence lists every copy, in an order of kinds.
func (t *task) sequence(order []int) []int32 {
	seq := make([]int32, 0, t.n)
	for _, k := range order {
		for range t.kinds[k].count {
			seq = append(seq, int32(k)<<1)
		}
	}
	return seq
}
