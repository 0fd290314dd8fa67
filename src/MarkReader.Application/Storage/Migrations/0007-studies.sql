-- A study of readings (kind marks) or of the scatter of pulses (kind pulses), with its plan. Lengths in mm; people is a list of names as JSON, empty for pulses;
-- count is photos for each of them, or pulses. A table of readings is kept as it was sent, in place of photos. The version counts changes.
CREATE TABLE studies (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  kind TEXT NOT NULL CHECK (kind IN ('marks', 'pulses')),
  name TEXT NOT NULL CHECK (length(name) > 0),
  tolerance REAL,
  path REAL,
  people TEXT NOT NULL CHECK (json_valid(people)),
  count INTEGER NOT NULL CHECK (count > 0),
  readings TEXT,
  readings_per_photo INTEGER NOT NULL DEFAULT 0,
  version INTEGER NOT NULL CHECK (version > 0),
  begun_at TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  request_key TEXT,
  request_digest TEXT
) STRICT;

CREATE UNIQUE INDEX studies_by_request ON studies (request_key);

-- Photos: the marks that were measured in each, or why none were. The photos themselves are not kept; the digest tells one that is sent again.
CREATE TABLE study_photos (
  study_id INTEGER NOT NULL REFERENCES studies (id) ON DELETE CASCADE,
  number INTEGER NOT NULL CHECK (number > 0),
  person TEXT NOT NULL,
  digest TEXT NOT NULL CHECK (length(digest) = 64),
  file TEXT NOT NULL,
  added_at TEXT NOT NULL,
  marks TEXT CHECK (marks IS NULL OR json_valid(marks)),
  refusal TEXT CHECK (refusal IS NULL OR json_valid(refusal)),
  PRIMARY KEY (study_id, number),
  UNIQUE (study_id, digest),
  CHECK ((marks IS NULL) <> (refusal IS NULL))
) STRICT;
