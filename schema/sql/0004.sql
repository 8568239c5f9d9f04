-- Rackbook, schema version 4: what a handed-out document was about, how a picture is turned, and the
-- bytes of attachments. The notes at the head of 0001.sql hold here too.

ALTER TABLE "issue" ADD COLUMN "asOf" TEXT;  -- the day that the sheet speaks of
ALTER TABLE "issue" ADD COLUMN "asOfEarliest" INTEGER;
ALTER TABLE "issue" ADD COLUMN "asOfLatest" INTEGER;
ALTER TABLE "issue" ADD COLUMN "language" TEXT;  -- a BCP 47 tag
ALTER TABLE "issue" ADD COLUMN
    "transfer" INTEGER REFERENCES "transfer" (key) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "issue" ADD COLUMN "mix" INTEGER REFERENCES "mix" (key) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "issue" ADD COLUMN "layer" INTEGER REFERENCES "layer" (key) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "issue" ADD COLUMN "place" INTEGER REFERENCES "place" (key) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE "issue" ADD COLUMN "namesHolders" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "issue" ADD COLUMN "fileName" TEXT;  -- without its folder

ALTER TABLE "attachment" ADD COLUMN "width_px" INTEGER;  -- of a picture, as its bytes hold it
ALTER TABLE "attachment" ADD COLUMN "height_px" INTEGER;
ALTER TABLE "attachment" ADD COLUMN "orientation" INTEGER;  -- 1 … 8, by the Exif standard

-- The bytes of attachments. No projection of the journal: the sha256 of the attachment's record
-- vouches for them.
CREATE TABLE "attachmentBytes" (
    "sha256" TEXT NOT NULL PRIMARY KEY,  -- of the bytes, 64 lower-case hexadecimal digits
    "bytes" BLOB NOT NULL
) STRICT;
