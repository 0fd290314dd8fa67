-- Who does the work; the practice machine of a visit without a real one; the request that began it, so that a repeated one begins no second.
ALTER TABLE visits ADD COLUMN done_by TEXT NOT NULL DEFAULT '';
ALTER TABLE visits ADD COLUMN practice TEXT CHECK (practice IS NULL OR json_valid(practice));
ALTER TABLE visits ADD COLUMN request_key TEXT;
ALTER TABLE visits ADD COLUMN request_digest TEXT;
CREATE UNIQUE INDEX visits_by_request ON visits (request_key);

ALTER TABLE machines ADD COLUMN request_key TEXT;
ALTER TABLE machines ADD COLUMN request_digest TEXT;
CREATE UNIQUE INDEX machines_by_request ON machines (request_key);
