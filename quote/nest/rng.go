package nest

// dice is a small generator (splitmix64, Steele, Lea & Flood 2014): the same
// seed throws the same everywhere.
type dice uint64

func (d *dice) next() uint64 {
	*d += 0x9e3779b97f4a7c15
	z := uint64(*d)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below is a number from 0 to n-1.
func (d *dice) below(n int) int { return int(d.next() % uint64(n)) }
