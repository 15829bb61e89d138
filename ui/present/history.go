package present

import "pressworth/catalog"

// depth is how many steps back undo goes.
const depth = 200

// state is a draft, and which of the jobs of this sitting it belongs to: a draft that was never saved must not take the
// number of another.
type state struct {
	draft catalog.Draft
	job   int
}

// history is a ring of immutable drafts. Edits of one field in a row are one step.
type history struct {
	past, future []state
	path         string // field of the last edit
}

// keep remembers the draft as it was before an edit of the field at path.
func (h *history) keep(before state, path string) {
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

func (h *history) undo(now state) (state, bool) {
	n := len(h.past)
	if n == 0 {
		return now, false
	}
	s := h.past[n-1]
	h.past, h.future, h.path = h.past[:n-1], append(h.future, now), ""
	return s, true
}

func (h *history) redo(now state) (state, bool) {
	n := len(h.future)
	if n == 0 {
		return now, false
	}
	s := h.future[n-1]
	h.future, h.past, h.path = h.future[:n-1], append(h.past, now), ""
	return s, true
}
