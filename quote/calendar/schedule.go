package calendar

import "fmt"

// Ask is what a schedule is made from.
type Ask struct {
	Now     Moment // when the goods would be ordered
	Needed  Day    // 0: no day was said
	Minutes int    // of pressing
	Press   Press
	Sources []Source // those that are sent out come one after the other, once the rest is here
}

// Plan is when a job can be ready, and what that asks for.
type Plan struct {
	Ready  Day    // the earliest
	TakeIn Day    // all goods are here, 0: nothing is waited for
	Start  Day    // pressing begins
	Basis  string // how the day came about, in words

	// Working back from the day needed; only where one was said.
	Due         Day  // last day to be ready on
	Kept        bool // Ready is not after Due; true where no day was said
	LatestStart Day  // of pressing
	Orders      []Order
}

// Order is when one source must be ordered, or sent out.
type Order struct {
	Source      Source
	Arrives     Day    // ordered now
	Basis       string // how that day came about
	Latest      Day    // last day to order, up to the cut-off; 0: no day was said
	LatestBasis string
	Late        bool // the last day has passed
}

// Schedule works forward to the earliest day a job can be ready on, and back from the day needed. Goods are pressed from
// the working day after they were taken in.
func Schedule(a Ask) Plan {
	p := Plan{Kept: true, Start: a.Press.Calendar.OnOrAfter(a.Now.Day)}
	p.forward(a)
	p.Ready = a.Press.Finish(p.Start, a.Minutes)
	p.Basis = p.basis(a)
	if a.Needed != 0 {
		p.back(a)
	}
	return p
}

// forward finds when the goods are here.
func (p *Plan) forward(a Ask) {
	p.Orders = make([]Order, len(a.Sources))
	arrived := Day(0)
	for i, s := range a.Sources {
		if s.SentOut {
			continue
		}
		at := s.Arrives(a.Now)
		p.Orders[i] = Order{Source: s, Arrives: at, Basis: fmt.Sprintf("ordered %s, %s: here %s",
			s.Calendar.Counts(a.Now, s.CutOff).Short(), s.takes(), at.Short())}
		arrived = max(arrived, at)
	}
	if arrived != 0 {
		p.takeIn(a.Press, arrived)
	}
	for i, s := range a.Sources {
		if !s.SentOut {
			continue
		}
		leaves := p.leaves(a)
		at := s.arrives(s.Calendar.OnOrAfter(leaves))
		p.Orders[i] = Order{Source: s, Arrives: at, Basis: fmt.Sprintf("sent out %s, %s: back %s", leaves.Short(), s.takes(), at.Short())}
		p.takeIn(a.Press, at)
	}
}

func (p *Plan) takeIn(press Press, arrive Day) {
	p.TakeIn = press.TakenIn(arrive)
	p.Start = press.Calendar.Add(p.TakeIn, 1)
}

// leaves is the day on which goods can be sent out: the one they were taken in on, or today where they are here.
func (p *Plan) leaves(a Ask) Day {
	if p.TakeIn != 0 {
		return p.TakeIn
	}
	return a.Press.Calendar.OnOrAfter(a.Now.Day)
}

// back works back from the day needed.
func (p *Plan) back(a Ask) {
	shop := a.Press.Calendar
	p.Due = shop.Subtract(shop.OnOrBefore(a.Needed), a.Press.Spare)
	p.Kept = p.Ready <= p.Due
	p.LatestStart = a.Press.LatestStart(p.Due, a.Minutes)
	by := a.Press.lastTakenIn(shop.Subtract(p.LatestStart, 1))
	earliest := shop.OnOrAfter(a.Now.Day)
	for i := len(a.Sources) - 1; i >= 0; i-- {
		if s := a.Sources[i]; s.SentOut {
			latest := shop.OnOrBefore(s.LatestOrder(by))
			p.Orders[i].latest(latest, fmt.Sprintf("to be back by %s, less %s", by.Short(), s.takes()))
			p.Orders[i].Late = latest < earliest
			by = a.Press.lastTakenIn(latest)
		}
	}
	for i, s := range a.Sources {
		if !s.SentOut {
			latest := s.LatestOrder(by)
			p.Orders[i].latest(latest, fmt.Sprintf("to be taken in by %s, less %s", by.Short(), s.takes()))
			p.Orders[i].Late = latest < s.Calendar.Counts(a.Now, s.CutOff)
		}
	}
}

func (o *Order) latest(d Day, basis string) { o.Latest, o.LatestBasis = d, basis }

// By writes the last day to order with its time, like "Mon 7 Dec 14:00".
func (o Order) By() string {
	if o.Latest == 0 {
		return ""
	}
	if at := o.Source.CutOff.String(); at != "" && !o.Source.SentOut {
		return o.Latest.Short() + " " + at
	}
	return o.Latest.Short()
}

func (p *Plan) basis(a Ask) string {
	text := "nothing to wait for"
	if p.TakeIn != 0 {
		text = "goods taken in " + p.TakeIn.Short()
	}
	if a.Minutes > 0 {
		text += fmt.Sprintf("; %s h of pressing from %s", hours(a.Minutes), p.Start.Short())
		if n := p.beside(a.Press); n > 0 {
			text += fmt.Sprintf(" beside %s h promised", hours(n))
		}
	}
	return text + ": ready " + p.Ready.Short()
}

// beside is what is promised on the days of pressing.
func (p *Plan) beside(press Press) (minutes int) {
	for d := p.Start; d <= p.Ready; d++ {
		minutes += press.Promised[d]
	}
	return minutes
}

// hours writes minutes as hours with one place, rounded half up.
func hours(minutes int) string {
	tenths := (minutes + 3) / 6
	return fmt.Sprintf("%d.%d", tenths/10, tenths%10)
}
