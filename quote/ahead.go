package quote

// ahead works out the quantities just above the job's own, which the search for cliffs asks for, on a goroutine and with
// a model of its own, while the ladder is worked out. What is worked out ahead is what would be worked out later: a
// hint changes nothing but speed.
type ahead struct {
	done  chan struct{}
	above map[int]*worked
}

// lookAhead begins; nil where nothing is to be looked for.
func (k *Memory) lookAhead(m *model) *ahead {
	if m.at(m.pieces).frozen != nil {
		return nil
	}
	if k.beside == nil {
		k.beside = newMemory(k.stop)
	}
	a := &ahead{done: make(chan struct{}), above: map[int]*worked{}}
	go func() {
		defer close(a.done)
		defer func() { // amounts that are too large are met on the other side again, and so is a stop
			if x := recover(); x != nil && x != any(tooLarge{}) && x != any(stopped{}) {
				panic(x)
			}
		}()
		other := newModel(m.job, k.beside)
		var hint []int
		for q := m.pieces + 1; q <= m.cliffsUpTo(); q++ {
			w := other.work(q, hint)
			if a.above[q] = w; w != nil {
				hint = w.choice
			}
		}
	}()
	return a
}

// at waits for what was worked out ahead; false where a quantity was not.
func (a *ahead) at(pieces int) (*worked, bool) {
	if a == nil {
		return nil, false
	}
	<-a.done
	w, ok := a.above[pieces]
	return w, ok
}

// wait waits for the end, before the memory is used again.
func (a *ahead) wait() {
	if a != nil {
		<-a.done
	}
}
