package present

import "pressworth/quote"

// Save keeps the draft in the shop file, if anything was typed since the last time. It is what autosave calls.
func (c *Counter) Save() error {
	if !c.changed {
		return nil
	}
	var figures *quote.Result
	if c.current {
		figures = &c.result
	}
	kept, err := c.shop.Save(c.draft, figures)
	c.saveErr = err
	if err == nil {
		c.draft.ID, c.draft.Number, c.draft.State = kept.ID, kept.Number, kept.State
		c.draft.Customer.ID = kept.Customer.ID
		c.changed, c.savedAt = false, c.shop.Now()
	}
	c.show()
	return err
}

// Unsaved says whether something was typed since the last save.
func (c *Counter) Unsaved() bool { return c.changed }
