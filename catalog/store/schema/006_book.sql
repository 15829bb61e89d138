-- The quote book: customers in full, options, frozen revisions, states with their history, steps, payments, what is to be
-- bought, the shelf, artwork on file, and what finished jobs really took.
ALTER TABLE customer ADD COLUMN level TEXT NOT NULL DEFAULT '';
ALTER TABLE customer ADD COLUMN terms TEXT NOT NULL DEFAULT '' CHECK (terms IN ('', 'pick-up', 'net', 'po'));
ALTER TABLE customer ADD COLUMN net_days INTEGER NOT NULL DEFAULT 0 CHECK (net_days BETWEEN 0 AND 365);
ALTER TABLE customer ADD COLUMN po_number TEXT NOT NULL DEFAULT '';
ALTER TABLE customer ADD COLUMN tax_exempt INTEGER NOT NULL DEFAULT 0 CHECK (tax_exempt IN (0, 1));
ALTER TABLE customer ADD COLUMN certificate TEXT NOT NULL DEFAULT '';
ALTER TABLE customer ADD COLUMN certificate_until TEXT NOT NULL DEFAULT '' CHECK (certificate_until = '' OR length(certificate_until) = 10);
ALTER TABLE customer ADD COLUMN notes TEXT NOT NULL DEFAULT '';

ALTER TABLE quote ADD COLUMN follow_up TEXT NOT NULL DEFAULT '' CHECK (follow_up = '' OR length(follow_up) = 10);
ALTER TABLE quote ADD COLUMN expires TEXT NOT NULL DEFAULT '' CHECK (expires = '' OR length(expires) = 10);
ALTER TABLE quote ADD COLUMN revision INTEGER NOT NULL DEFAULT 0 CHECK (revision >= 0); -- number of the latest
ALTER TABLE quote ADD COLUMN options INTEGER NOT NULL DEFAULT 0 CHECK (options BETWEEN 0 AND 4);
ALTER TABLE quote ADD COLUMN accepted_id INTEGER REFERENCES revision(id);
ALTER TABLE quote ADD COLUMN po_number TEXT NOT NULL DEFAULT '';
ALTER TABLE quote ADD COLUMN decided TEXT NOT NULL DEFAULT '';  -- the day it was accepted or declined
ALTER TABLE quote ADD COLUMN finished TEXT NOT NULL DEFAULT ''; -- the day it was finished
ALTER TABLE quote ADD COLUMN why TEXT NOT NULL DEFAULT '';      -- why it was declined
ALTER TABLE quote ADD COLUMN paid TEXT NOT NULL DEFAULT '';     -- sum of its payments; empty: none
CREATE INDEX quote_of_customer ON quote(customer_id);
CREATE INDEX quote_agreed ON quote(accepted_id, id, state, customer_id, finished, paid) WHERE accepted_id IS NOT NULL;
CREATE INDEX quote_decided ON quote(decided) WHERE decided <> '';

