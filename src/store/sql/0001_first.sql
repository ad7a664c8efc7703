-- The first form of a book; docs/book.md explains it to people.
-- Days are text, 2027-03-15; instants are UTC text, 2027-03-15T08:30:00Z; amounts of stock are whole half servings;
-- g, ml, kcal and cents are whole numbers; yes and no are 1 and 0. An absent value is NULL.

-- ---- the household ----------------------------------------------------------------------------------------------------

CREATE TABLE household (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  book_id TEXT NOT NULL CHECK (length(book_id) = 36),
  name TEXT NOT NULL,
  time_zone TEXT NOT NULL,
  region TEXT NOT NULL CHECK (region IN ('other', 'eu', 'us')),
  currency TEXT NOT NULL,
  margin_days INTEGER NOT NULL CHECK (margin_days >= 0),
  slack_days INTEGER NOT NULL CHECK (slack_days >= 0),
  donate_days INTEGER NOT NULL CHECK (donate_days >= 0),
  late_days INTEGER NOT NULL CHECK (late_days >= 0),
  tolerance_half_servings INTEGER NOT NULL CHECK (tolerance_half_servings >= 0),
  monotony_half_servings INTEGER NOT NULL CHECK (monotony_half_servings >= 0),
  variety_cap INTEGER NOT NULL CHECK (variety_cap >= 0),
  week_starts TEXT NOT NULL CHECK (week_starts IN
    ('monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday')),
  shopping_day TEXT NOT NULL CHECK (shopping_day IN
    ('monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'))
) STRICT;

CREATE TABLE own_allergen (
  key TEXT NOT NULL PRIMARY KEY,
  since TEXT NOT NULL CHECK (date(since, '+0 days') IS since)
) STRICT, WITHOUT ROWID;

-- ---- what labels say --------------------------------------------------------------------------------------------------

CREATE TABLE statement (
  id INTEGER PRIMARY KEY,
  read_by TEXT NOT NULL CHECK (read_by <> ''),
  read_on TEXT NOT NULL CHECK (date(read_on, '+0 days') IS read_on)
) STRICT;

CREATE TABLE statement_allergen (
  statement INTEGER NOT NULL REFERENCES statement (id),
  allergen TEXT NOT NULL CHECK (allergen <> ''),
  declared TEXT NOT NULL CHECK (declared IN ('contains', 'may_contain')),
  PRIMARY KEY (statement, allergen)
) STRICT, WITHOUT ROWID;

CREATE TABLE statement_diet (
  statement INTEGER NOT NULL REFERENCES statement (id),
  diet TEXT NOT NULL CHECK (diet IN ('vegan', 'vegetarian', 'pescatarian', 'gluten_free', 'halal', 'kosher')),
  PRIMARY KEY (statement, diet)
) STRICT, WITHOUT ROWID;

-- ---- foods ------------------------------------------------------------------------------------------------------------

CREATE TABLE food (
  key TEXT NOT NULL PRIMARY KEY
    CHECK (key GLOB '[a-z0-9]*' AND key NOT GLOB '*[^a-z0-9-]*' AND length(key) <= 48),
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('food', 'drink', 'water', 'pet_food', 'thing')),
  species TEXT NOT NULL,
  gtin TEXT NOT NULL CHECK (gtin = '' OR (length(gtin) = 14 AND gtin NOT GLOB '*[^0-9]*')),
  unit TEXT NOT NULL,
  servings INTEGER NOT NULL CHECK (servings >= 1),
  mass_g INTEGER CHECK (mass_g >= 0),
  volume_ml INTEGER CHECK (volume_ml >= 0),
  energy_kcal INTEGER CHECK (energy_kcal >= 0),
  label INTEGER UNIQUE REFERENCES statement (id),
  no_cook INTEGER NOT NULL CHECK (no_cook IN (0, 1)),
  needs_hot_water INTEGER NOT NULL CHECK (needs_hot_water IN (0, 1)),
  needs_water_ml INTEGER NOT NULL CHECK (needs_water_ml >= 0),
  needs_opener INTEGER NOT NULL CHECK (needs_opener IN (0, 1)),
  infant_formula INTEGER NOT NULL CHECK (infant_formula IN (0, 1)),
  home_canned INTEGER NOT NULL CHECK (home_canned IN (0, 1)),
  self_filled INTEGER NOT NULL CHECK (self_filled IN (0, 1)),
  staple INTEGER NOT NULL CHECK (staple IN (0, 1)),
  storage_months_short INTEGER CHECK (storage_months_short >= 0),
  storage_months_long INTEGER CHECK (storage_months_long >= 0),
  opened_days INTEGER NOT NULL CHECK (opened_days >= 0),
  storage_source TEXT NOT NULL,
  rotate TEXT NOT NULL CHECK (rotate IN ('auto', 'yes', 'no')),
  par_level INTEGER CHECK (par_level >= 0),
  note TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE food_meal (
  food TEXT NOT NULL REFERENCES food (key),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (food, meal)
) STRICT, WITHOUT ROWID;

