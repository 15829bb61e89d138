-- Settings that are read one by one: each a record as JSON under its name.
CREATE TABLE setting (
  key TEXT PRIMARY KEY CHECK (key <> ''),
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT, WITHOUT ROWID;

-- The days on which a supplier is closed, as JSON.
ALTER TABLE supplier ADD COLUMN calendar TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(calendar));