-- The drafts of a quote with options; the leading one stands in the quote too.
CREATE TABLE quote_option (
  quote_id INTEGER NOT NULL REFERENCES quote(id) ON DELETE CASCADE,
  pos INTEGER NOT NULL CHECK (pos BETWEEN 1 AND 4),
  name TEXT NOT NULL CHECK (name <> ''),
  draft TEXT NOT NULL CHECK (json_valid(draft)),
  pieces INTEGER NOT NULL,
  total TEXT NOT NULL,
  margin TEXT NOT NULL,
  accepted INTEGER NOT NULL DEFAULT 0 CHECK (accepted IN (0, 1)),
  PRIMARY KEY (quote_id, pos)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX one_option_accepted ON quote_option(quote_id) WHERE accepted = 1;

-- A frozen revision: figures to list it by, and its two documents with their seal in revision_doc.
CREATE TABLE revision (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  quote_id INTEGER NOT NULL REFERENCES quote(id),
  number INTEGER NOT NULL CHECK (number > 0),
  option INTEGER NOT NULL CHECK (option BETWEEN 0 AND 4),
  option_name TEXT NOT NULL,
  made_at TEXT NOT NULL CHECK (made_at <> ''),
  sent_how TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  pieces INTEGER NOT NULL,
  total TEXT NOT NULL,
  deposit TEXT NOT NULL,
  subtotal TEXT NOT NULL,
  cost TEXT NOT NULL,
  margin TEXT NOT NULL,
  hours TEXT NOT NULL,
  UNIQUE (quote_id, number, option)
) STRICT;

CREATE TABLE revision_doc (
  revision_id INTEGER PRIMARY KEY REFERENCES revision(id),
  job BLOB NOT NULL,   -- the job file and the result, each packed by gzip (RFC 1952)
  result BLOB NOT NULL
) STRICT;

CREATE TRIGGER revision_is_kept BEFORE UPDATE ON revision BEGIN
  SELECT RAISE(ABORT, 'a frozen revision is never changed');
END;
CREATE TRIGGER revision_stays BEFORE DELETE ON revision BEGIN
  SELECT RAISE(ABORT, 'a frozen revision is never taken away');
END;
CREATE TRIGGER revision_doc_is_kept BEFORE UPDATE ON revision_doc BEGIN
  SELECT RAISE(ABORT, 'a frozen revision is never changed');
END;
CREATE TRIGGER revision_doc_stays BEFORE DELETE ON revision_doc BEGIN
  SELECT RAISE(ABORT, 'a frozen revision is never taken away');
END;

-- To put another in its place is to take it away: no other trigger is asked about that.
CREATE TRIGGER revision_is_new BEFORE INSERT ON revision
  WHEN EXISTS (SELECT 1 FROM revision WHERE id = NEW.id OR quote_id = NEW.quote_id AND number = NEW.number AND option = NEW.option) BEGIN
  SELECT RAISE(ABORT, 'a frozen revision is never changed');
END;
CREATE TRIGGER revision_doc_is_new BEFORE INSERT ON revision_doc WHEN EXISTS (SELECT 1 FROM revision_doc WHERE revision_id = NEW.revision_id) BEGIN
  SELECT RAISE(ABORT, 'a frozen revision is never changed');
END;
CREATE TRIGGER quote_with_revisions_stays BEFORE DELETE ON quote WHEN EXISTS (SELECT 1 FROM revision WHERE quote_id = OLD.id) BEGIN
  SELECT RAISE(ABORT, 'a quote with frozen revisions is never taken away');
END;

CREATE TABLE quote_event (
  quote_id INTEGER NOT NULL REFERENCES quote(id) ON DELETE CASCADE,
  seq INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('draft', 'sent', 'accepted', 'declined', 'finished')),
  at TEXT NOT NULL,
  note TEXT NOT NULL,
  PRIMARY KEY (quote_id, seq)
) STRICT, WITHOUT ROWID;

