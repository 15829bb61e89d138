-- References are checked when a transaction ends: checked at every row they cost a large import a journal of its own.
-- Money and other exact decimals are TEXT as a job file writes them; days are 2006-01-02; lists of words are JSON.
CREATE TABLE shop (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  doc TEXT NOT NULL CHECK (json_valid(doc)), -- rates, letterhead, ladder and terms in the form of a job file
  stale_days INTEGER NOT NULL CHECK (stale_days >= 0)
) STRICT;

CREATE TABLE price_level (
  pos INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  doc TEXT NOT NULL CHECK (json_valid(doc)) -- pricing rules in the form of a job file
) STRICT;

CREATE TABLE extra (
  pos INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE CHECK (key <> ''),
  doc TEXT NOT NULL CHECK (json_valid(doc)), -- one extra in the form of a job file
  usual INTEGER NOT NULL CHECK (usual IN (0, 1))
) STRICT;

CREATE TABLE preset (
  pos INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  width TEXT NOT NULL,
  height TEXT NOT NULL,
  position TEXT NOT NULL,
  side TEXT NOT NULL
) STRICT;

CREATE TABLE supplier (
  id INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE CHECK (key <> ''),
  name TEXT NOT NULL UNIQUE CHECK (name <> ''),
  freight TEXT NOT NULL,
  free_from TEXT NOT NULL,
  share_percent TEXT NOT NULL,
  transit_days INTEGER NOT NULL CHECK (transit_days >= 0),
  cut_off TEXT NOT NULL,
  contact TEXT NOT NULL,
  notes TEXT NOT NULL,
  columns TEXT NOT NULL DEFAULT '' -- how the columns of its price file were matched last
) STRICT;

-- Where prices came from: a file by its name, or a person.
CREATE TABLE price_file (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id),
  name TEXT NOT NULL CHECK (name <> ''),
  source TEXT NOT NULL CHECK (source IN ('file', 'person', 'demo')),
  valid_from TEXT NOT NULL CHECK (length(valid_from) = 10),
  taken_at TEXT NOT NULL,
  whole INTEGER NOT NULL CHECK (whole IN (0, 1)), -- it lists all the supplier has
  undone INTEGER NOT NULL DEFAULT 0 CHECK (undone IN (0, 1))
) STRICT;
CREATE INDEX price_file_of_supplier ON price_file(supplier_id, id);

CREATE TABLE style (
  id INTEGER PRIMARY KEY,
  supplier_id INTEGER NOT NULL REFERENCES supplier(id) DEFERRABLE INITIALLY DEFERRED,
  number TEXT NOT NULL COLLATE NOCASE CHECK (number <> ''),
  name TEXT NOT NULL,
  mill TEXT NOT NULL,
  category TEXT NOT NULL,
  fabric TEXT NOT NULL,
  weight TEXT NOT NULL,     -- grams per square metre, 0: not known
  tags TEXT NOT NULL,       -- JSON list
  heat_limit TEXT NOT NULL,
  caution TEXT NOT NULL,
  handling TEXT,            -- seconds a piece, NULL: the shop's
  clothing INTEGER NOT NULL CHECK (clothing IN (0, 1)),
  usual INTEGER NOT NULL CHECK (usual IN (0, 1)),
  retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
  edits INTEGER NOT NULL DEFAULT 0, -- counts changes by hand
  file_id INTEGER, -- the price file that brought it, NULL: a person
  UNIQUE (supplier_id, number)
) STRICT;
CREATE INDEX usual_style ON style(number) WHERE usual = 1;

CREATE TABLE color (
  style_id INTEGER NOT NULL REFERENCES style(id) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  pos INTEGER NOT NULL,
  name TEXT NOT NULL CHECK (name <> ''),
  hex TEXT NOT NULL,
  shade TEXT NOT NULL CHECK (shade IN ('', 'light', 'dark', 'heather', 'neon')),
  sizes TEXT NOT NULL DEFAULT '', -- divided by spaces, empty: all of the style
  retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),
  file_id INTEGER, -- as for style
  PRIMARY KEY (style_id, pos)
) STRICT, WITHOUT ROWID;

-- A price entry is never changed: a later one takes its place from its day on.
CREATE TABLE price (
  style_id INTEGER NOT NULL REFERENCES style(id) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  seq INTEGER NOT NULL,
  color TEXT NOT NULL,      -- empty: every colour
  size TEXT NOT NULL CHECK (size <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('list', 'net', 'sale', 'gone')),
  breaks TEXT NOT NULL,     -- like "6.85 72:6.20"; empty where the size is gone
  valid_from TEXT NOT NULL CHECK (length(valid_from) = 10),
  valid_to TEXT NOT NULL CHECK (valid_to = '' OR length(valid_to) = 10),
  file_id INTEGER NOT NULL REFERENCES price_file(id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (style_id, seq)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER price_is_kept BEFORE UPDATE ON price BEGIN
  SELECT RAISE(ABORT, 'a price entry is never changed');
END;

CREATE VIRTUAL TABLE style_words USING fts5(
  number, name, category, mill, colors,
  content = '', contentless_delete = 1, prefix = '1 2 3', detail = 'none',
  tokenize = 'unicode61 remove_diacritics 2'
);

-- More of an import is sorted in memory before it is written.
INSERT INTO style_words (style_words, rank) VALUES ('hashsize', 8388608);

-- The same for my usual only: a few hundred that come first.
CREATE VIRTUAL TABLE usual_words USING fts5(
  number, name, category, mill, colors,
  content = '', contentless_delete = 1, prefix = '1 2 3', detail = 'none',
  tokenize = 'unicode61 remove_diacritics 2'
);

CREATE TABLE rate_card (
  id INTEGER PRIMARY KEY,
  key TEXT NOT NULL CHECK (key <> ''),
  pos INTEGER NOT NULL,
  doc TEXT NOT NULL CHECK (json_valid(doc)), -- the card in the form of a job file
  valid_from TEXT NOT NULL CHECK (length(valid_from) = 10),
  valid_to TEXT NOT NULL CHECK (valid_to = '' OR length(valid_to) = 10),
  active INTEGER NOT NULL CHECK (active IN (0, 1)),
  confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
  UNIQUE (key, valid_from)
) STRICT;

CREATE TABLE customer (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  contact TEXT NOT NULL,
  email TEXT NOT NULL,
  phone TEXT NOT NULL,
  address TEXT NOT NULL
) STRICT;
CREATE VIRTUAL TABLE customer_words USING fts5(
  name, contact, email, phone, content = '', contentless_delete = 1, tokenize = 'unicode61 remove_diacritics 2'
);

CREATE TABLE quote (
  id INTEGER PRIMARY KEY,
  number TEXT NOT NULL UNIQUE,
  state TEXT NOT NULL CHECK (state IN ('draft', 'sent', 'accepted', 'declined', 'finished')),
  customer_id INTEGER REFERENCES customer(id),
  customer TEXT NOT NULL,
  title TEXT NOT NULL,
  pieces INTEGER NOT NULL,
  total TEXT NOT NULL,    -- empty where it could not be priced
  margin TEXT NOT NULL,   -- percent
  needed_by TEXT NOT NULL,
  next_step TEXT NOT NULL,
  draft TEXT NOT NULL CHECK (json_valid(draft)),
  created TEXT NOT NULL,
  changed TEXT NOT NULL
) STRICT;
CREATE INDEX quote_by_change ON quote(changed);
CREATE VIRTUAL TABLE quote_words USING fts5(
  number, customer, title, content = '', contentless_delete = 1, tokenize = 'unicode61 remove_diacritics 2'
);
