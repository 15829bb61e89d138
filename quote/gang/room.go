package gang

import "pressworth/quote/nest"

// Room is what a sheet of a run still has room for.
type Room struct {
	More   []int    // by Run.Items: further copies of it alone that go on every sheet, the rest moved aside if need be
	Best   int      // index into Run.Items of what fills the most area so; -1 where nothing goes on
	Placed []Placed // the layout with More[Best] copies added; nil where nothing goes on

	X, Y, W, H int64 // the largest rectangle free in the run's own layout, gap and edge kept; W 0 where none is
}

// Room looks for room left on the sheets of a run that this card's Plan returned.
func (s *Sheets) Room(run Run) Room {
	if run.Size < 0 || run.Size >= len(s.card.Sizes) {
		return Room{Best: -1}
	}
	return roomOn(sheetOf(s.card.Sizes[run.Size]), s.items, run)
}

// Room looks for room left on the lengths of a run that this card's Plan returned.
func (r *Roll) Room(run Run) Room {
	if run.Size < 0 || run.Size >= len(r.stock.card.Lengths) {
		return Room{Best: -1}
	}
	card := r.stock.card
	sheet := nest.Sheet{W: card.W, H: card.Lengths[run.Size].Length, Edge: card.Edge, Gap: card.Gap}
	return roomOn(sheet, r.items, run)
}

// roomEffort is how long the packer looks for room: the window shows it, nothing is priced by it.
const roomEffort = effort / 10

func roomOn(sheet nest.Sheet, items []Item, run Run) Room {
	room := Room{Best: -1, More: make([]int, len(run.Items))}
	ps := make([]nest.Piece, len(run.Items))
	at := map[int]int{}
	for k, i := range run.Items {
		if i < 0 || i >= len(items) || k >= len(run.Copies) {
			return Room{Best: -1}
		}
		ps[k] = nest.Piece{W: items[i].W, H: items[i].H, Turn: items[i].Turn, Count: run.Copies[k]}
		at[i] = k
	}
	placed := make([]nest.Placed, len(run.Placed))
	for j, p := range run.Placed {
		placed[j] = nest.Placed{Piece: at[p.Item], X: p.X, Y: p.Y, Turned: p.Turned}
	}
	if x, y, w, h, ok := nest.FreeRectangle(sheet, ps, placed); ok {
		room.X, room.Y, room.W, room.H = x, y, w, h
	}
	var most area
	for k := range ps {
		n, with := further(sheet, ps, k)
		room.More[k] = n
		if filled := product(ps[k].W, ps[k].H).times(n); most.less(filled) {
			most, room.Best, room.Placed = filled, k, nil
			for _, p := range with {
				room.Placed = append(room.Placed, Placed{Item: run.Items[p.Piece], X: p.X, Y: p.Y, Turned: p.Turned})
			}
		}
	}
	return room
}

// further is how many more copies of one piece go on a sheet beside the others, and a layout with them.
func further(sheet nest.Sheet, ps []nest.Piece, k int) (n int, with []nest.Placed) {
	fits := func(more int) bool {
		ask := append([]nest.Piece(nil), ps...)
		ask[k].Count += more
		placed, v := nest.Fit(sheet, ask, nest.Effort{Steps: roomEffort})
		if v == nest.Fits {
			with = placed
		}
		return v == nest.Fits
	}
	step := 1
	for ; fits(n + step); step *= 2 {
		n += step
	}
	for step /= 2; step > 0; step /= 2 {
		if fits(n + step) {
			n += step
		}
	}
	return n, with
}
