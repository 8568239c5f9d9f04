-- Rackbook, schema version 1. SQLite 3.37 or later (STRICT tables).
--
-- The journal is the record. Every other table is a projection of it: it can be emptied and made
-- again from the journal, and must come out equal.
--
-- A record kind has a table of its name; "key" is the book's own row number, "id" the record's
-- lasting identity, "entry" the journal entry that its present state comes from. A list inside a
-- record has a table <kind>_<field>, in the order of "position". A date has three columns: as
-- written (EDTF), and the first and last minute it can mean on the studio's wall clock, counted
-- from 1970-01-01T00:00. Names and units are those of the record files; see ../README.md.

PRAGMA application_id = 0x5261636b;  -- "Rack"

CREATE TABLE journal (
    entry INTEGER PRIMARY KEY,    -- 1, 2, 3 … without a gap
    intake INTEGER NOT NULL,      -- entries that were recorded together
    recordedAt TEXT NOT NULL,     -- UTC, ISO 8601
    recordedBy TEXT NOT NULL,
    happenedAt TEXT,              -- EDTF; absent for things that have no moment
    action TEXT NOT NULL,         -- record: new; update: the thing changed; correct: it was
                                  -- wrong; strike: it should never have been recorded
    kind TEXT NOT NULL,
    id TEXT NOT NULL,
    earlier INTEGER REFERENCES journal (entry),  -- the entry that this one takes the place of
    reason TEXT,
    salt BLOB,                    -- 16 random bytes; NULL with the payload
    payload TEXT,                 -- the whole record as JSON; NULL where it had to be forgotten
    payloadHash BLOB NOT NULL,    -- SHA-256 of salt and payload
    previousHash BLOB NOT NULL,   -- hash of the entry before this one; 32 zero bytes for the first
    hash BLOB NOT NULL            -- SHA-256 over all of the above but salt and payload
) STRICT;

CREATE TABLE "book" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "studio" TEXT NOT NULL,  -- the studio's name as it stands on sheets
    "latitude_deg" REAL,  -- −90 … 90, north positive
    "longitude_deg" REAL,  -- −180 … 180, east positive
    "timeZone" TEXT NOT NULL,  -- IANA name
    "lengthUnit" TEXT NOT NULL CHECK ("lengthUnit" IN ('mm', 'in')),  -- for display; records hold mm
    "currency" TEXT,  -- ISO 4217 code
    "note" TEXT
) STRICT;

