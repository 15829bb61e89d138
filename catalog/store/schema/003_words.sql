-- The words of the catalog that begin with four letters, without accents: a search for the beginning of one looks the
-- whole words up here, because whole words are found far faster than beginnings.
CREATE TABLE word (term TEXT PRIMARY KEY) STRICT, WITHOUT ROWID;
CREATE VIRTUAL TABLE style_term USING fts5vocab('style_words', 'row');
INSERT INTO word SELECT term FROM style_term WHERE term GLOB '[a-z][a-z][a-z][a-z]*';
