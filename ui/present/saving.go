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
		c.numberPaper()
		c.changed, c.savedAt = false, c.shop.Now()
	}
	c.show()
	return err
}

// numberPaper puts the number that saving gave on the job that papers are made of: it was frozen before it had one.
func (c *Counter) numberPaper() {
	if p := c.job.Paper; p != nil && p.Number != c.draft.Number {
		numbered := *p
		numbered.Number = c.draft.Number
		c.job.Paper = &numbered
	}
}

// Unsaved says whether something was typed since the last save.
func (c *Counter) Unsaved() bool { return c.changed }
