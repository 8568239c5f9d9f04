-- Rackbook, schema version 5: indexes alone, so that what belongs to one edition, print, mix or lot
-- is found without reading the book. No table and no row changes.

CREATE INDEX "weighing_at" ON "weighing" ("at");
CREATE INDEX "weighing_lot" ON "weighing" ("lot") WHERE "lot" IS NOT NULL;
CREATE INDEX "pull_portion" ON "pull" ("portion") WHERE "portion" IS NOT NULL;
CREATE INDEX "mix_edition" ON "mix" ("edition") WHERE "edition" IS NOT NULL;
CREATE INDEX "attachment_edition" ON "attachment" ("edition") WHERE "edition" IS NOT NULL;
CREATE INDEX "attachment_impression" ON "attachment" ("impression") WHERE "impression" IS NOT NULL;
CREATE INDEX "attachment_sha256" ON "attachment" ("sha256");
CREATE INDEX "pull_start" ON "pull" ("startEarliest");
CREATE INDEX "pull_startLatest" ON "pull" ("startLatest");
CREATE INDEX "transfer_dueOn" ON "transfer" ("dueOn") WHERE "dueOn" IS NOT NULL;
CREATE INDEX "attachment_drawdown" ON "attachment" ("drawdown") WHERE "drawdown" IS NOT NULL;
