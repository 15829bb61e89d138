package calendar_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote/calendar"
)

// week is a shop that works, takes goods in and presses so many minutes from Monday to Friday.
func week(minutes int) calendar.Press {
	var p calendar.Press
	for d := 1; d <= 5; d++ {
		p.Minutes[d], p.Receives[d] = minutes, true
	}
	return p
}

func at(t testing.TB, d string, clock calendar.Clock) calendar.Moment {
	return calendar.Moment{Day: day(t, d), Clock: clock}
}

// Worked by hand with a calendar of December 2026: 1 December is a Tuesday.
func TestSchedule_workedByHand(t *testing.T) {
	blanks := calendar.Source{Key: "northgate", CutOff: 14 * 60, Transit: 2}
	sheets := calendar.Source{Key: "sheets", CutOff: 12 * 60, Production: 3, Transit: 2}
	p := calendar.Schedule(calendar.Ask{
		Now: at(t, "2026-12-01", 13*60), Needed: day(t, "2026-12-18"), Minutes: 500, Press: week(300), Sources: []calendar.Source{blanks, sheets},
	})
	// Sheets after noon count on Wed 2, are made by Mon 7 and here on Wed 9; pressing Thu 10 and Fri 11.
	for _, c := range []struct{ what, got, want string }{
		{"blanks here", p.Orders[0].Arrives.String(), "2026-12-03"},
		{"sheets here", p.Orders[1].Arrives.String(), "2026-12-09"},
		{"taken in", p.TakeIn.String(), "2026-12-09"},
		{"pressing from", p.Start.String(), "2026-12-10"},
		{"ready", p.Ready.String(), "2026-12-11"},
		// Back: 500 minutes are Thu 17 and Fri 18, so taken in by Wed 16; blanks sent Mon 14; sheets sent Mon 14, ordered Wed 9.
		{"latest start", p.LatestStart.String(), "2026-12-17"},
		{"blanks by", p.Orders[0].By(), "Mon 14 Dec 14:00"},
		{"sheets by", p.Orders[1].By(), "Wed 9 Dec 12:00"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s, want %s", c.what, c.got, c.want)
		}
	}
	if !p.Kept || p.Orders[0].Late || p.Orders[1].Late {
		t.Errorf("the day is kept by a week, but kept = %v, late = %v, %v", p.Kept, p.Orders[0].Late, p.Orders[1].Late)
	}
	if want := "ordered Wed 2 Dec, 3 working days to make, 2 on the way: here Wed 9 Dec"; p.Orders[1].Basis != want {
		t.Errorf("basis %q, want %q", p.Orders[1].Basis, want)
	}
	if want := "goods taken in Wed 9 Dec; 8.3 h of pressing from Thu 10 Dec: ready Fri 11 Dec"; p.Basis != want {
		t.Errorf("basis %q, want %q", p.Basis, want)
	}
}

func TestSchedule_promisedHoursPushTheDayBack(t *testing.T) {
	press := week(300)
	press.Promised = map[calendar.Day]int{day(t, "2026-12-02"): 300, day(t, "2026-12-03"): 200}
	p := calendar.Schedule(calendar.Ask{
		Now: at(t, "2026-12-01", 0), Minutes: 150, Press: press, Sources: []calendar.Source{{Key: "stock", CutOff: calendar.EndOfDay}},
	})
	if got := p.Ready.String(); got != "2026-12-04" {
		t.Errorf("ready %s, want 2026-12-04: Wed is full, Thu takes 100 minutes, Fri the rest", got)
	}
	if !strings.Contains(p.Basis, "beside 8.3 h promised") {
		t.Errorf("basis %q does not tell of the 500 minutes promised", p.Basis)
	}
}

func TestSchedule_goodsTakenInOnTheReceivingDay(t *testing.T) {
	press := week(300)
	press.Receives = [7]bool{2: true} // Tuesdays
	p := calendar.Schedule(calendar.Ask{
		Now: at(t, "2026-12-01", 0), Needed: day(t, "2026-12-18"), Minutes: 60, Press: press,
		Sources: []calendar.Source{{Key: "northgate", CutOff: calendar.EndOfDay, Transit: 1}},
	})
	if p.TakeIn.String() != "2026-12-08" || p.Ready.String() != "2026-12-09" || p.Orders[0].Latest.String() != "2026-12-14" {
		t.Errorf("taken in %s, ready %s, order by %s; want Tue 8, Wed 9, Mon 14 December", p.TakeIn, p.Ready, p.Orders[0].Latest)
	}
}

