package export

import (
	"errors"
	"slices"
	"time"

	"pressworth/quote"
)

// Spoiled is a number of pieces that have to be pressed again, or the one piece of a line of the roster.
type Spoiled struct {
	Garment string // id of the garment line
	Size    string
	Qty     int
	Row     int // line of the paper's roster, from 1; 0: pieces that are nobody's own
}

// Reprint is a press ticket for spoiled pieces only, as a PDF, with what is printed on each that is one of a kind. The
// result may be the job's own: its counts are not shown.
func (a Pictured) Reprint(job quote.Job, result quote.Result, spoiled []Spoiled, approval Approval, date time.Time) ([]byte, error) {
	again, err := onlySpoiled(job, result, spoiled)
	if err != nil {
		return nil, err
	}
	own, whole := ownPieces(job, spoiled), job
	job = onlyTexts(job, spoiled)
	return a.render(job, "Reprint ticket "+paperOf(job).Number, footText(job, "Reprint ticket"), date, func(d *doc) {
		d.letterhead(job, "Reprint ticket", [2]string{"number", paperOf(job).Number}, [2]string{"printed", day(date.Format(time.DateOnly))},
			[2]string{"needed by", day(paperOf(job).NeededBy)})
		d.addressee(job)
		d.approval(approval)
		d.cautions(pressCautions(job))
		d.counts(job, again)
		d.pressings(job, again)
		if len(own) > 0 {
			d.heading("Names and numbers")
			d.bags(whole, own, "pressed")
		}
	})
}

// onlySpoiled is a result that has the spoiled pieces and no others, for what a ticket shows.
func onlySpoiled(job quote.Job, result quote.Result, spoiled []Spoiled) (quote.Result, error) {
	again := result
	again.Garments, again.Groups = nil, nil
	for _, l := range result.Garments {
		line := quote.GarmentLine{ID: l.ID, Group: l.Group}
		for _, s := range l.Sizes {
			n := 0
			for _, x := range spoiled {
				if x.Garment == l.ID && x.Size == s.Size {
					n += x.Qty
				}
			}
			if n > 0 {
				line.Sizes = append(line.Sizes, quote.SizePrice{Size: s.Size, Qty: n})
				line.Pieces += n
			}
		}
		if line.Pieces > 0 {
			again.Garments = append(again.Garments, line)
		}
	}
	if len(again.Garments) == 0 {
		return again, errors.New("reprint ticket: none of the spoiled pieces belongs to this job")
	}
	again.Methods = nil
	for _, m := range result.Methods {
		if m.Needed = goesOn(again, placementOf(job, m.Placement), spoiled); m.Needed > 0 {
			again.Methods = append(again.Methods, m)
		}
	}
	return again, nil
}

// goesOn counts the pieces of a result that a placement goes on: of one with texts of its own, those of its lines.
func goesOn(r quote.Result, p quote.Placement, spoiled []Spoiled) (n int) {
	if p.Personal {
		return len(spoiledTexts(p, spoiled))
	}
	for _, l := range r.Garments {
		if p.On == nil || slices.Contains(p.On, l.ID) {
			n += l.Pieces
		}
	}
	return n
}

// spoiledTexts are the texts of the lines that are pressed again.
func spoiledTexts(p quote.Placement, spoiled []Spoiled) (texts []quote.Text) {
	for _, t := range p.Texts {
		if slices.ContainsFunc(spoiled, func(s Spoiled) bool { return s.Row > 0 && s.Row == t.Row }) {
			texts = append(texts, t)
		}
	}
	return texts
}

// onlyTexts is a job with the texts of the spoiled pieces and no others.
func onlyTexts(job quote.Job, spoiled []Spoiled) quote.Job {
	job.Placements = slices.Clone(job.Placements)
	for i, p := range job.Placements {
		job.Placements[i].Texts = spoiledTexts(p, spoiled)
	}
	return job
}

// ownPieces are the bags of the spoiled pieces that belong to somebody, in the order of the roster.
func ownPieces(job quote.Job, spoiled []Spoiled) (own []bag) {
	all := roster(job)
	for i := range min(len(all), len(paperOf(job).Roster)) {
		if slices.ContainsFunc(spoiled, func(s Spoiled) bool { return s.Row == i+1 }) {
			own = append(own, all[i])
		}
	}
	return own
}
