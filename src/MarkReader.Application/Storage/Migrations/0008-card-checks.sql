-- A check of a printed card: its report, as the command line writes it too. The photos are not kept.
CREATE TABLE card_checks (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  camera_id INTEGER REFERENCES cameras (id) ON DELETE SET NULL,
  report TEXT NOT NULL CHECK (json_valid(report)),
  added_at TEXT NOT NULL,
  request_key TEXT,
  request_digest TEXT
) STRICT;

CREATE UNIQUE INDEX card_checks_by_request ON card_checks (request_key);
CREATE INDEX card_checks_by_camera ON card_checks (camera_id);
