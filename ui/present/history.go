package present

import "pressworth/catalog"

// depth is how many steps back undo goes.
const depth = 200

// history is a ring of immutable drafts. Edits of one field in a row are one step.
type history struct {
	past, future []catalog.Draft
	path         string // field of the last edit
}

// keep remembers the draft as it was before an edit of the field at path.
func (h *history) keep(before catalog.Draft, path string) {
	h.future = nil
	if path != "" && path == h.path && len(h.past) > 0 {
		return
	}
	h.path = path
	if len(h.past) == depth {
		h.past = append(h.past[:0:0], h.past[1:]...)
	}
	h.past = append(h.past, before)
}

// close ends the run of edits of one field, so that the next edit of it is a step of its own.
func (h *history) close() { h.path = "" }

func (h *history) undo(now catalog.Draft) (catalog.Draft, bool) {
	n := len(h.past)
	if n == 0 {
		return now, false
	}
	d := h.past[n-1]
	h.past, h.future, h.path = h.past[:n-1], append(h.future, now), ""
	return d, true
}

func (h *history) redo(now catalog.Draft) (catalog.Draft, bool) {
	n := len(h.future)
	if n == 0 {
		return now, false
	}
	d := h.future[n-1]
	h.future, h.past, h.path = h.future[:n-1], append(h.past, now), ""
	return d, true
}