CREATE TABLE step (
  quote_id INTEGER NOT NULL REFERENCES quote(id) ON DELETE CASCADE,
  pos INTEGER NOT NULL CHECK (pos BETWEEN 1 AND 6),
  name TEXT NOT NULL CHECK (name IN ('artwork approved', 'goods ordered', 'goods in', 'pressed', 'ready', 'collected')),
  taken_on TEXT NOT NULL CHECK (length(taken_on) = 10),
  who TEXT NOT NULL,
  how TEXT NOT NULL,
  note TEXT NOT NULL,
  PRIMARY KEY (quote_id, pos),
  UNIQUE (quote_id, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE payment (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  quote_id INTEGER NOT NULL REFERENCES quote(id),
  paid_on TEXT NOT NULL CHECK (length(paid_on) = 10),
  way TEXT NOT NULL CHECK (way IN ('cash', 'check', 'card', 'bank transfer', 'other')),
  amount TEXT NOT NULL CHECK (amount <> '' AND amount NOT GLOB '-*'),
  deposit INTEGER NOT NULL CHECK (deposit IN (0, 1)),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX payment_of_quote ON payment(quote_id);

-- What an accepted quote needs bought, one row a blank's size or a thing bought on a card.
CREATE TABLE purchase (
  id INTEGER PRIMARY KEY,
  quote_id INTEGER NOT NULL REFERENCES quote(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('blank', 'transfer')),
  supplier TEXT NOT NULL,
  supplier_name TEXT NOT NULL,
  style TEXT NOT NULL,
  name TEXT NOT NULL,
  color TEXT NOT NULL,
  size TEXT NOT NULL,
  card TEXT NOT NULL,
  card_name TEXT NOT NULL,
  what TEXT NOT NULL,
  needed INTEGER NOT NULL CHECK (needed >= 0),
  ordered INTEGER NOT NULL DEFAULT 0 CHECK (ordered >= 0),
  received INTEGER NOT NULL DEFAULT 0 CHECK (received >= 0),
  short INTEGER NOT NULL DEFAULT 0 CHECK (short >= 0),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX purchase_of_quote ON purchase(quote_id);

CREATE TABLE shelf (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('blank', 'transfer')),
  qty INTEGER NOT NULL CHECK (qty >= 0),
  since TEXT NOT NULL,
  from_quote TEXT NOT NULL,
  note TEXT NOT NULL,
  supplier TEXT NOT NULL,
  style TEXT NOT NULL COLLATE NOCASE,
  color TEXT NOT NULL COLLATE NOCASE,
  size TEXT NOT NULL COLLATE NOCASE,
  customer_id INTEGER REFERENCES customer(id),
  name TEXT NOT NULL,
  width TEXT NOT NULL,
  height TEXT NOT NULL,
  inks TEXT NOT NULL,
  card TEXT NOT NULL
) STRICT;
CREATE INDEX shelf_of_customer ON shelf(customer_id);

CREATE TABLE design (
  id INTEGER PRIMARY KEY,
  customer_id INTEGER NOT NULL REFERENCES customer(id),
  name TEXT NOT NULL CHECK (name <> ''),
  file TEXT NOT NULL,
  sizes TEXT NOT NULL CHECK (json_valid(sizes)),
  inks TEXT NOT NULL,
  full_color INTEGER NOT NULL CHECK (full_color IN (0, 1)),
  stitches TEXT NOT NULL,
  card TEXT NOT NULL,
  settings TEXT NOT NULL,
  last_run TEXT NOT NULL,
  last_quote TEXT NOT NULL,
  runs INTEGER NOT NULL CHECK (runs >= 0),
  charge_again INTEGER NOT NULL CHECK (charge_again IN (0, 1)),
  notes TEXT NOT NULL
) STRICT;
CREATE INDEX design_of_customer ON design(customer_id);

CREATE TABLE actuals (
  quote_id INTEGER PRIMARY KEY REFERENCES quote(id) ON DELETE CASCADE,
  set_up_minutes TEXT NOT NULL,
  pressing_minutes TEXT NOT NULL,
  spoiled INTEGER NOT NULL CHECK (spoiled >= 0),
  invoices TEXT NOT NULL CHECK (json_valid(invoices)),
  note TEXT NOT NULL,
  finished_on TEXT NOT NULL CHECK (length(finished_on) = 10)
) STRICT;

INSERT INTO quote_event (quote_id, seq, state, at, note) SELECT id, 1, state, created, '' FROM quote;

-- What the list of quotes shows, without the drafts that make its rows long: in the order of change, and by what a search found.
DROP INDEX quote_by_change;
CREATE INDEX quote_listed ON quote(changed, id, number, state, customer, title, pieces, total, margin, needed_by, next_step, revision, options,
  follow_up, expires, paid, customer_id);
CREATE INDEX quote_found ON quote(id, changed, number, state, customer, title, pieces, total, margin, needed_by, next_step, revision, options,
  follow_up, expires, paid, customer_id);
CREATE INDEX quote_in_state ON quote(state, needed_by, next_step);
CREATE INDEX quote_to_follow_up ON quote(follow_up, state) WHERE follow_up <> '';
CREATE INDEX quote_expiring ON quote(expires, state) WHERE expires <> '';

-- The words that a quote is found by. A day is one word too, like d20260531, and an amount, like a1261x38: divided into
-- their numbers they would be found by far too much.
CREATE VIEW quote_text AS
  SELECT q.id, concat_ws(' ', q.number, q.state, q.customer, c.contact, c.email, c.phone, q.title, q.po_number, q.why, q.total,
    'a' || replace(q.total, '.', 'x'), 'd' || replace(q.needed_by, '-', ''), 'd' || replace(substr(q.created, 1, 10), '-', ''),
    'd' || replace(q.follow_up, '-', ''), 'd' || replace(q.expires, '-', ''), 'd' || replace(q.decided, '-', ''),
    'd' || replace(q.finished, '-', ''), q.draft ->> '$.Notes',
    (SELECT group_concat(concat_ws(' ', p.value ->> '$.Name', p.value ->> '$.Inks'), ' ') FROM json_each(q.draft, '$.Placements') p),
    (SELECT group_concat(concat_ws(' ', g.value ->> '$.Name', g.value ->> '$.Color'), ' ') FROM json_each(q.draft, '$.Garments') g)) AS words
  FROM quote q LEFT JOIN customer c ON c.id = q.customer_id;
DROP TABLE quote_words;
CREATE VIRTUAL TABLE quote_words USING fts5(
  words, content = '', contentless_delete = 1, prefix = '1 2 3 4 5 6', detail = 'none', tokenize = 'unicode61 remove_diacritics 2'
);
INSERT INTO quote_words (rowid, words) SELECT id, words FROM quote_text;
