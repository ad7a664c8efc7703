-- Reviews in the calendar: each by itself, or one repeating event a kit.

ALTER TABLE household ADD COLUMN feed_reviews TEXT NOT NULL DEFAULT 'dated' CHECK (feed_reviews IN ('dated', 'series'));

PRAGMA user_version = 7;