func TestSchedule_whatIsSentOutGoesOnceTheRestIsHere(t *testing.T) {
	p := calendar.Schedule(calendar.Ask{
		Now: at(t, "2026-12-01", 0), Needed: day(t, "2026-12-18"), Press: week(300), Sources: []calendar.Source{
			{Key: "needle", CutOff: calendar.EndOfDay, Production: 3, Transit: 1, SentOut: true},
			{Key: "northgate", CutOff: calendar.EndOfDay, Transit: 2},
		},
	})
	// Blanks Thu 3; sent out Thu 3, there Fri 4, made Wed 9, back Thu 10; ready the working day after.
	// Back: ready Fri 18, back by Thu 17, sent out by Thu 10, blanks ordered by Tue 8.
	for _, c := range []struct{ what, got, want string }{
		{"back", p.Orders[0].Arrives.String(), "2026-12-10"},
		{"ready", p.Ready.String(), "2026-12-11"},
		{"send out by", p.Orders[0].By(), "Thu 10 Dec"},
		{"blanks by", p.Orders[1].By(), "Tue 8 Dec"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s, want %s", c.what, c.got, c.want)
		}
	}
}

func TestSchedule_sparedDaysAndTheCustomersOwnGoods(t *testing.T) {
	press := week(300)
	press.Spare = 2
	ask := calendar.Ask{Now: at(t, "2026-12-12", 0), Needed: day(t, "2026-12-20"), Minutes: 30, Press: press}
	p := calendar.Schedule(ask)
	if p.Ready.String() != "2026-12-14" || p.Due.String() != "2026-12-16" || !p.Kept || p.TakeIn != 0 {
		t.Errorf("ready %s, due %s, kept %v, taken in %q; want Mon 14, Wed 16 (Fri 18 less 2), true, nothing", p.Ready, p.Due, p.Kept, p.TakeIn)
	}
	ask.Needed = day(t, "2026-12-15")
	if p := calendar.Schedule(ask); p.Kept {
		t.Errorf("ready %s and due %s: want the day not kept", p.Ready, p.Due)
	}
}

func TestPress_promisesAsLateAsTheDaysAllow(t *testing.T) {
	press := week(300)
	monday := day(t, "2026-12-07")
	got := press.Promise(monday, []calendar.Booked{
		{Due: monday + 1, Minutes: 400}, {Due: monday + 3, Minutes: 300}, {Minutes: 350}, {Due: monday - 7, Minutes: 10}, {Due: monday, Minutes: -5},
	})
	want := map[calendar.Day]int{monday: 300, monday + 1: 300, monday + 2: 160, monday + 3: 300}
	for d := monday; d < monday+7; d++ {
		if got[d] != want[d] {
			t.Errorf("%s: %d minutes promised, want %d", d, got[d], want[d])
		}
	}
	press.Promised = got
	if w := press.Weeks(monday+2, 2); len(w) != 2 || w[0].Monday != monday || w[0].Promised != 1060 || w[0].Capacity != 1500 || w[1].Promised != 0 {
		t.Errorf("weeks %+v, want 1060 of 1500 minutes in the first, none in the second", w)
	}
}

