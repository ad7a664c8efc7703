-- Plans as they were last worked out: whoever asks again for the same problem need not solve it again.

CREATE TABLE kept_plan (
  name TEXT PRIMARY KEY CHECK (length(name) > 0),  -- 'eat-down', or 'refill' and the kit
  problem TEXT NOT NULL,                           -- fingerprint of the problem
  plan TEXT NOT NULL
) STRICT;

PRAGMA user_version = 3;
