package parts

// Bare takes the border away until the field is reached or pointed at: for text that is edited where it stands.
func (f *Field) Bare() *Field {
	f.bare = true
	return f
}

// Bare takes the border away until the choice is reached or pointed at.
func (c *Choice) Bare() *Choice {
	c.bare = true
	return c
}
