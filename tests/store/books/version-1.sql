-- The rows of a book of version 1, as rackbook wrote them. Invented.
BEGIN;
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (1, 1, '2026-01-05T08:00:00Z', 'tests', 'record', 'book', 'studio', X'E914E769E5B567D40C8AA49FDF28C1E1', '{"record":"book","id":"studio","studio":"A shed of ours (invented)","timeZone":"Europe/Copenhagen","lengthUnit":"mm"}', X'9E60BE6CDF1D84E3CDF43F237C8BE51B4B139594F65144AEA02DC6CF0BAE42C8', X'0000000000000000000000000000000000000000000000000000000000000000', X'31FB0B02E90CAD6BCD243BDC9E72DFA14E6BDDE351C3B2D6F9C0FA306056B394');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (2, 1, '2026-01-05T08:00:00Z', 'tests', 'record', 'party', 'maren', X'2875AA0B670209BFAB8B8CC1C907D4EE', '{"record":"party","id":"maren","name":"Maren","roles":["maker"]}', X'DA741364577F19BCEDAEC7B1BFFCCFDAEEDE62F33BE2FEF6E3D09E0041AB1A65', X'31FB0B02E90CAD6BCD243BDC9E72DFA14E6BDDE351C3B2D6F9C0FA306056B394', X'3570CF1662F04C92564B6BAC94677E1C9F047C62B1C389304C0396643B8858EE');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (3, 1, '2026-01-05T08:00:00Z', 'tests', 'record', 'lot', 'ochre-1', X'D3F840866791835F39851FB287E3CF5D', '{"record":"lot","id":"ochre-1","lotKind":"ink","colourWords":"Ochre, dull and warm","pigments":["PY42"],"netMass_g":250}', X'B3B56C4463E91F3D0000E84A7F7B2EDC36630403B8B0262E9C3452C0643194D0', X'3570CF1662F04C92564B6BAC94677E1C9F047C62B1C389304C0396643B8858EE', X'1A5B47578FA4EFBE63E6E8C404E8A9796F7711E94DEBFF520BCF60EF3F2E7449');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (4, 1, '2026-01-05T08:00:00Z', 'tests', 'record', 'lot', 'base-1', X'C503ABB1FE308F7CF4B4C87F644DF2D4', '{"record":"lot","id":"base-1","lotKind":"base","colourWords":"Transparent base"}', X'863357C2A5A35FC57FB0299A455D8D6DBACFAFFD0D18E2B23CA3FAED0381C295', X'1A5B47578FA4EFBE63E6E8C404E8A9796F7711E94DEBFF520BCF60EF3F2E7449', X'882F091DA0FA1A50D2612953AD713E66264DD14CE05382695227BC784F4CCA6E');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (5, 1, '2026-01-05T08:00:00Z', 'tests', 'record', 'mix', 'ochre-stock', X'C1662B41F0F8488F4B73DEBA8356B8C0', '{"record":"mix","id":"ochre-stock","name":"Ochre stock","purpose":"letDown","drierFree":true}', X'A46F6992A83E76B489A0AF1C724D313DEFBC69F62AC0E79409E1D6A0C70A2635', X'882F091DA0FA1A50D2612953AD713E66264DD14CE05382695227BC784F4CCA6E', X'3E852650602421A5170A265AFBDE53A45556E19AE1EE5F4551D697BCDB61E763');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (6, 1, '2026-01-05T08:00:00Z', 'tests', '2026-01-05T19:20', 'record', 'weighing', 'ochre-stock/1', X'7C06C3C56CB3D6DE0FC2329FEB8B7120', '{"record":"weighing","id":"ochre-stock/1","mix":"ochre-stock","act":"add","at":"2026-01-05T19:20","sequence":0,"lot":"ochre-1","mass_g":3}', X'2894D08897460DDA9720C2E97EFCF063DA87BB559ADBD015D969939D7E8162E3', X'3E852650602421A5170A265AFBDE53A45556E19AE1EE5F4551D697BCDB61E763', X'155D0F3EF2F1333D21F5477D67E830008F569DF35081942F5E8495EA46EA90E6');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (7, 1, '2026-01-05T08:00:00Z', 'tests', '2026-01-05T19:30', 'record', 'weighing', 'ochre-stock/2', X'E24834E1D56872D618745717616AE22F', '{"record":"weighing","id":"ochre-stock/2","mix":"ochre-stock","act":"add","at":"2026-01-05T19:30","sequence":0,"lot":"base-1","mass_g":97}', X'3D2764EFF14C4E0B15EFC33FFBD4B5B260CF324C2730BDC7276E1913EE5B646E', X'155D0F3EF2F1333D21F5477D67E830008F569DF35081942F5E8495EA46EA90E6', X'4CB55068FA44C87387E8EC4DC8F6CAD4A99DF03AEC3840CEC9786DE401DF810A');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (8, 1, '2026-01-05T08:00:00Z', 'tests', 'record', 'edition', 'TIDE', X'486860D05C3C9FE1BED57613AD95AA4B', '{"record":"edition","id":"TIDE","code":"TIDE","title":"Spring Tide","maker":"maren","process":"linocut","status":"open"}', X'0366D3E228BB3D22044D6D3C256A82D65858FE83F563D79CFFAAE2EECDF3147C', X'4CB55068FA44C87387E8EC4DC8F6CAD4A99DF03AEC3840CEC9786DE401DF810A', X'01DC6013E4719BD2F8EC15768C006AD7A9CB0AC02C540243C84916C8FE9ABF17');
INSERT INTO "book" ("key", "id", "entry", "studio", "timeZone", "lengthUnit")
VALUES (1, 'studio', 1, 'A shed of ours (invented)', 'Europe/Copenhagen', 'mm');
INSERT INTO "party" ("key", "id", "entry", "name", "contactWithheld")
VALUES (1, 'maren', 2, 'Maren', 0);
INSERT INTO "party_roles" ("party", "position", "value")
VALUES (1, 0, 'maker');
INSERT INTO "edition" ("key", "id", "entry", "code", "title", "maker", "process", "status")
VALUES (1, 'TIDE', 8, 'TIDE', 'Spring Tide', 1, 'linocut', 'open');
INSERT INTO "lot" ("key", "id", "entry", "lotKind", "colourWords", "netMass_g")
VALUES (1, 'ochre-1', 3, 'ink', 'Ochre, dull and warm', 250.0);
INSERT INTO "lot" ("key", "id", "entry", "lotKind", "colourWords")
VALUES (2, 'base-1', 4, 'base', 'Transparent base');
INSERT INTO "lot_pigments" ("lot", "position", "value")
VALUES (1, 0, 'PY42');
INSERT INTO "mix" ("key", "id", "entry", "name", "purpose", "drierFree")
VALUES (1, 'ochre-stock', 5, 'Ochre stock', 'letDown', 1);
INSERT INTO "weighing" ("key", "id", "entry", "mix", "act", "at", "atEarliest", "atLatest", "sequence", "lot", "mass_g")
VALUES (1, 'ochre-stock/1', 6, 1, 'add', '2026-01-05T19:20', 29460680, 29460680, 0, 1, 3.0);
INSERT INTO "weighing" ("key", "id", "entry", "mix", "act", "at", "atEarliest", "atLatest", "sequence", "lot", "mass_g")
VALUES (2, 'ochre-stock/2', 7, 1, 'add', '2026-01-05T19:30', 29460690, 29460690, 0, 2, 97.0);
COMMIT;
