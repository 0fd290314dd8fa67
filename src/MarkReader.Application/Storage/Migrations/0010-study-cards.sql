-- What was measured of the printed card and the tape, mm, with which a study's photos are measured; null: nothing.
ALTER TABLE studies ADD COLUMN card TEXT CHECK (card IS NULL OR json_valid(card));
