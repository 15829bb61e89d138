package catalog

import (
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// onFile is what the key of a rate card ends in where it stands for the card without its set-up.
const onFile = "~on-file"

// PaidCard is the key of a rate card, whether it stands for the card with or without its set-up.
func PaidCard(key string) string { return strings.TrimSuffix(key, onFile) }

// paidSetUps adds to a job, for each card whose set-up is paid for artwork on file, the same card without set-up, which
// only that artwork may go on. What is printed with set-up and without is planned apart.
func (f *freezer) paidSetUps(job *quote.Job) {
	for i, p := range f.draft.Placements {
		if !p.OnFile || p.FileCard == "" {
			continue
		}
		at := slices.IndexFunc(job.RateCards, func(c quote.RateCard) bool { return c.ID == PaidCard(p.FileCard) })
		if at < 0 || job.RateCards[at].SetupPerDesign.Sign() == 0 && job.RateCards[at].SetupPerInk.Sign() == 0 {
			continue
		}
		key := job.RateCards[at].ID + onFile
		if job.Placements[i].Method == job.RateCards[at].ID {
			job.Placements[i].Method = key
		}
		if k := slices.IndexFunc(job.RateCards, func(c quote.RateCard) bool { return c.ID == key }); k >= 0 {
			job.RateCards[k].Only = append(job.RateCards[k].Only, p.Key)
			continue
		}
		card := job.RateCards[at]
		card.ID, card.Name, card.Only = key, card.Name+", set-up on file", []string{p.Key}
		card.SetupPerDesign, card.SetupPerInk = money.Amount{}, money.Amount{}
		job.RateCards = append(job.RateCards, card)
	}
}
