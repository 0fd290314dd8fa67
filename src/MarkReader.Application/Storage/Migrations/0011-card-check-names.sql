-- What a check of a card is called; empty: nothing.
ALTER TABLE card_checks ADD COLUMN name TEXT NOT NULL DEFAULT '';
