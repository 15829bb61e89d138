package gang_test

import (
	"testing"

	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

func TestRoom_moreCopiesGoOnTheSheet(t *testing.T) {
	card := gang.SheetCard{Sizes: []gang.SheetSize{{W: 10, H: 10, Minimum: 5, Prices: []gang.InkRow{
		{Inks: 1, Each: []gang.Break{{From: 1, Each: 50}}},
	}}}}
	items := []gang.Item{{W: 10, H: 4, InkCount: 1}}
	s := gang.NewSheets(card, items)
	plan, err := s.Plan([]int{0}, []int{5})
	if err != nil {
		t.Fatal(err)
	}
	room := s.Room(plan.Runs[0])
	if room.More[0] != 1 || room.Best != 0 || len(room.Placed) != 2 {
		t.Errorf("room %+v; want 1 more copy", room)
	}
	if room.W != 10 || room.H != 6 {
		t.Errorf("free rectangle %d x %d, want 10 x 6", room.W, room.H)
	}
}

func TestRoom_isAllThereIs(t *testing.T) {
	withRoom := 0
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 3)
		need := needs(t, items, 5)
		s := gang.NewSheets(card, items)
		plan, err := s.Plan(upto(len(items)), need)
		if err != nil {
			return
		}
		for _, run := range plan.Runs {
			room := s.Room(run)
			size := card.Sizes[run.Size]
			for k := range run.Items {
				in, copies := itemsOf(items, run)
				copies[k] += room.More[k]
				if !oracleFits(size, in, copies, 1) {
					t.Fatalf("%+v: %d more of item %d do not go on", run, room.More[k], run.Items[k])
				}
				copies[k]++
				if inAll(copies) <= 10 && oracleFits(size, in, copies, 1) { // beyond ten pieces the packer is not exact
					t.Fatalf("%+v: more than %d of item %d go on", run, room.More[k], run.Items[k])
				}
			}
			if room.Best < 0 {
				continue
			}
			withRoom++
			run.Placed = room.Placed
			run.Copies[room.Best] += room.More[room.Best]
			need := append([]int(nil), run.Copies...)
			for k := range need {
				need[k] *= run.Sheets
			}
			filled := gang.Plan{Runs: []gang.Run{run}, Cost: run.Cost()}
			if err := gang.CheckSheets(card, items, run.Items, need, filled); err != nil {
				t.Fatalf("the fuller layout: %v", err)
			}
		}
	})
	if withRoom == 0 {
		t.Error("no sheet had room in any case")
	}
}

func itemsOf(items []gang.Item, run gang.Run) (in []gang.Item, copies []int) {
	for k, i := range run.Items {
		in, copies = append(in, items[i]), append(copies, run.Copies[k])
	}
	return in, copies
}

func TestRoom_ofWhatIsNoRunIsNone(t *testing.T) {
	s := gang.NewSheets(gang.SheetCard{}, nil)
	r := gang.NewRoll(gang.RollCard{}, nil)
	for _, run := range []gang.Run{{}, {Size: -1}, {Size: 3}} {
		if room := s.Room(run); room.Best != -1 {
			t.Errorf("room %+v on a card without sizes", room)
		}
		if room := r.Room(run); room.Best != -1 {
			t.Errorf("room %+v on a roll without lengths", room)
		}
	}
}

func inAll(copies []int) (n int) {
	for _, c := range copies {
		n += c
	}
	return n
}
