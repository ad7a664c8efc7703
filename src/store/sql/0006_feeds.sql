-- The calendar: what it tells, under which addresses it is served, what calendar servers were sent, and what came back from them.

ALTER TABLE household ADD COLUMN feed_detail TEXT NOT NULL DEFAULT 'full' CHECK (feed_detail IN ('full', 'private'));

-- Kinds that are not as usual; usual is: in the calendar, without an alarm.
CREATE TABLE feed_kind (
  kind TEXT NOT NULL PRIMARY KEY CHECK (kind IN ('review', 'eat_soon', 'shop', 'give_away')),
  in_feed INTEGER NOT NULL CHECK (in_feed IN (0, 1)),
  alarm_days INTEGER CHECK (alarm_days BETWEEN 1 AND 30)  -- before the day; NULL: no alarm
) STRICT, WITHOUT ROWID;

CREATE TABLE feed_address (
  id INTEGER PRIMARY KEY CHECK (id >= 1),
  name TEXT NOT NULL CHECK (length(name) > 0),
  token_sha256 TEXT NOT NULL UNIQUE CHECK (length(token_sha256) = 64 AND token_sha256 NOT GLOB '*[^0-9a-f]*'),
  person TEXT REFERENCES person (key),  -- NULL: the whole household
  detail TEXT NOT NULL CHECK (detail IN ('full', 'private')),
  created_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', created_at, '+0 days') IS created_at),
  revoked_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', revoked_at, '+0 days') IS revoked_at)
) STRICT;

CREATE TABLE pushed_item (
  collection TEXT NOT NULL CHECK (length(collection) > 0),  -- address, without name or password
  uid TEXT NOT NULL CHECK (length(uid) > 0),
  href TEXT NOT NULL CHECK (length(href) > 0),
  etag TEXT NOT NULL,
  sent TEXT NOT NULL,
  PRIMARY KEY (collection, uid)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_done (
  uid TEXT NOT NULL PRIMARY KEY CHECK (length(uid) > 0),
  day TEXT NOT NULL CHECK (date(day, '+0 days') IS day),
  what TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TRIGGER feed_address_is_kept BEFORE DELETE ON feed_address
BEGIN SELECT RAISE(ABORT, 'an address is revoked, never forgotten'); END;
CREATE TRIGGER feed_address_identity BEFORE UPDATE OF id, token_sha256 ON feed_address
WHEN NEW.id IS NOT OLD.id OR NEW.token_sha256 IS NOT OLD.token_sha256
BEGIN SELECT RAISE(ABORT, 'the address itself is never changed'); END;
CREATE TRIGGER feed_address_stays_revoked BEFORE UPDATE OF revoked_at ON feed_address
WHEN OLD.revoked_at IS NOT NULL AND NEW.revoked_at IS NOT OLD.revoked_at
BEGIN SELECT RAISE(ABORT, 'a revoked address stays revoked'); END;
CREATE TRIGGER task_done_is_kept BEFORE DELETE ON task_done
BEGIN SELECT RAISE(ABORT, 'what was done is never forgotten'); END;
CREATE TRIGGER task_done_is_fixed BEFORE UPDATE ON task_done
BEGIN SELECT RAISE(ABORT, 'what was done is never changed'); END;

PRAGMA user_version = 6;
