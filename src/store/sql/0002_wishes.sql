-- What the family asks of the week's meals: a food they want at one meal, or do not want.

CREATE TABLE wish (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kind TEXT NOT NULL CHECK (kind IN ('want', 'not')),
  food TEXT REFERENCES food (key),      -- NULL: nothing of the kit
  from_day TEXT CHECK (date(from_day, '+0 days') IS from_day),
  through_day TEXT CHECK (date(through_day, '+0 days') IS through_day),  -- both NULL: always
  meal TEXT CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),   -- NULL: every meal
  person TEXT REFERENCES person (key),  -- NULL: everyone
  CHECK ((from_day IS NULL) = (through_day IS NULL)),
  CHECK (from_day <= through_day),
  CHECK (kind = 'not' OR (food IS NOT NULL AND meal IS NOT NULL AND from_day IS NOT NULL AND from_day = through_day)),
  CHECK (food IS NOT NULL OR from_day IS NOT NULL)
) STRICT;

PRAGMA user_version = 2;
