-- A visit keeps its own copy of the machine's document: later changes of the machine do not change what was done.
-- The version counts events that were added or taken back.
CREATE TABLE visits (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  machine_id INTEGER REFERENCES machines (id) ON DELETE SET NULL,
  machine_name TEXT NOT NULL,
  machine TEXT NOT NULL CHECK (json_valid(machine)),
  note TEXT NOT NULL,
  version INTEGER NOT NULL CHECK (version > 0),
  begun_at TEXT NOT NULL,
  changed_at TEXT NOT NULL
) STRICT;

CREATE INDEX visits_by_machine ON visits (machine_id);

-- Events in their order. One that was taken back stays, with the version from which it no longer counts.
-- The key and the digest of what was sent tell a repeated request from a new one.
CREATE TABLE visit_events (
  visit_id INTEGER NOT NULL REFERENCES visits (id) ON DELETE CASCADE,
  number INTEGER NOT NULL CHECK (number > 0),
  event TEXT NOT NULL CHECK (json_valid(event)),
  photo_id TEXT REFERENCES photos (id) ON DELETE RESTRICT,
  request_key TEXT NOT NULL,
  request_digest TEXT NOT NULL CHECK (length(request_digest) = 64),
  added_at TEXT NOT NULL,
  added_version INTEGER NOT NULL,
  taken_back_at TEXT,
  taken_back_version INTEGER CHECK (taken_back_version > added_version),
  PRIMARY KEY (visit_id, number),
  UNIQUE (visit_id, request_key),
  CHECK ((taken_back_at IS NULL) = (taken_back_version IS NULL))
) STRICT;

CREATE INDEX visit_events_by_photo ON visit_events (photo_id);
