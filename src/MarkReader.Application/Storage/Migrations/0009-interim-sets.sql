-- A set of reference photos with what the version that kept it measured in them, as the command line writes it too.
CREATE TABLE interim_sets (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL CHECK (length(name) > 0),
  record TEXT NOT NULL CHECK (json_valid(record)),
  -- Asked for by every page that says whether a check is due: the records themselves are long.
  program TEXT NOT NULL GENERATED ALWAYS AS (json_extract(record, '$.program')) STORED,
  request_key TEXT,
  request_digest TEXT
) STRICT;

CREATE UNIQUE INDEX interim_sets_by_request ON interim_sets (request_key);

-- Its photos, which are kept as all others are; the record tells them by their digest, which is the id.
CREATE TABLE interim_photos (
  set_id INTEGER NOT NULL REFERENCES interim_sets (id) ON DELETE CASCADE,
  photo_id TEXT NOT NULL REFERENCES photos (id) ON DELETE RESTRICT,
  PRIMARY KEY (set_id, photo_id)
) STRICT;

CREATE INDEX interim_photos_by_photo ON interim_photos (photo_id);

-- What a later version measured in them, one for each version.
CREATE TABLE interim_checks (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  set_id INTEGER NOT NULL REFERENCES interim_sets (id) ON DELETE CASCADE,
  record TEXT NOT NULL CHECK (json_valid(record)),
  program TEXT NOT NULL GENERATED ALWAYS AS (json_extract(record, '$.program')) STORED
) STRICT;

CREATE UNIQUE INDEX interim_checks_by_set ON interim_checks (set_id, program);
