-- A camera is its profile, as the command line writes it too; with what the calibration said of it, which a profile from a file has not.
CREATE TABLE cameras (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL UNIQUE CHECK (length(name) > 0),
  profile TEXT NOT NULL CHECK (json_valid(profile)),
  report TEXT CHECK (report IS NULL OR json_valid(report)),
  version INTEGER NOT NULL CHECK (version > 0),
  added_at TEXT NOT NULL,
  last_used_at TEXT,
  request_key TEXT,
  request_digest TEXT
) STRICT;

CREATE UNIQUE INDEX cameras_by_request ON cameras (request_key);

-- A calibration that is being worked on, or that gave the camera. The version counts changes.
CREATE TABLE calibrations (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  version INTEGER NOT NULL CHECK (version > 0),
  begun_at TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  camera_id INTEGER REFERENCES cameras (id) ON DELETE SET NULL,
  request_key TEXT,
  request_digest TEXT
) STRICT;

CREATE UNIQUE INDEX calibrations_by_request ON calibrations (request_key);
CREATE INDEX calibrations_by_camera ON calibrations (camera_id);

-- Photos of the board: what was measured in each, or why nothing was. The photos themselves are not kept; the digest tells one that is sent again.
CREATE TABLE calibration_photos (
  calibration_id INTEGER NOT NULL REFERENCES calibrations (id) ON DELETE CASCADE,
  number INTEGER NOT NULL CHECK (number > 0),
  digest TEXT NOT NULL CHECK (length(digest) = 64),
  file TEXT NOT NULL,
  added_at TEXT NOT NULL,
  board TEXT CHECK (board IS NULL OR json_valid(board)),
  refusal TEXT CHECK (refusal IS NULL OR json_valid(refusal)),
  PRIMARY KEY (calibration_id, number),
  UNIQUE (calibration_id, digest),
  CHECK ((board IS NULL) <> (refusal IS NULL))
) STRICT;
