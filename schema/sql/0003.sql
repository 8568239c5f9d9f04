-- Rackbook, schema version 3: the weather of days, measured light, the skies of months, and the
-- glass that the light of a place comes through. The notes at the head of 0001.sql hold here too.

CREATE TABLE "book_monthlySkies" (
    "book" INTEGER NOT NULL REFERENCES "book" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "month" INTEGER NOT NULL,  -- 1 … 12
    "sunnyShare" REAL NOT NULL,  -- of its days, 0 … 1
    "overcastShare" REAL NOT NULL,  -- 0 … 1; the rest is broken cloud
    "source" TEXT,
    PRIMARY KEY ("book", position)
) STRICT, WITHOUT ROWID;

-- What daylight comes through; open: no glass between.
ALTER TABLE "place_light" ADD COLUMN
    "glass" TEXT CHECK ("glass" IN ('open', 'clearSingle', 'clearDouble', 'coatedDouble', 'laminated', 'filtering'));
-- Of near ultraviolet, 315 … 400 nm, 0 … 1.
ALTER TABLE "place_light" ADD COLUMN "glassUltravioletTransmittance" REAL;

CREATE TABLE "weather" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "on" TEXT NOT NULL, "onEarliest" INTEGER NOT NULL, "onLatest" INTEGER NOT NULL,  -- one day
    "sky" TEXT CHECK ("sky" IN ('sunny', 'broken', 'overcast')),
    "oktas" REAL,  -- eighths of the sky that were covered, 0 … 8
    "note" TEXT
) STRICT;

CREATE TABLE "metering" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "place" INTEGER NOT NULL REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "from" TEXT NOT NULL, "fromEarliest" INTEGER NOT NULL, "fromLatest" INTEGER NOT NULL,
    "to" TEXT NOT NULL, "toEarliest" INTEGER NOT NULL, "toLatest" INTEGER NOT NULL,
    "exposure_lxh" REAL,  -- mean lux times the hours covered
    "nearUltraviolet_Whm2" REAL,  -- UV-A, 315 … 400 nm
    "covered_h" REAL,  -- how much of the time the instrument saw; absent: all of it
    "instrument" TEXT,
    "note" TEXT
) STRICT;
