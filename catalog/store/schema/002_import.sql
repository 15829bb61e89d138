-- What a price file said about a style, as one number: where it says the same again, nothing has changed.
-- 0: not known, or changed by hand since.
ALTER TABLE style ADD COLUMN said INTEGER NOT NULL DEFAULT 0;

-- What an import changed about styles that were there before it, so that it can be undone.
CREATE TABLE import_note (
  file_id INTEGER NOT NULL REFERENCES price_file(id),
  style_id INTEGER NOT NULL REFERENCES style(id) ON DELETE CASCADE,
  edits INTEGER NOT NULL,   -- the style's count of changes by hand when it was imported
  before TEXT NOT NULL CHECK (json_valid(before)),
  PRIMARY KEY (file_id, style_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX import_note_of_style ON import_note(style_id);
