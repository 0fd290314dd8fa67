-- Originals lie as files beside the database, named by their digest; this table says which ones there are.
CREATE TABLE photos (
  id TEXT PRIMARY KEY CHECK (length(id) = 64),
  format TEXT NOT NULL CHECK (format IN ('jpeg', 'png', 'webp')),
  length INTEGER NOT NULL CHECK (length > 0),
  received_at TEXT NOT NULL
) STRICT;

CREATE INDEX photos_by_time ON photos (received_at, id);

-- What one version of the program made of a photo: a report or a refusal, never both.
CREATE TABLE measurements (
  photo_id TEXT NOT NULL REFERENCES photos (id) ON DELETE CASCADE,
  program_version TEXT NOT NULL,
  measured_at TEXT NOT NULL,
  report TEXT CHECK (report IS NULL OR json_valid(report)),
  refusal TEXT CHECK (refusal IS NULL OR json_valid(refusal)),
  PRIMARY KEY (photo_id, program_version),
  CHECK ((report IS NULL) <> (refusal IS NULL))
) STRICT;

-- Both photos are the same one when it shows both marks. The same inputs under the same version are one row.
CREATE TABLE aims (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  near_photo_id TEXT NOT NULL REFERENCES photos (id) ON DELETE RESTRICT,
  far_photo_id TEXT NOT NULL REFERENCES photos (id) ON DELETE RESTRICT,
  inputs TEXT NOT NULL CHECK (json_valid(inputs)),
  program_version TEXT NOT NULL,
  found_at TEXT NOT NULL,
  report TEXT CHECK (report IS NULL OR json_valid(report)),
  refusal TEXT CHECK (refusal IS NULL OR json_valid(refusal)),
  overlay TEXT,
  overlay_crop TEXT,
  CHECK ((report IS NULL) <> (refusal IS NULL)),
  CHECK ((overlay IS NULL) = (overlay_crop IS NULL)),
  UNIQUE (near_photo_id, far_photo_id, inputs, program_version)
) STRICT;

CREATE INDEX aims_by_far_photo ON aims (far_photo_id);
