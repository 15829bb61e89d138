package catalog

import (
	"slices"
	"strconv"
	"strings"
)

// Season says what is different between the roster of one season and that of the one before.
type Season struct {
	New      []DraftPerson // who was not there
	Gone     []DraftPerson // who is not there any more, as they were
	Resized  []Change      // who has grown, or wants it wider
	Numbered []Change      // who has another number
	Free     []int         // numbers from 1 to 99 that nobody wears now
	Left     []int         // those of them that somebody wore who is gone
}

// Change is one person's size or number, before and now.
type Change struct {
	Who      string
	Was, Now string
}

// PastRoster is the roster of an earlier quote.
type PastRoster struct {
	Number string // of the quote
	Title  string
	On     string // 2006-01-02: quoted on
	People []DraftPerson
}

// Compare finds out who of a roster is new against the last one, who is gone, and whose size or number changed. People are
// known by their own name, or, where that is not given, by the name they wear; capitals and spaces make no difference, and
// several of one name are taken in their order.
func Compare(last, now []DraftPerson) Season {
	var s Season
	waiting := map[string][]DraftPerson{}
	for _, p := range last {
		waiting[knownBy(p)] = append(waiting[knownBy(p)], p)
	}
	for _, p := range now {
		key := knownBy(p)
		was := waiting[key]
		if len(was) == 0 || key == "" {
			s.New = append(s.New, p)
			continue
		}
		waiting[key] = was[1:]
		s.changes(was[0], p)
	}
	for _, p := range last {
		key := knownBy(p)
		if left := waiting[key]; len(left) > 0 && left[0] == p {
			waiting[key] = left[1:]
			s.Gone = append(s.Gone, p)
		}
	}
	s.numbers(now)
	return s
}

func (s *Season) changes(was, now DraftPerson) {
	if was.Size != now.Size {
		s.Resized = append(s.Resized, Change{Who(now), was.Size, now.Size})
	}
	if was.Number != now.Number {
		s.Numbered = append(s.Numbered, Change{Who(now), was.Number, now.Number})
	}
}

// numbers finds the free ones.
func (s *Season) numbers(now []DraftPerson) {
	worn := map[int]bool{}
	for _, p := range now {
		if n, err := strconv.Atoi(p.Number); err == nil {
			worn[n] = true
		}
	}
	for n := 1; n <= 99; n++ {
		if !worn[n] {
			s.Free = append(s.Free, n)
		}
	}
	for _, p := range s.Gone {
		if n, err := strconv.Atoi(p.Number); err == nil && slices.Contains(s.Free, n) && !slices.Contains(s.Left, n) {
			s.Left = append(s.Left, n)
		}
	}
	slices.Sort(s.Left)
}

// Who is a person in words: their own name, or the name they wear, or their number.
func Who(p DraftPerson) string {
	for _, s := range []string{p.Person, p.Name} {
		if s = strings.Join(strings.Fields(s), " "); s != "" {
			return s
		}
	}
	if p.Number != "" {
		return "number " + p.Number
	}
	return "somebody without a name"
}

// knownBy is what two lines of one person have in common.
func knownBy(p DraftPerson) string {
	text := p.Person
	if strings.TrimSpace(text) == "" {
		text = p.Name
	}
	return strings.ToLower(strings.Join(strings.Fields(text), " "))
}
