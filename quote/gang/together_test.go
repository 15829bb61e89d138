package gang_test

import (
	"testing"

	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

// jobsOf deals items out to jobs, whole placements at a time.
func jobsOf(t *rapid.T, items []gang.Item, need []int) [][]gang.Need {
	jobs := make([][]gang.Need, rapid.IntRange(1, 4).Draw(t, "jobs"))
	owner := map[int]int{}
	for i, it := range items {
		if _, known := owner[it.Placement]; !known {
			owner[it.Placement] = rapid.IntRange(0, len(jobs)-1).Draw(t, "job")
		}
		j := owner[it.Placement]
		jobs[j] = append(jobs[j], gang.Need{Item: i, Copies: need[i]})
	}
	return jobs
}

func TestTogether_nobodyPaysMoreThanAlone(t *testing.T) {
	shared := 0
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 9)
		need := needs(t, items, 12)
		jobs := jobsOf(t, items, need)
		s := gang.NewSheets(card, items)
		sh, err := s.Together(jobs)
		if err != nil {
			if _, ok := s.Cost(upto(len(items)), need); ok {
				t.Fatalf("%v on %+v: %v, though all can be printed", jobs, card, err)
			}
			return
		}
		var saves gang.Price
		seen := map[int]bool{}
		for _, g := range sh.Groups {
			shared++
			saves += checkShared(t, card, items, jobs, sh, g)
			for _, j := range g.Jobs {
				if seen[j] {
					t.Fatalf("job %d is in two groups: %+v", j, sh)
				}
				seen[j] = true
			}
		}
		if saves != sh.Saves {
			t.Fatalf("saves %d, the groups %d", sh.Saves, saves)
		}
		for k, p := range sh.Pairs {
			if p.Saves <= 0 || k > 0 && p.Saves > sh.Pairs[k-1].Saves {
				t.Fatalf("pairs %+v", sh.Pairs)
			}
		}
	})
	if shared == 0 {
		t.Error("no jobs shared a sheet in any case")
	}
}

// checkShared holds a group against its jobs and returns what it saves.
func checkShared(t *rapid.T, card gang.SheetCard, items []gang.Item, jobs [][]gang.Need, sh gang.Sharing, g gang.Shared) gang.Price {
	t.Helper()
	need := make([]int, len(items))
	var alone, parts gang.Price
	for k, j := range g.Jobs {
		alone, parts = alone+sh.Alone[j], parts+g.Parts[k]
		if g.Parts[k] > sh.Alone[j] || g.Parts[k] < 0 {
			t.Fatalf("job %d pays %d, alone %d", j, g.Parts[k], sh.Alone[j])
		}
		for _, n := range jobs[j] {
			need[n.Item] = n.Copies
		}
	}
	if err := gang.CheckSheets(card, items, upto(len(items)), need, g.Plan); err != nil {
		t.Fatalf("jobs %v: %v", g.Jobs, err)
	}
	if parts != g.Plan.Cost || alone-g.Plan.Cost != g.Saves || g.Saves <= 0 || len(g.Jobs) < 2 {
		t.Fatalf("parts %d of %d, alone %d, saves %d, jobs %v", parts, g.Plan.Cost, alone, g.Saves, g.Jobs)
	}
	return g.Saves
}

func TestTogether_twoHalfEmptySheetsBecomeOne(t *testing.T) {
	card := gang.SheetCard{SetupPerInk: 100, Sizes: []gang.SheetSize{{W: 10, H: 10, Minimum: 10, Prices: []gang.InkRow{
		{Inks: 2, Each: []gang.Break{{From: 10, Each: 50}}},
	}}}}
	items := []gang.Item{
		{Placement: 0, W: 10, H: 5, Inks: []string{"white"}},
		{Placement: 1, W: 10, H: 4, Inks: []string{"white"}},
		{Placement: 2, W: 10, H: 10, Inks: []string{"red", "blue"}},
	}
	sh, err := gang.NewSheets(card, items).Together([][]gang.Need{{{Item: 0, Copies: 10}}, {{Item: 2, Copies: 10}}, {{Item: 1, Copies: 10}}})
	if err != nil {
		t.Fatal(err)
	}
	// Alone 10 sheets at 50 and 100 for each ink; the white ones together the same once.
	if len(sh.Groups) != 1 || sh.Saves != 600 || sh.Groups[0].Parts[0] != 300 || sh.Groups[0].Parts[1] != 300 {
		t.Errorf("sharing %+v; want jobs 0 and 2 to pay 300 each of 600", sh)
	}
	if len(sh.Pairs) != 1 || sh.Pairs[0] != (gang.Pair{A: 0, B: 2, Saves: 600}) {
		t.Errorf("pairs %+v; want jobs 0 and 2 to save 600", sh.Pairs)
	}
}

func TestTogether_refusesWhatIsNotAJob(t *testing.T) {
	card := gang.SheetCard{Sizes: []gang.SheetSize{{W: 4, H: 4, Prices: []gang.InkRow{{Inks: 1, Each: []gang.Break{{From: 1, Each: 5}}}}}}}
	s := gang.NewSheets(card, []gang.Item{{W: 2, H: 2}, {Placement: 1, W: 5, H: 5}})
	for name, jobs := range map[string][][]gang.Need{
		"an item in two jobs":     {{{Item: 0, Copies: 1}}, {{Item: 0, Copies: 1}}},
		"an item twice in a job":  {{{Item: 0, Copies: 1}, {Item: 0, Copies: 1}}},
		"no such item":            {{{Item: 7, Copies: 1}}},
		"an item too large to go": {{{Item: 1, Copies: 1}}},
	} {
		if sh, err := s.Together(jobs); err == nil {
			t.Errorf("%s: no error, %+v", name, sh)
		}
	}
}
