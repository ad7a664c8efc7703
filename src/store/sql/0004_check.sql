-- What the check of a kit needs: bodies, salt, cutlery, small children; and trials, living from a kit for some days.

ALTER TABLE person ADD COLUMN sex TEXT CHECK (sex IN ('female', 'male'));
ALTER TABLE person ADD COLUMN height_cm INTEGER CHECK (height_cm BETWEEN 20 AND 250);
ALTER TABLE person ADD COLUMN mass_g INTEGER CHECK (mass_g >= 1);  -- of the body
ALTER TABLE person ADD COLUMN activity TEXT CHECK (activity IN ('inactive', 'low_active', 'active', 'very_active'));

ALTER TABLE food ADD COLUMN sodium_mg INTEGER CHECK (sodium_mg >= 0);  -- of one unit
ALTER TABLE food ADD COLUMN needs_spoon INTEGER NOT NULL DEFAULT 0 CHECK (needs_spoon IN (0, 1));
ALTER TABLE food ADD COLUMN refrigerate INTEGER NOT NULL DEFAULT 0 CHECK (refrigerate IN (0, 1));
ALTER TABLE food ADD COLUMN choking_risk INTEGER NOT NULL DEFAULT 0 CHECK (choking_risk IN (0, 1));
ALTER TABLE food ADD COLUMN honey INTEGER NOT NULL DEFAULT 0 CHECK (honey IN (0, 1));
ALTER TABLE food ADD COLUMN is_opener INTEGER NOT NULL DEFAULT 0 CHECK (is_opener IN (0, 1));
ALTER TABLE food ADD COLUMN is_cutlery INTEGER NOT NULL DEFAULT 0 CHECK (is_cutlery IN (0, 1));

CREATE TABLE trial (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  kit TEXT NOT NULL REFERENCES place (key),
  from_day TEXT NOT NULL CHECK (date(from_day, '+0 days') IS from_day),
  through_day TEXT NOT NULL CHECK (date(through_day, '+0 days') IS through_day),
  note TEXT NOT NULL,
  CHECK (from_day <= through_day)
) STRICT;

-- Who lived from it; nobody named: everyone.
CREATE TABLE trial_person (
  trial INTEGER NOT NULL REFERENCES trial (id),
  person TEXT NOT NULL REFERENCES person (key),
  PRIMARY KEY (trial, person)
) STRICT, WITHOUT ROWID;

-- What one person said of one food.
CREATE TABLE trial_note (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  trial INTEGER NOT NULL REFERENCES trial (id),
  food TEXT NOT NULL REFERENCES food (key),
  person TEXT NOT NULL REFERENCES person (key),
  verdict TEXT NOT NULL CHECK (verdict IN
    ('liked', 'tired', 'hard_to_open', 'hard_to_prepare', 'needed_water', 'not_enough')),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  note TEXT NOT NULL
) STRICT;

CREATE TABLE trial_end (
  trial INTEGER PRIMARY KEY REFERENCES trial (id),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  note TEXT NOT NULL
) STRICT;

CREATE TRIGGER trial_grows BEFORE INSERT ON trial
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM trial)
BEGIN SELECT RAISE(ABORT, 'trials are numbered upwards'); END;
CREATE TRIGGER trial_stays BEFORE UPDATE ON trial
BEGIN SELECT RAISE(ABORT, 'a trial is never changed'); END;
CREATE TRIGGER trial_is_kept BEFORE DELETE ON trial
BEGIN SELECT RAISE(ABORT, 'a trial is never deleted'); END;
CREATE TRIGGER trial_person_stays BEFORE UPDATE ON trial_person
BEGIN SELECT RAISE(ABORT, 'a trial is never changed'); END;
CREATE TRIGGER trial_person_is_kept BEFORE DELETE ON trial_person
BEGIN SELECT RAISE(ABORT, 'a trial is never changed'); END;
CREATE TRIGGER trial_note_grows BEFORE INSERT ON trial_note
WHEN NEW.id <= (SELECT coalesce(max(id), 0) FROM trial_note)
BEGIN SELECT RAISE(ABORT, 'notes of trials are numbered upwards'); END;
CREATE TRIGGER trial_note_stays BEFORE UPDATE ON trial_note
BEGIN SELECT RAISE(ABORT, 'a note of a trial is never changed: add another'); END;
CREATE TRIGGER trial_note_is_kept BEFORE DELETE ON trial_note
BEGIN SELECT RAISE(ABORT, 'a note of a trial is never deleted: add another'); END;
CREATE TRIGGER trial_end_once BEFORE INSERT ON trial_end
WHEN EXISTS (SELECT 1 FROM trial_end WHERE trial = NEW.trial)
BEGIN SELECT RAISE(ABORT, 'a trial ends once'); END;
CREATE TRIGGER trial_end_stays BEFORE UPDATE ON trial_end
BEGIN SELECT RAISE(ABORT, 'the end of a trial is never changed'); END;
CREATE TRIGGER trial_end_is_kept BEFORE DELETE ON trial_end
BEGIN SELECT RAISE(ABORT, 'the end of a trial is never deleted'); END;

PRAGMA user_version = 4;
