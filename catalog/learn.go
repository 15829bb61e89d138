package catalog

import (
	"fmt"
	"math"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Done is a finished job as the shop learns from it: what was planned beside what it took. Minutes are of the shop's
// people, allowance included.
type Done struct {
	Number, Customer, Title string `json:"-"`
	On                      string // 2006-01-02: finished
	Pieces                  int    // sold
	Pressed                 int    // with spares
	PlannedSetUp            float64
	PlannedPressing         float64
	SetUp, Pressing         float64
	Handling                float64 // seconds a piece that the plan had
	Allowance               float64 // percent that the plan had
	Spoiled                 int
	Outturn                 quote.Outturn
}

// DoneOf reads a finished job from what it was accepted as and what it took.
func DoneOf(q QuoteRow, job quote.Job, r quote.Result, a Actuals) Done {
	d := Done{
		Number: q.Number, Customer: q.Customer, Title: q.Title, On: a.On, Pieces: r.Pieces, Pressed: r.Pieces, Spoiled: a.Spoiled,
		SetUp: number(a.SetUpMinutes), Pressing: number(a.PressingMinutes), Handling: number(job.Shop.Handling), Allowance: number(job.Shop.AllowancePercent),
	}
	for _, g := range r.Groups {
		d.Pressed += g.Spares
	}
	d.PlannedSetUp, _ = quote.SetUpMinutes(job, r).Float64()
	if hours, err := money.ParseNumber(r.Hours); err == nil {
		d.PlannedPressing = max(60*number(hours)-d.PlannedSetUp, 0)
	}
	took := quote.Took{Invoices: map[string]money.Amount{}}
	took.Minutes = sumOf(a.SetUpMinutes, a.PressingMinutes)
	for _, i := range a.Invoices {
		took.Invoices[i.Supplier] = quote.Sum(took.Invoices[i.Supplier], i.Amount)
	}
	d.Outturn = quote.Outturned(job, r, took)
	return d
}

func sumOf(a, b money.Number) money.Number {
	n, err := money.ParseNumber(a.Rat().Add(a.Rat(), b.Rat()).FloatString(8))
	if err != nil {
		return a
	}
	return n
}

func (d Done) planned() float64 { return d.PlannedSetUp + d.PlannedPressing }
func (d Done) took() float64    { return d.SetUp + d.Pressing }

// fewest is how many jobs a suggestion needs behind it.
const fewest = 5

// Suggestion is a rate that finished jobs speak for. It is taken over only by hand.
type Suggestion struct {
	Name     string // what it is called in the Shop
	Path     string // of the rate: handling_s, allowance_percent, garment_percent
	Now      money.Number
	Suggest  money.Number
	Offered  bool      // there are jobs enough, and they speak for another figure
	Sentence string    // what the jobs say, plainly
	Spread   Quartiles // of the figure itself, job by job
}

// Learned is what finished jobs say about the shop's rates.
type Learned struct {
	Jobs        int
	Sentence    string    // "14 jobs took 23 % longer than planned"
	Time        Quartiles // took over planned, in percent longer
	Suggestions []Suggestion
	Lost        []Loss
}

// Learn compares finished jobs with their plans. Handling and allowance are two ways to mend one thing: each is
// suggested with the other left as it is.
func Learn(jobs []Done, rates quote.Shop) Learned {
	l := Learned{Jobs: len(jobs), Lost: losses(jobs)}
	var longer []float64
	planned, took := 0.0, 0.0
	for _, d := range jobs {
		if d.planned() > 0 && d.took() > 0 {
			longer = append(longer, 100*(d.took()/d.planned()-1))
			planned, took = planned+d.planned(), took+d.took()
		}
	}
	l.Time = QuartilesOf(longer)
	l.Sentence = timeSentence(l.Time, planned, took)
	l.Suggestions = []Suggestion{allowance(jobs, rates, l.Sentence), handling(jobs, rates), spares(jobs, rates)}
	return l
}

func timeSentence(s Quartiles, planned, took float64) string {
	if s.Count == 0 {
		return "No finished job has its minutes yet."
	}
	text := fmt.Sprintf("%s took as long as planned", counted(s.Count, "job"))
	if p := math.Round(100 * (took/planned - 1)); p > 0 {
		text = fmt.Sprintf("%s took %.0f %% longer than planned", counted(s.Count, "job"), p)
	} else if p < 0 {
		text = fmt.Sprintf("%s took %.0f %% less time than planned", counted(s.Count, "job"), -p)
	}
	if s.Count >= fewest {
		text += fmt.Sprintf("; half of them between %s and %s", signed(s.Lower), signed(s.Upper))
	}
	return text + "."
}

func signed(percent float64) string {
	p := math.Round(percent)
	switch {
	case p > 0:
		return fmt.Sprintf("%.0f %% longer", p)
	case p < 0:
		return fmt.Sprintf("%.0f %% shorter", -p)
	}
	return "as planned"
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// allowance is the percent with which the middle job takes as long as planned.
func allowance(jobs []Done, rates quote.Shop, sentence string) Suggestion {
	var all []float64
	for _, d := range jobs {
		if d.planned() > 0 && d.took() > 0 {
			all = append(all, (1+d.Allowance/100)*d.took()/d.planned()*100-100)
		}
	}
	s := Suggestion{Name: "Allowance", Path: "allowance_percent", Now: rates.AllowancePercent, Spread: QuartilesOf(all), Sentence: sentence}
	return s.rounded(1)
}

// handling is the seconds a piece with which pressing takes as long as planned, the allowance left as it is.
func handling(jobs []Done, rates quote.Shop) Suggestion {
	var all []float64
	for _, d := range jobs {
		if d.Pressed > 0 && d.Pressing > 0 && d.PlannedPressing > 0 {
			all = append(all, d.Handling+60*(d.Pressing-d.PlannedPressing)/float64(d.Pressed)/(1+d.Allowance/100))
		}
	}
	s := Suggestion{Name: "Handling a piece", Path: "handling_s", Now: rates.Handling, Spread: QuartilesOf(all)}
	if s.Sentence = "No finished job has its minutes of pressing yet."; s.Spread.Count > 0 {
		s.Sentence = fmt.Sprintf("Pressing of %s came to %.0f s of handling a piece in the middle", counted(s.Spread.Count, "job"), s.Spread.Median)
		s.Sentence += s.enough(fmt.Sprintf(", half of them between %.0f and %.0f s; take it over instead of the allowance, not beside it.", s.Spread.Lower, s.Spread.Upper))
	}
	return s.rounded(1)
}

// spares is the percent that would have covered what was spoiled in three jobs of four.
func spares(jobs []Done, rates quote.Shop) Suggestion {
	var all []float64
	pieces, spoiled := 0, 0
	for _, d := range jobs {
		if d.Pieces > 0 {
			all = append(all, 100*float64(d.Spoiled)/float64(d.Pieces))
			pieces, spoiled = pieces+d.Pieces, spoiled+d.Spoiled
		}
	}
	s := Suggestion{Name: "Garment spares", Path: "garment_percent", Now: rates.Spares.GarmentPercent, Spread: QuartilesOf(all)}
	if s.Sentence = "No finished job yet."; pieces > 0 {
		s.Sentence = fmt.Sprintf("Of %d pieces %d were spoiled, %.1f %%", pieces, spoiled, 100*float64(spoiled)/float64(pieces))
		s.Sentence += s.enough(fmt.Sprintf("; %.1f %% would have covered three jobs of four.", s.Spread.Upper))
	}
	s.suggest(math.Ceil(2*s.Spread.Upper-1e-9) / 2)
	return s
}

// enough ends a sentence with what jobs enough say, or with how many it takes.
func (s Suggestion) enough(words string) string {
	if s.Spread.Count >= fewest {
		return words
	}
	return fmt.Sprintf("; a suggestion takes %d jobs.", fewest)
}

// rounded suggests the middle figure, rounded to a step.
func (s Suggestion) rounded(step float64) Suggestion {
	s.suggest(step * math.Round(s.Spread.Median/step))
	return s
}

func (s *Suggestion) suggest(figure float64) {
	figure = max(figure, 0)
	n, err := money.ParseNumber(fmt.Sprintf("%.1f", figure))
	if err != nil || s.Spread.Count == 0 {
		s.Suggest = s.Now
		return
	}
	s.Suggest = n
	s.Offered = s.Spread.Count >= fewest && n.Cmp(s.Now) != 0
}