CREATE TABLE "book_houseRules" (
    "book" INTEGER NOT NULL REFERENCES "book" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "rule" TEXT NOT NULL,
    "value" REAL NOT NULL,
    "origin" TEXT NOT NULL CHECK ("origin" IN ('studioRule', 'commonPractice', 'fitted', 'publishedSource')),
    "source" TEXT,
    PRIMARY KEY ("book", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "party" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "name" TEXT NOT NULL,
    "contact" TEXT,  -- private: leaves the book only when asked for
    "contactWithheld" INTEGER NOT NULL,  -- a contact exists and was left out of this copy
    "note" TEXT
) STRICT;

CREATE TABLE "party_roles" (
    "party" INTEGER NOT NULL REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "value" TEXT NOT NULL CHECK ("value" IN ('maker', 'printer', 'publisher', 'holder', 'supplier')),
    PRIMARY KEY ("party", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "place" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "name" TEXT NOT NULL,
    "placeKind" TEXT NOT NULL CHECK ("placeKind" IN ('room', 'rack', 'wall', 'drawer', 'box', 'shelf', 'gallery', 'holderAddress', 'other')),
    "within" INTEGER REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "holder" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,  -- whose place it is, where not the studio's
    "capacity" INTEGER,  -- impressions
    "note" TEXT
) STRICT;

CREATE TABLE "place_light" (  -- empty: not known
    "place" INTEGER NOT NULL REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "from" TEXT, "fromEarliest" INTEGER, "fromLatest" INTEGER,  -- absent: since always
    "lightKind" TEXT NOT NULL CHECK ("lightKind" IN ('dark', 'daylight', 'outdoors', 'artificial', 'metered')),
    "windowAzimuth_deg" REAL,  -- the way the window looks, 0 north … 90 east
    "daylightFactor_pct" REAL,  -- 0 … 100
    "glassTransmittance" REAL,  -- visible, 0 … 1
    "directSun" INTEGER,
    "illuminance_lx" REAL,  -- typical, where it was measured
    "note" TEXT,
    PRIMARY KEY ("place", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "edition" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "code" TEXT NOT NULL,  -- short, on labels and in lists; unique in a book
    "title" TEXT NOT NULL,
    "maker" INTEGER NOT NULL REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "printer" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "publisher" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "process" TEXT NOT NULL,
    "year" TEXT, "yearEarliest" INTEGER, "yearLatest" INTEGER,
    "imageHeight_mm" REAL,
    "imageWidth_mm" REAL,
    "sheetHeight_mm" REAL,
    "sheetWidth_mm" REAL,
    "paper" TEXT,
    "declaredNumbered" INTEGER,  -- the size given in the statement, 0 … 100,000
    "declaredTotal" INTEGER,  -- all signed impressions, where the statement gives it
    "statement" TEXT,
    "status" TEXT NOT NULL CHECK ("status" IN ('open', 'closed')),
    "promisedMatrixFate" TEXT CHECK ("promisedMatrixFate" IN ('kept', 'cutAway', 'cancelled', 'effaced', 'destroyed')),
    "promisedBy" TEXT, "promisedByEarliest" INTEGER, "promisedByLatest" INTEGER,
    "note" TEXT
) STRICT;

CREATE TABLE "edition_declaredProofs" (
    "edition" INTEGER NOT NULL REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "designationKind" TEXT NOT NULL CHECK ("designationKind" IN ('numbered', 'artistsProof', 'bonATirer', 'printersProof', 'horsCommerce', 'trialProof', 'workingProof', 'stateProof', 'separationProof', 'colourProof', 'progressiveProof', 'cancellationProof', 'presentationProof', 'archive')),
    "count" INTEGER NOT NULL,  -- 1 or more
    PRIMARY KEY ("edition", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "edition_inscriptions" (
    "edition" INTEGER NOT NULL REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "where" TEXT NOT NULL,
    "medium" TEXT NOT NULL,
    PRIMARY KEY ("edition", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "edition_disclosures" (
    "edition" INTEGER NOT NULL REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "item" TEXT NOT NULL,
    "answer" TEXT NOT NULL CHECK ("answer" IN ('stated', 'notApplicable', 'notKnown')),
    "text" TEXT,
    PRIMARY KEY ("edition", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "block" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "edition" INTEGER NOT NULL REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    "name" TEXT NOT NULL,
    "material" TEXT,
    "role" TEXT,  -- key block, colour block, reduction block …
    "fate" TEXT NOT NULL CHECK ("fate" IN ('kept', 'cutAway', 'cancelled', 'effaced', 'destroyed')),
    "fateOn" TEXT, "fateOnEarliest" INTEGER, "fateOnLatest" INTEGER,
    "note" TEXT
) STRICT;

CREATE TABLE "block_states" (
    "block" INTEGER NOT NULL REFERENCES "block" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "ordinal" INTEGER NOT NULL,  -- 1, 2, 3 … in the order of cutting
    "words" TEXT NOT NULL,
    "cutOn" TEXT, "cutOnEarliest" INTEGER, "cutOnLatest" INTEGER,
    PRIMARY KEY ("block", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "lot" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "lotKind" TEXT NOT NULL CHECK ("lotKind" IN ('ink', 'base', 'drier', 'modifier')),
    "colourWords" TEXT NOT NULL,  -- what the container says and how it looks
    "container" TEXT CHECK ("container" IN ('tin', 'tube', 'cartridge', 'jar', 'bottle', 'other')),
    "netMass_g" REAL,
    "density_gml" REAL,
    "price" REAL,  -- in the book's currency
    "supplier" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "boughtOn" TEXT, "boughtOnEarliest" INTEGER, "boughtOnLatest" INTEGER,
    "openedOn" TEXT, "openedOnEarliest" INTEGER, "openedOnLatest" INTEGER,
    "finishedOn" TEXT, "finishedOnEarliest" INTEGER, "finishedOnLatest" INTEGER,
    "place" INTEGER REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "safetySheet" TEXT,  -- the user's own safety data sheet and its date
    "careNotes" TEXT,
    "note" TEXT
) STRICT;

CREATE TABLE "lot_pigments" (  -- Colour Index generic names: PB15:3
    "lot" INTEGER NOT NULL REFERENCES "lot" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "value" TEXT NOT NULL,
    PRIMARY KEY ("lot", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "lot_drierMetals" (
    "lot" INTEGER NOT NULL REFERENCES "lot" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "metal" TEXT NOT NULL,  -- cobalt, manganese, zirconium …
    "contentShare" REAL,  -- 0 … 1
    PRIMARY KEY ("lot", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "mix" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "name" TEXT NOT NULL,
    "purpose" TEXT NOT NULL CHECK ("purpose" IN ('stock', 'letDown', 'portion')),
    "drierFree" INTEGER NOT NULL,  -- declared: no drier may go in
    "edition" INTEGER REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    "madeOn" TEXT, "madeOnEarliest" INTEGER, "madeOnLatest" INTEGER,
    "finishedOn" TEXT, "finishedOnEarliest" INTEGER, "finishedOnLatest" INTEGER,
    "place" INTEGER REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;

CREATE TABLE "weighing" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "mix" INTEGER NOT NULL REFERENCES "mix" (key) DEFERRABLE INITIALLY DEFERRED,
    "act" TEXT NOT NULL CHECK ("act" IN ('add', 'withdraw', 'discard')),
    "at" TEXT NOT NULL, "atEarliest" INTEGER NOT NULL, "atLatest" INTEGER NOT NULL,
    "sequence" INTEGER NOT NULL,  -- order among weighings of the same time, 0 … 100,000
    "lot" INTEGER REFERENCES "lot" (key) DEFERRABLE INITIALLY DEFERRED,  -- where an addition comes from: a lot …
    "fromMix" INTEGER REFERENCES "mix" (key) DEFERRABLE INITIALLY DEFERRED,  -- … or another mix
    "mass_g" REAL,  -- above 0; absent where it is not known
    "massLow_g" REAL,  -- bounds of a badly known mass, 0 or more
    "massHigh_g" REAL,
    "note" TEXT
) STRICT;

CREATE TABLE "layer" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "edition" INTEGER NOT NULL REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    "ordinal" INTEGER NOT NULL,  -- 1 is printed first; unique in an edition
    "block" INTEGER REFERENCES "block" (key) DEFERRABLE INITIALLY DEFERRED,
    "blockState" INTEGER,
    "colourWords" TEXT NOT NULL,
    "mix" INTEGER REFERENCES "mix" (key) DEFERRABLE INITIALLY DEFERRED,  -- the stock mix or let-down it is printed from
    "coverage" REAL,  -- inked share of the image, 0 … 1
    "filmWeight_gm2" REAL,  -- wet, aimed at
    "extenderShare" REAL,  -- as remembered, where no weighings exist, 0 … 1
    "reading" INTEGER REFERENCES "reading" (key) DEFERRABLE INITIALLY DEFERRED,  -- the colour it is held to
    "note" TEXT
) STRICT;

CREATE TABLE "impression" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "edition" INTEGER NOT NULL REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    "workingNumber" INTEGER NOT NULL,  -- pencilled while printing; unique in an edition, 1 … 100,000
    "designation" TEXT,  -- as written: 7/30, AP II/III, BAT
    "designationKind" TEXT CHECK ("designationKind" IN ('numbered', 'artistsProof', 'bonATirer', 'printersProof', 'horsCommerce', 'trialProof', 'workingProof', 'stateProof', 'separationProof', 'colourProof', 'progressiveProof', 'cancellationProof', 'presentationProof', 'archive')),
    "signedOn" TEXT, "signedOnEarliest" INTEGER, "signedOnLatest" INTEGER,
    "fate" TEXT NOT NULL CHECK ("fate" IN ('kept', 'spoiled', 'destroyed')),
    "fateOn" TEXT, "fateOnEarliest" INTEGER, "fateOnLatest" INTEGER,
    "holder" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;

CREATE TABLE "pull" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "layer" INTEGER NOT NULL REFERENCES "layer" (key) DEFERRABLE INITIALLY DEFERRED,
    "start" TEXT NOT NULL, "startEarliest" INTEGER NOT NULL, "startLatest" INTEGER NOT NULL,
    "end" TEXT, "endEarliest" INTEGER, "endLatest" INTEGER,
    "portion" INTEGER REFERENCES "mix" (key) DEFERRABLE INITIALLY DEFERRED,
    "printer" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "press" TEXT,  -- the press, or "hand" and with what
    "packing" TEXT,
    "temperature_C" REAL,
    "humidity_pct" REAL,  -- relative, 0 … 100
    "inkBefore_g" REAL,  -- ink on the slab before and after; the difference
    "inkAfter_g" REAL,  -- left the portion
    "note" TEXT
) STRICT;

CREATE TABLE "pull_impressions" (  -- every sheet printed, spoils among them
    "pull" INTEGER NOT NULL REFERENCES "pull" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("pull", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "pull_impressions_impression" ON "pull_impressions" (impression, "pull");

CREATE TABLE "pull_spoiled" (
    "pull" INTEGER NOT NULL REFERENCES "pull" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("pull", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "pull_spoiled_impression" ON "pull_spoiled" (impression, "pull");

CREATE TABLE "drawdown" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "mix" INTEGER REFERENCES "mix" (key) DEFERRABLE INITIALLY DEFERRED,  -- exactly one of mix and lot
    "lot" INTEGER REFERENCES "lot" (key) DEFERRABLE INITIALLY DEFERRED,
    "substrate" TEXT NOT NULL,
    "filmWeight_gm2" REAL,
    "madeOn" TEXT, "madeOnEarliest" INTEGER, "madeOnLatest" INTEGER,
    "place" INTEGER REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;

CREATE TABLE "reading" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "drawdown" INTEGER REFERENCES "drawdown" (key) DEFERRABLE INITIALLY DEFERRED,  -- exactly one of drawdown, impression and paper
    "impression" INTEGER REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    "paper" TEXT,
    "takenOn" TEXT, "takenOnEarliest" INTEGER, "takenOnLatest" INTEGER,
    "labL" REAL,  -- CIELAB, 0 … 100
    "labA" REAL,  -- −200 … 200
    "labB" REAL,
    "spectrumStart_nm" REAL,  -- 300 … 830
    "spectrumStep_nm" REAL,  -- 1 … 20
    "illuminant" TEXT CHECK ("illuminant" IN ('D50', 'D65', 'A')),
    "observer" TEXT CHECK ("observer" IN ('2deg', '10deg')),
    "geometry" TEXT,
    "condition" TEXT CHECK ("condition" IN ('M0', 'M1', 'M2', 'M3')),
    "backing" TEXT CHECK ("backing" IN ('white', 'black', 'self')),
    "instrument" TEXT,
    "note" TEXT
) STRICT;

CREATE TABLE "reading_spectrum" (  -- reflectance as a fraction, 0 … 1.2
    "reading" INTEGER NOT NULL REFERENCES "reading" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "value" REAL NOT NULL,
    PRIMARY KEY ("reading", position)
) STRICT, WITHOUT ROWID;

CREATE TABLE "issue" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "sheetKind" TEXT NOT NULL,  -- the name of the sheet's template: edition, readiness …
    "issuedOn" TEXT NOT NULL, "issuedOnEarliest" INTEGER NOT NULL, "issuedOnLatest" INTEGER NOT NULL,
    "recipient" INTEGER REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "edition" INTEGER REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,
    "contentSha256" TEXT,  -- of the facts on it
    "fileSha256" TEXT,  -- of the PDF
    "note" TEXT
) STRICT;

CREATE TABLE "issue_impressions" (
    "issue" INTEGER NOT NULL REFERENCES "issue" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("issue", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "issue_impressions_impression" ON "issue_impressions" (impression, "issue");

CREATE TABLE "move" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "from" INTEGER REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "to" INTEGER NOT NULL REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED,
    "at" TEXT NOT NULL, "atEarliest" INTEGER NOT NULL, "atLatest" INTEGER NOT NULL,
    "until" TEXT, "untilEarliest" INTEGER, "untilLatest" INTEGER,  -- when they had left again, where no later move says it
    "why" TEXT NOT NULL CHECK ("why" IN ('hang', 'store', 'consign', 'lend', 'sell', 'give', 'return', 'destroy', 'other')),
    "interleaved" INTEGER NOT NULL,  -- under interleaving or stacked: no light reaches the face
    "document" INTEGER REFERENCES "issue" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;

CREATE TABLE "move_impressions" (
    "move" INTEGER NOT NULL REFERENCES "move" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("move", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "move_impressions_impression" ON "move_impressions" (impression, "move");

CREATE TABLE "look" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "at" TEXT NOT NULL, "atEarliest" INTEGER NOT NULL, "atLatest" INTEGER NOT NULL,
    "touch" TEXT CHECK ("touch" IN ('wet', 'tacky', 'dry')),  -- at least one of touch and colour
    "colour" TEXT CHECK ("colour" IN ('turned', 'returning', 'true')),
    "reading" INTEGER REFERENCES "reading" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;

CREATE TABLE "look_impressions" (  -- those looked at
    "look" INTEGER NOT NULL REFERENCES "look" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("look", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "look_impressions_impression" ON "look_impressions" (impression, "look");

CREATE TABLE "look_standsFor" (  -- others that this sample is taken to speak for
    "look" INTEGER NOT NULL REFERENCES "look" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("look", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "look_standsFor_impression" ON "look_standsFor" (impression, "look");

CREATE TABLE "transfer" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "transferKind" TEXT NOT NULL CHECK ("transferKind" IN ('consignment', 'sale', 'loan', 'gift', 'return')),
    "giver" INTEGER NOT NULL REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "receiver" INTEGER NOT NULL REFERENCES "party" (key) DEFERRABLE INITIALLY DEFERRED,
    "agreedOn" TEXT NOT NULL, "agreedOnEarliest" INTEGER NOT NULL, "agreedOnLatest" INTEGER NOT NULL,
    "dueOn" TEXT, "dueOnEarliest" INTEGER, "dueOnLatest" INTEGER,  -- when a consignment or loan ends
    "price" REAL,  -- for all impressions together
    "currency" TEXT,
    "terms" TEXT,
    "note" TEXT
) STRICT;

CREATE TABLE "transfer_impressions" (
    "transfer" INTEGER NOT NULL REFERENCES "transfer" (key) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    "impression" INTEGER NOT NULL REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY ("transfer", position)
) STRICT, WITHOUT ROWID;

CREATE INDEX "transfer_impressions_impression" ON "transfer_impressions" (impression, "transfer");

CREATE TABLE "attachment" (
    key INTEGER PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL UNIQUE,
    "entry" INTEGER NOT NULL REFERENCES journal (entry),
    "sha256" TEXT NOT NULL,  -- 64 lower-case hexadecimal digits
    "mediaType" TEXT NOT NULL,  -- image/jpeg, image/png, application/pdf …
    "caption" TEXT,
    "takenOn" TEXT, "takenOnEarliest" INTEGER, "takenOnLatest" INTEGER,
    "edition" INTEGER REFERENCES "edition" (key) DEFERRABLE INITIALLY DEFERRED,  -- at most one of these three
    "impression" INTEGER REFERENCES "impression" (key) DEFERRABLE INITIALLY DEFERRED,
    "drawdown" INTEGER REFERENCES "drawdown" (key) DEFERRABLE INITIALLY DEFERRED,
    "note" TEXT
) STRICT;

-- For the questions that are asked daily.
CREATE INDEX "journal_struck" ON journal (kind, id) WHERE action = 'strike';
CREATE INDEX "edition_code" ON "edition" ("code");
CREATE INDEX "block_edition" ON "block" ("edition");
CREATE INDEX "layer_edition" ON "layer" ("edition", "ordinal");
CREATE INDEX "impression_edition" ON "impression" ("edition", "workingNumber");
CREATE INDEX "weighing_mix" ON "weighing" ("mix");
CREATE INDEX "weighing_fromMix" ON "weighing" ("fromMix") WHERE "fromMix" IS NOT NULL;
CREATE INDEX "pull_layer" ON "pull" ("layer");
