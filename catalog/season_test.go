package catalog

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"
)

func TestCompare_tellsWhoIsNewAndWhatChanged(t *testing.T) {
	last := []DraftPerson{
		{Person: "Ana Rivera", Size: "M", Name: "RIVERA", Number: "7"},
		{Person: "Jo Lee", Size: "L", Name: "LEE", Number: "12"},
		{Size: "S", Name: "KIM", Number: "3"},
		{Size: "S", Name: "KIM", Number: "4"},
	}
	now := []DraftPerson{
		{Person: "ana  rivera", Size: "L", Name: "RIVERA", Number: "7"},
		{Size: "S", Name: "Kim", Number: "9"},
		{Person: "Zoë Ng", Size: "M", Name: "NG", Number: "4"},
	}
	s := Compare(last, now)
	got := fmt.Sprintf("%d %s %d %s %s %v %v %v", len(s.New), s.New[0].Person, len(s.Gone), Who(s.Gone[0]), s.Gone[1].Number, s.Resized, s.Numbered, s.Left)
	if want := "1 Zoë Ng 2 Jo Lee 4 [{ana rivera M L}] [{Kim 3 9}] [12]"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if len(s.Free) != 96 || s.Free[0] != 1 {
		t.Errorf("got %d free numbers from %d, want 96 from 1: 4, 7 and 9 are worn", len(s.Free), s.Free[0])
	}
}

// Nobody is lost: everybody of the new list is new or was there, everybody of the old one is gone or still there.
func TestCompare_accountsForEverybody(t *testing.T) {
	people := rapid.SliceOf(rapid.Custom(func(t *rapid.T) DraftPerson {
		return DraftPerson{
			Person: rapid.SampledFrom([]string{"", "Ana", "ana", "Jo", "Kim"}).Draw(t, "person"),
			Name:   rapid.SampledFrom([]string{"", "LEE", "KIM"}).Draw(t, "name"),
			Size:   rapid.SampledFrom([]string{"S", "M"}).Draw(t, "size"), Number: rapid.SampledFrom([]string{"", "1", "2"}).Draw(t, "number"),
		}
	}))
	rapid.Check(t, func(t *rapid.T) {
		last, now := people.Draw(t, "last"), people.Draw(t, "now")
		s := Compare(last, now)
		if stayed := len(now) - len(s.New); stayed < 0 || stayed != len(last)-len(s.Gone) {
			t.Fatalf("%d of %d are new, %d of %d are gone", len(s.New), len(now), len(s.Gone), len(last))
		}
		if same := Compare(now, now); len(same.Resized)+len(same.Numbered) != 0 {
			t.Fatalf("against itself: %+v", same)
		}
	})
}