CREATE TABLE food_role (
  food TEXT NOT NULL REFERENCES food (key),
  role TEXT NOT NULL CHECK (role IN
    ('main', 'side', 'fruit', 'snack', 'drink', 'comfort', 'pet_meal', 'water', 'thing')),
  PRIMARY KEY (food, role)
) STRICT, WITHOUT ROWID;

CREATE TABLE pack (
  food TEXT NOT NULL REFERENCES food (key),
  number INTEGER NOT NULL CHECK (number >= 1),
  shop TEXT NOT NULL,
  units INTEGER NOT NULL CHECK (units >= 1),
  price_cents INTEGER NOT NULL CHECK (price_cents >= 0),
  PRIMARY KEY (food, number)
) STRICT, WITHOUT ROWID;

-- ---- people -----------------------------------------------------------------------------------------------------------

CREATE TABLE person (
  key TEXT NOT NULL PRIMARY KEY
    CHECK (key GLOB '[a-z0-9]*' AND key NOT GLOB '*[^a-z0-9-]*' AND length(key) <= 48),
  name TEXT NOT NULL,
  species TEXT NOT NULL,
  born TEXT CHECK (date(born, '+0 days') IS born),
  appetite_half_servings INTEGER NOT NULL CHECK (appetite_half_servings >= 0),
  tolerance_half_servings INTEGER CHECK (tolerance_half_servings >= 0),
  energy_kcal INTEGER CHECK (energy_kcal >= 0),
  note TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE person_avoid (
  person TEXT NOT NULL REFERENCES person (key),
  allergen TEXT NOT NULL CHECK (allergen <> ''),
  accept_may_contain INTEGER NOT NULL CHECK (accept_may_contain IN (0, 1)),
  PRIMARY KEY (person, allergen)
) STRICT, WITHOUT ROWID;

CREATE TABLE person_diet (
  person TEXT NOT NULL REFERENCES person (key),
  diet TEXT NOT NULL CHECK (diet IN ('vegan', 'vegetarian', 'pescatarian', 'gluten_free', 'halal', 'kosher')),
  PRIMARY KEY (person, diet)
) STRICT, WITHOUT ROWID;

-- -2 refuses, -1 dislikes, 1 likes, 2 likes very much.
CREATE TABLE rating (
  person TEXT NOT NULL REFERENCES person (key),
  food TEXT NOT NULL REFERENCES food (key),
  rating INTEGER NOT NULL CHECK (rating BETWEEN -2 AND 2),
  PRIMARY KEY (person, food)
) STRICT, WITHOUT ROWID;

-- ---- places, reviews, menus, the table --------------------------------------------------------------------------------

CREATE TABLE place (
  key TEXT NOT NULL PRIMARY KEY
    CHECK (key GLOB '[a-z0-9]*' AND key NOT GLOB '*[^a-z0-9-]*' AND length(key) <= 48),
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('kit', 'box', 'bag', 'pantry', 'shelf')),
  parent TEXT REFERENCES place (key) DEFERRABLE INITIALLY DEFERRED,
  mass_limit_g INTEGER CHECK (mass_limit_g >= 0),
  volume_limit_ml INTEGER CHECK (volume_limit_ml >= 0),
  hot INTEGER NOT NULL CHECK (hot IN (0, 1)),
  note TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE review_rule (
  kit TEXT NOT NULL PRIMARY KEY REFERENCES place (key),
  rule TEXT NOT NULL,
  starts TEXT NOT NULL CHECK (date(starts, '+0 days') IS starts),
  slack_days INTEGER CHECK (slack_days >= 0)
) STRICT, WITHOUT ROWID;

CREATE TABLE menu_line (
  id INTEGER PRIMARY KEY,
  place TEXT NOT NULL REFERENCES place (key),
  everyone INTEGER NOT NULL CHECK (everyone IN (0, 1)),
  day INTEGER NOT NULL CHECK (day >= 0),
  meal TEXT CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  role TEXT CHECK (role IN
    ('main', 'side', 'fruit', 'snack', 'drink', 'comfort', 'pet_meal', 'water', 'thing')),
  food TEXT REFERENCES food (key),
  units INTEGER NOT NULL CHECK (units >= 0),
  ml INTEGER NOT NULL CHECK (ml >= 0),
  priority INTEGER NOT NULL CHECK (priority >= 0),
  CHECK ((role IS NULL) <> (food IS NULL))
) STRICT;

CREATE TABLE menu_line_person (
  menu_line INTEGER NOT NULL REFERENCES menu_line (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (menu_line, person)
) STRICT, WITHOUT ROWID;

CREATE TABLE table_seat (
  weekday TEXT NOT NULL CHECK (weekday IN
    ('monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday')),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (weekday, meal)
) STRICT, WITHOUT ROWID;

CREATE TABLE table_seat_person (
  weekday TEXT NOT NULL,
  meal TEXT NOT NULL,
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (weekday, meal, person),
  FOREIGN KEY (weekday, meal) REFERENCES table_seat (weekday, meal)
) STRICT, WITHOUT ROWID;

CREATE TABLE table_exception (
  id INTEGER PRIMARY KEY,
  from_day TEXT NOT NULL CHECK (date(from_day, '+0 days') IS from_day),
  through_day TEXT NOT NULL CHECK (date(through_day, '+0 days') IS through_day),
  nobody INTEGER NOT NULL CHECK (nobody IN (0, 1)),
  note TEXT NOT NULL,
  CHECK (from_day <= through_day)
) STRICT;

CREATE TABLE table_exception_meal (
  exception INTEGER NOT NULL REFERENCES table_exception (id),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (exception, meal)
) STRICT, WITHOUT ROWID;

CREATE TABLE table_exception_person (
  exception INTEGER NOT NULL REFERENCES table_exception (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (exception, person)
) STRICT, WITHOUT ROWID;

-- ---- lots and the record: only ever added to --------------------------------------------------------------------------

CREATE TABLE lot (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  food TEXT NOT NULL REFERENCES food (key),
  mark_text TEXT NOT NULL,
  mark_kind TEXT NOT NULL CHECK (mark_kind IN
    ('none', 'best_before', 'use_by', 'sell_by', 'packed_on', 'produced_on')),
  mark_precision TEXT NOT NULL CHECK (mark_precision IN ('day', 'month', 'year')),
  mark_day TEXT CHECK (date(mark_day, '+0 days') IS mark_day),
  lot_code TEXT NOT NULL,
  received TEXT NOT NULL CHECK (date(received, '+0 days') IS received),
  label INTEGER UNIQUE REFERENCES statement (id),
  state TEXT NOT NULL CHECK (state IN ('ok', 'doubtful', 'recalled')),
  note TEXT NOT NULL,
  CHECK ((mark_day IS NULL) = (mark_kind = 'none'))
) STRICT;

CREATE TABLE reading (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  lot INTEGER NOT NULL REFERENCES lot (id),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  told_by TEXT NOT NULL,
  mark_text TEXT,
  mark_kind TEXT CHECK (mark_kind IN ('none', 'best_before', 'use_by', 'sell_by', 'packed_on', 'produced_on')),
  mark_precision TEXT CHECK (mark_precision IN ('day', 'month', 'year')),
  mark_day TEXT CHECK (date(mark_day, '+0 days') IS mark_day),
  label INTEGER UNIQUE REFERENCES statement (id),
  state TEXT CHECK (state IN ('ok', 'doubtful', 'recalled')),
  note TEXT NOT NULL,
  CHECK ((mark_text IS NULL) = (mark_kind IS NULL) AND (mark_precision IS NULL) = (mark_kind IS NULL)),
  CHECK ((mark_day IS NULL) = (mark_kind IS NULL OR mark_kind = 'none')),
  CHECK (mark_kind IS NOT NULL OR label IS NOT NULL OR state IS NOT NULL)
) STRICT;

CREATE TABLE entry (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kind TEXT NOT NULL CHECK (kind IN ('received', 'found', 'moved', 'opened', 'eaten', 'given_away', 'thrown_out',
    'lost', 'counted', 'corrected')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  written_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', written_at, '+0 days') IS written_at),
  lot INTEGER REFERENCES lot (id),
  place TEXT REFERENCES place (key),
  opened_on TEXT CHECK (date(opened_on, '+0 days') IS opened_on),
  to_place TEXT REFERENCES place (key),
  half_servings INTEGER NOT NULL CHECK (half_servings >= 0),
  change_half_servings INTEGER NOT NULL,
  corrects INTEGER UNIQUE REFERENCES entry (id),
  who TEXT REFERENCES person (key),
  meal TEXT CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  paid_cents INTEGER CHECK (paid_cents >= 0),
  note TEXT NOT NULL,
  CHECK (kind = 'corrected' OR (lot IS NOT NULL AND place IS NOT NULL)),
  CHECK ((corrects IS NOT NULL) = (kind = 'corrected')),
  CHECK ((to_place IS NOT NULL) = (kind = 'moved')),
  CHECK (change_half_servings = 0 OR kind = 'counted')
) STRICT;

CREATE TABLE review_event (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kit TEXT NOT NULL REFERENCES place (key),
  slot TEXT NOT NULL CHECK (date(slot, '+0 days') IS slot),
  kind TEXT NOT NULL CHECK (kind IN ('started', 'finished', 'skipped', 'moved')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  moved_to TEXT CHECK (date(moved_to, '+0 days') IS moved_to),
  note TEXT NOT NULL,
  CHECK ((moved_to IS NOT NULL) = (kind = 'moved'))
) STRICT;

CREATE TABLE review_mark (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kit TEXT NOT NULL REFERENCES place (key),
  slot TEXT NOT NULL CHECK (date(slot, '+0 days') IS slot),
  lot INTEGER NOT NULL REFERENCES lot (id),
  place TEXT NOT NULL REFERENCES place (key),
  opened_on TEXT CHECK (date(opened_on, '+0 days') IS opened_on),
  what TEXT NOT NULL CHECK (what IN ('there', 'missing', 'damaged', 'redated')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  half_servings INTEGER NOT NULL CHECK (half_servings >= 0),
  mark_text TEXT,
  mark_kind TEXT CHECK (mark_kind IN ('none', 'best_before', 'use_by', 'sell_by', 'packed_on', 'produced_on')),
  mark_precision TEXT CHECK (mark_precision IN ('day', 'month', 'year')),
  mark_day TEXT CHECK (date(mark_day, '+0 days') IS mark_day),
  CHECK ((mark_text IS NULL) = (mark_kind IS NULL) AND (mark_precision IS NULL) = (mark_kind IS NULL)),
  CHECK ((mark_day IS NULL) = (mark_kind IS NULL OR mark_kind = 'none'))
) STRICT;

-- ---- what was shown ---------------------------------------------------------------------------------------------------

CREATE TABLE shown_meal (
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  meal TEXT NOT NULL CHECK (meal IN ('breakfast', 'lunch', 'dinner', 'snack')),
  PRIMARY KEY (day, meal)
) STRICT, WITHOUT ROWID;

CREATE TABLE shown_serving (
  day TEXT NOT NULL,
  meal TEXT NOT NULL,
  number INTEGER NOT NULL CHECK (number >= 1),
  lot INTEGER NOT NULL REFERENCES lot (id),
  place TEXT NOT NULL REFERENCES place (key),
  opened_on TEXT CHECK (date(opened_on, '+0 days') IS opened_on),
  person TEXT NOT NULL REFERENCES person (key),
  half_servings INTEGER NOT NULL CHECK (half_servings >= 0),
  PRIMARY KEY (day, meal, number),
  FOREIGN KEY (day, meal) REFERENCES shown_meal (day, meal)
) STRICT, WITHOUT ROWID;

CREATE TABLE feed_stamp (
  key TEXT NOT NULL,
  generation INTEGER NOT NULL CHECK (generation >= 1),
  in_feed INTEGER NOT NULL CHECK (in_feed IN (0, 1)),
  sequence INTEGER NOT NULL CHECK (sequence >= 0),
  changed_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', changed_at, '+0 days') IS changed_at),
  content TEXT NOT NULL,
  PRIMARY KEY (key, generation)
) STRICT, WITHOUT ROWID;

-- ---- for people with the sqlite3 shell --------------------------------------------------------------------------------

-- What lies where, in half servings. The program does not use it: it replays the record itself.
CREATE VIEW stock AS
SELECT lot, place, opened_on, sum(half_servings) AS half_servings
FROM (
  SELECT id, lot, place, opened_on, half_servings FROM entry WHERE kind IN ('received', 'found')
  UNION ALL
  SELECT id, lot, place, opened_on, -half_servings FROM entry
  WHERE kind IN ('moved', 'eaten', 'given_away', 'thrown_out', 'lost')
  UNION ALL
  SELECT id, lot, to_place, opened_on, half_servings FROM entry WHERE kind = 'moved'
  UNION ALL
  SELECT id, lot, place, NULL, -half_servings FROM entry WHERE kind = 'opened'
  UNION ALL
  SELECT id, lot, place, day, half_servings FROM entry WHERE kind = 'opened'
  UNION ALL
  SELECT id, lot, place, opened_on, change_half_servings FROM entry WHERE kind = 'counted'
)
WHERE id NOT IN (SELECT corrects FROM entry WHERE corrects IS NOT NULL)
GROUP BY lot, place, opened_on
HAVING sum(half_servings) <> 0;

-- ---- what happened stays as it was written ----------------------------------------------------------------------------
-- A number that is not above all earlier ones would replace an earlier line or slip in before it.

CREATE TRIGGER lot_grows BEFORE INSERT ON lot
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM lot)
BEGIN SELECT RAISE(ABORT, 'lots are numbered upwards'); END;
CREATE TRIGGER lot_stays BEFORE UPDATE ON lot
BEGIN SELECT RAISE(ABORT, 'a lot is never changed: add a reading'); END;
CREATE TRIGGER lot_is_kept BEFORE DELETE ON lot
BEGIN SELECT RAISE(ABORT, 'a lot is never deleted: add an entry'); END;

CREATE TRIGGER reading_grows BEFORE INSERT ON reading
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM reading)
BEGIN SELECT RAISE(ABORT, 'readings are numbered upwards'); END;
CREATE TRIGGER reading_stays BEFORE UPDATE ON reading
BEGIN SELECT RAISE(ABORT, 'a reading is never changed: add another'); END;
CREATE TRIGGER reading_is_kept BEFORE DELETE ON reading
BEGIN SELECT RAISE(ABORT, 'a reading is never deleted: add another'); END;

CREATE TRIGGER entry_grows BEFORE INSERT ON entry
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM entry)
BEGIN SELECT RAISE(ABORT, 'entries are numbered upwards'); END;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed: add a correction'); END;
CREATE TRIGGER entry_is_kept BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted: add a correction'); END;

CREATE TRIGGER review_event_grows BEFORE INSERT ON review_event
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM review_event)
BEGIN SELECT RAISE(ABORT, 'review events are numbered upwards'); END;
CREATE TRIGGER review_event_stays BEFORE UPDATE ON review_event
BEGIN SELECT RAISE(ABORT, 'a review event is never changed: add another'); END;
CREATE TRIGGER review_event_is_kept BEFORE DELETE ON review_event
BEGIN SELECT RAISE(ABORT, 'a review event is never deleted: add another'); END;

CREATE TRIGGER review_mark_grows BEFORE INSERT ON review_mark
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM review_mark)
BEGIN SELECT RAISE(ABORT, 'review marks are numbered upwards'); END;
CREATE TRIGGER review_mark_stays BEFORE UPDATE ON review_mark
BEGIN SELECT RAISE(ABORT, 'a review mark is never changed: add another'); END;
CREATE TRIGGER review_mark_is_kept BEFORE DELETE ON review_mark
BEGIN SELECT RAISE(ABORT, 'a review mark is never deleted: add another'); END;

-- A label that was read stays as it was read. A food's own copy of one may go when a newer one takes its place.
CREATE TRIGGER statement_new BEFORE INSERT ON statement
WHEN EXISTS (SELECT 1 FROM statement WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'a statement is never replaced: add another'); END;
CREATE TRIGGER statement_stays BEFORE UPDATE ON statement
BEGIN SELECT RAISE(ABORT, 'a statement is never changed: add another'); END;
CREATE TRIGGER statement_is_kept BEFORE DELETE ON statement
WHEN EXISTS (SELECT 1 FROM lot WHERE label = OLD.id) OR EXISTS (SELECT 1 FROM reading WHERE label = OLD.id)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never deleted: add a reading'); END;

CREATE TRIGGER statement_allergen_new BEFORE INSERT ON statement_allergen
WHEN EXISTS (SELECT 1 FROM lot WHERE label = NEW.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = NEW.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;
CREATE TRIGGER statement_allergen_stays BEFORE UPDATE ON statement_allergen
BEGIN SELECT RAISE(ABORT, 'a statement is never changed: add another'); END;
CREATE TRIGGER statement_allergen_is_kept BEFORE DELETE ON statement_allergen
WHEN EXISTS (SELECT 1 FROM lot WHERE label = OLD.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = OLD.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;

CREATE TRIGGER statement_diet_new BEFORE INSERT ON statement_diet
WHEN EXISTS (SELECT 1 FROM lot WHERE label = NEW.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = NEW.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;
CREATE TRIGGER statement_diet_stays BEFORE UPDATE ON statement_diet
BEGIN SELECT RAISE(ABORT, 'a statement is never changed: add another'); END;
CREATE TRIGGER statement_diet_is_kept BEFORE DELETE ON statement_diet
WHEN EXISTS (SELECT 1 FROM lot WHERE label = OLD.statement)
  OR EXISTS (SELECT 1 FROM reading WHERE label = OLD.statement)
BEGIN SELECT RAISE(ABORT, 'the label of a lot is never changed: add a reading'); END;

-- The identity of the book, and of every event that ever was in its feed, is for ever.
CREATE TRIGGER household_once BEFORE INSERT ON household
WHEN EXISTS (SELECT 1 FROM household)
BEGIN SELECT RAISE(ABORT, 'a book holds one household'); END;
CREATE TRIGGER household_identity BEFORE UPDATE OF id, book_id ON household
WHEN NEW.id IS NOT OLD.id OR NEW.book_id IS NOT OLD.book_id
BEGIN SELECT RAISE(ABORT, 'the identity of a book is never changed'); END;
CREATE TRIGGER household_is_kept BEFORE DELETE ON household
BEGIN SELECT RAISE(ABORT, 'a book holds one household'); END;
CREATE TRIGGER feed_stamp_identity BEFORE UPDATE OF key, generation ON feed_stamp
WHEN NEW.key IS NOT OLD.key OR NEW.generation IS NOT OLD.generation
BEGIN SELECT RAISE(ABORT, 'the identity of an event is never changed'); END;
CREATE TRIGGER feed_stamp_is_kept BEFORE DELETE ON feed_stamp
BEGIN SELECT RAISE(ABORT, 'the identity of an event is never forgotten'); END;

-- 0x4C4C626B, "LLbk", at byte 68 of the file: this SQLite database is a book.
PRAGMA application_id = 1280074347;
PRAGMA user_version = 1;
