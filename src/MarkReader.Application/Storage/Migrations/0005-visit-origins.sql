-- What a visit is called in every installation that has a copy of it. One that was never handed over has none.
CREATE TABLE visit_origins (
  visit_id INTEGER PRIMARY KEY REFERENCES visits (id) ON DELETE CASCADE,
  origin TEXT NOT NULL CHECK (length(origin) = 32)
) STRICT;

CREATE INDEX visit_origins_by_origin ON visit_origins (origin);