// asks draws what a schedule is made from.
func asks(t *rapid.T) calendar.Ask {
	a := calendar.Ask{
		Now:     calendar.Moment{Day: days(t, "today"), Clock: calendar.Clock(rapid.IntRange(0, 1439).Draw(t, "clock"))},
		Minutes: rapid.IntRange(0, 2000).Draw(t, "minutes"),
		Press:   calendar.Press{Calendar: calendars(t), Spare: rapid.IntRange(0, 3).Draw(t, "spare"), Promised: map[calendar.Day]int{}},
	}
	for w := range 7 {
		a.Press.Minutes[w] = rapid.IntRange(0, 400).Draw(t, "capacity")
		a.Press.Receives[w] = rapid.Bool().Draw(t, "receives")
	}
	for range rapid.IntRange(0, 10).Draw(t, "busy") {
		a.Press.Promised[a.Now.Day+calendar.Day(rapid.IntRange(0, 30).Draw(t, "on"))] = rapid.IntRange(0, 400).Draw(t, "promised")
	}
	for range rapid.IntRange(0, 3).Draw(t, "sources") {
		a.Sources = append(a.Sources, calendar.Source{
			Calendar: calendars(t), CutOff: calendar.Clock(rapid.IntRange(0, 1440).Draw(t, "cut-off")),
			Production: rapid.IntRange(0, 8).Draw(t, "production"), Transit: rapid.IntRange(0, 5).Draw(t, "transit"),
			SentOut: rapid.Bool().Draw(t, "sent out"),
		})
	}
	a.Needed = a.Now.Day + calendar.Day(rapid.IntRange(0, 60).Draw(t, "needed"))
	return a
}

// A day that is kept is what orders in time come to, worked forward and back.
func TestSchedule_keptMeansNoOrderIsLate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := asks(t)
		p := calendar.Schedule(a)
		late := len(a.Sources) == 0 && p.LatestStart < p.Start
		for _, o := range p.Orders {
			late = late || o.Late
		}
		if p.Kept == late {
			t.Fatalf("ready %s, due %s, kept %v, but late orders: %v\n%+v", p.Ready, p.Due, p.Kept, late, p.Orders)
		}
	})
}

// Ordering on the latest day is in time, a working day later is not.
func TestSchedule_latestOrderIsTheLatest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := asks(t)
		s := calendar.Source{
			Calendar: calendars(t), CutOff: calendar.EndOfDay, Production: rapid.IntRange(0, 8).Draw(t, "production"),
			Transit: rapid.IntRange(0, 5).Draw(t, "transit"), SentOut: rapid.Bool().Draw(t, "sent out"),
		}
		latest := s.LatestOrder(a.Needed)
		if got := s.Arrives(calendar.Moment{Day: latest}); got > a.Needed {
			t.Fatalf("ordered on the latest day %s it arrives on %s, after %s", latest, got, a.Needed)
		}
		if got := s.Arrives(calendar.Moment{Day: s.Calendar.Add(latest, 1)}); got <= a.Needed {
			t.Fatalf("ordered a day later than %s it still arrives on %s, by %s", latest, got, a.Needed)
		}
	})
}

func TestSchedule_isMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := asks(t)
		ready := calendar.Schedule(a).Ready
		b := a
		b.Minutes += rapid.IntRange(0, 500).Draw(t, "more")
		if got := calendar.Schedule(b).Ready; got < ready {
			t.Fatalf("more minutes are ready on %s, before %s", got, ready)
		}
		c := a
		c.Now.Day++
		if got := calendar.Schedule(c).Ready; got < ready {
			t.Fatalf("ordered a day later it is ready on %s, before %s", got, ready)
		}
	})
}

// No day takes more than it has, and no minute is lost; what can be kept is kept: up to every day, as much is promised as
// is due and has room before it.
func TestPress_promisesEveryMinuteAndNoDayTooMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := asks(t).Press
		p.Promised = nil
		if p.Minutes[2]+p.Minutes[3]+p.Minutes[4] == 0 {
			p.Minutes[2] = 60
		}
		today := days(t, "today")
		var jobs []calendar.Booked
		all := 0
		for range rapid.IntRange(0, 12).Draw(t, "jobs") {
			j := calendar.Booked{Minutes: rapid.IntRange(0, 900).Draw(t, "minutes")}
			if rapid.Bool().Draw(t, "dated") {
				j.Due = today + calendar.Day(rapid.IntRange(-5, 40).Draw(t, "due"))
			}
			jobs, all = append(jobs, j), all+j.Minutes
		}
		promised, sum := p.Promise(today, jobs), 0
		for d, n := range promised {
			if n > p.Capacity(d) || d < today {
				t.Fatalf("%s takes %d of %d minutes; today is %s", d, n, p.Capacity(d), today)
			}
			sum += n
		}
		if sum != all {
			t.Fatalf("%d minutes promised, want all %d", sum, all)
		}
	})
}
