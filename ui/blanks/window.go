package blanks

import (
	"pressworth/catalog"
	"pressworth/ui/parts"
)

// Listing is the rows that a filter lets through, read from the shop file a few at a time.
type Listing = parts.Many[catalog.StyleRow]

// sight is the rows behind the table.
type sight = parts.Sight[catalog.StyleRow]
