-- Entering by hand and from spreadsheets: retired things, guests, how all-number dates are meant, what shopping found, column mappings.

ALTER TABLE household ADD COLUMN date_order TEXT NOT NULL DEFAULT 'none' CHECK (date_order IN ('none', 'dmy', 'mdy', 'ymd'));
ALTER TABLE person ADD COLUMN retired TEXT CHECK (date(retired, '+0 days') IS retired);
ALTER TABLE food ADD COLUMN retired TEXT CHECK (date(retired, '+0 days') IS retired);
ALTER TABLE place ADD COLUMN retired TEXT CHECK (date(retired, '+0 days') IS retired);

-- Who is at the table beside those who usually are.
CREATE TABLE table_exception_guest (
  exception INTEGER NOT NULL REFERENCES table_exception (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (exception, person)
) STRICT, WITHOUT ROWID;

-- What shopping found of the replacement list; kit NULL: it was wanted for the pantry.
CREATE TABLE buy_note (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  food TEXT NOT NULL REFERENCES food (key),
  kit TEXT REFERENCES place (key),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  kind TEXT NOT NULL CHECK (kind IN ('not_available', 'bought_instead')),
  instead TEXT REFERENCES food (key),
  note TEXT NOT NULL,
  CHECK ((kind = 'bought_instead') = (instead IS NOT NULL))
) STRICT;
CREATE TRIGGER buy_note_grows BEFORE INSERT ON buy_note
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM buy_note)
BEGIN SELECT RAISE(ABORT, 'notes of shopping are numbered upwards'); END;
CREATE TRIGGER buy_note_stays BEFORE UPDATE ON buy_note
BEGIN SELECT RAISE(ABORT, 'a note of shopping is never changed: add another'); END;
CREATE TRIGGER buy_note_is_kept BEFORE DELETE ON buy_note
BEGIN SELECT RAISE(ABORT, 'a note of shopping is never deleted: add another'); END;

-- Which column of somebody's spreadsheet means what; an empty field: pass over.
CREATE TABLE import_mapping (
  name TEXT NOT NULL PRIMARY KEY CHECK (length(name) > 0),
  sheet TEXT NOT NULL CHECK (sheet IN ('foods', 'lots', 'people', 'menu'))
) STRICT, WITHOUT ROWID;
CREATE TABLE import_column (
  mapping TEXT NOT NULL REFERENCES import_mapping (name),
  header TEXT NOT NULL,
  field TEXT NOT NULL,
  PRIMARY KEY (mapping, header)
) STRICT, WITHOUT ROWID;

PRAGMA user_version = 5;
