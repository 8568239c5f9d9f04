-- Rackbook, schema version 2: balances, and stock-takes of lots. The notes at the head of 0001.sql
-- hold here too.

CREATE TABLE "balance" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "name" TEXT NOT NULL,
    "readability_g" REAL NOT NULL,  -- the step of its display
    "repeatability_g" REAL,  -- standard deviation of one load weighed many times
    "capacity_g" REAL,  -- the most it can carry, dish and all
    "retiredOn" TEXT, "retiredOnEarliest" INTEGER, "retiredOnLatest" INTEGER,
    "note" TEXT
) STRICT;

-- What it was weighed on.
ALTER TABLE "weighing" ADD COLUMN
    "balance" INTEGER REFERENCES "balance" (key) DEFERRABLE INITIALLY DEFERRED;

CREATE TABLE "stockTake" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "lot" INTEGER NOT NULL REFERENCES "lot" (key) DEFERRABLE INITIALLY DEFERRED,
    "at" TEXT NOT NULL, "atEarliest" INTEGER NOT NULL, "atLatest" INTEGER NOT NULL,
    "mass_g" REAL NOT NULL,  -- of what is still usable, without the container, 0 or more
    "balance" INTEGER REFERENCES "balance" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;
