-- A machine is its document, as it was given; the name is the one in it, or null. The version counts changes.
CREATE TABLE machines (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT CHECK (length(name) > 0),
  document TEXT NOT NULL CHECK (json_valid(document)),
  version INTEGER NOT NULL CHECK (version > 0),
  added_at TEXT NOT NULL,
  changed_at TEXT NOT NULL
) STRICT;
