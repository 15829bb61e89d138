-- What reports and learning read of a decided quote, so that they need not open what was frozen. The basis names what it
-- was worked out of; where that is another one now, it is worked out anew.
CREATE TABLE figured (
  quote_id INTEGER PRIMARY KEY REFERENCES quote(id) ON DELETE CASCADE,
  basis TEXT NOT NULL,
  doc TEXT NOT NULL CHECK (json_valid(doc))
) STRICT;

-- The order of the book alone, for searches that find a good part of it.
CREATE INDEX quote_in_order ON quote(changed, id, state, customer_id);
