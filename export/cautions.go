package export

import (
	"slices"
	"strings"

	"pressworth/quote"
)

// small are notes, terms and cautions.
func (d *doc) small(job quote.Job) {
	p := paperOf(job)
	w := d.right - d.left
	if p.Notes != "" {
		d.heading("Notes")
		d.paragraph(d.left, w, p.Notes, body)
	}
	d.heading("Good to know")
	for _, t := range nonEmpty(append([]string{p.Terms}, customerCautions(job)...)...) {
		d.gap(2)
		d.paragraph(d.left, w, t, small)
	}
}

// customerCautions are what the customer should know before saying yes.
func customerCautions(job quote.Job) []string {
	out := []string{
		"Sizes of garments and the place of a print vary a little from piece to piece; colours on paper and screen are a guide, not a match.",
		"Wash inside out, cool, and do not iron on the print; the garment's care label and the transfer maker's advice come first.",
		"By ordering you confirm that you own the artwork or have its owner's permission to print it.",
	}
	if slices.ContainsFunc(job.Garments, isForChildren) {
		out = append(out, "Garments for children carry legal duties of their own (flammability, lead, phthalates, tracking labels): tell us if they are to be sold on.")
	}
	if slices.ContainsFunc(job.Garments, func(g quote.Garment) bool { return g.FromCustomer }) {
		out = append(out, "Garments that you bring are pressed with care but at your risk: heat can mark or shrink them, and a spoiled piece cannot be replaced by us.")
	}
	return out
}

func isForChildren(g quote.Garment) bool {
	text := strings.ToLower(g.Info.Category + " " + g.Name)
	return strings.Contains(text, "youth") || strings.Contains(text, "toddler") || strings.Contains(text, "child") || strings.Contains(text, "infant")
}
