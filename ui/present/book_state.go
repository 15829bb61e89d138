package present

// Became tells in which state a quote is: it is shown where that quote is on the counter.
func (c *Counter) Became(id int64, state string) {
	if id != 0 && c.draft.ID == id && c.draft.State != state {
		c.draft.State = state
		c.show()
	}
}
