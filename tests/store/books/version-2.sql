-- The rows of a book of version 2, as rackbook wrote them. Invented.
BEGIN;
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (1, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'book', 'studio', X'6136FACE1657724788183F69ED9861E1', '{"record":"book","id":"studio","studio":"A shed of ours (invented)","latitude_deg":55.7,"longitude_deg":12.6,"timeZone":"Europe/Copenhagen","lengthUnit":"mm","houseRules":[{"rule":"lightDays","value":10,"origin":"fitted","source":"looks of one winter (invented)"}]}', X'25E8E5228880F94F08DE516E8DEE7F1305F46131538BCE429538591432DA9640', X'0000000000000000000000000000000000000000000000000000000000000000', X'EE3E3E226FDCAC9321D94D2CAC10A5188B6DBB71A3E7DBCB1F494E0D4E54D0D7');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (2, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'party', 'maren', X'DC12E93798838A8CBE54DE181EF7E030', '{"record":"party","id":"maren","name":"Maren","roles":["maker"]}', X'E5A2774BCBD1CD8AAD66DD2B3A29296F6536D13018221BAABBB0A743F2C36FD8', X'EE3E3E226FDCAC9321D94D2CAC10A5188B6DBB71A3E7DBCB1F494E0D4E54D0D7', X'2BDE9DA7F1BA47D71BA1E3C4D129457A848F593AB761AF9FAE317C393C8C21E4');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (3, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'place', 'rack', X'B4F0F1516C5C698339F4A3A65D8C52DD', '{"record":"place","id":"rack","name":"Rack by the window","placeKind":"rack","light":[{"lightKind":"dark"},{"from":"2026-01-02","lightKind":"daylight","windowAzimuth_deg":180,"daylightFactor_pct":3,"glassTransmittance":0.8,"directSun":false,"note":"the shutter came down"}]}', X'2DE8BB4619205014BC55012E9B94C419577F8C85A58A6790403694511286BDAD', X'2BDE9DA7F1BA47D71BA1E3C4D129457A848F593AB761AF9FAE317C393C8C21E4', X'FF2B6BC872FC5323DFD379519B710ADCBE5E2810039EEBD73D292246007588C9');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (4, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'lot', 'ochre-1', X'D70A56F18427EBFF4770E29430325FF5', '{"record":"lot","id":"ochre-1","lotKind":"ink","colourWords":"Ochre, dull and warm","pigments":["PY42"],"netMass_g":250}', X'A192797A70C26B8EBD058CDD839099E7953D8CD93001EF1945328BE349EDAB35', X'FF2B6BC872FC5323DFD379519B710ADCBE5E2810039EEBD73D292246007588C9', X'D243E1724127E0BB1A30537A221CF01918ECEF9F523D36CB5AB658B19C60C512');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (5, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'lot', 'base-1', X'5AB67A2EE12CD46C5AD14A39EE66F328', '{"record":"lot","id":"base-1","lotKind":"base","colourWords":"Transparent base"}', X'14AA199AB9933AFF7FC9609544083CF445349B64BC30DE9859BD3AE1F3299BE2', X'D243E1724127E0BB1A30537A221CF01918ECEF9F523D36CB5AB658B19C60C512', X'4B710FD8FC12DDCAF5922D1ABA70C527AFC5D2F1887F3B9EDE644604B902ECCD');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (6, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'balance', 'bench', X'BA58FFCC313654F6CF4CC52FB0565243', '{"record":"balance","id":"bench","name":"Bench balance","readability_g":0.01,"capacity_g":500}', X'2A885373F46B09397B59E9333FAED1EFAA9975FA73D1CFCEA14C3531C4B3C7F0', X'4B710FD8FC12DDCAF5922D1ABA70C527AFC5D2F1887F3B9EDE644604B902ECCD', X'9FD8FAF243FDDE208372D5C3DD89C0B17F277A1972E8A5900B5E8F181CBE4FB4');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (7, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'mix', 'ochre-stock', X'A5D224E426E5191C820EBCA64011A628', '{"record":"mix","id":"ochre-stock","name":"Ochre stock","purpose":"letDown","drierFree":true}', X'9D72DA34CC7400D610CC48B027282483E54CEF1C36AADAB436F530FA39CB19DB', X'9FD8FAF243FDDE208372D5C3DD89C0B17F277A1972E8A5900B5E8F181CBE4FB4', X'87E28AA224B6FD79CD657A13C2A90B8FBE9B87FD858BEFC2C62C6010825D8072');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (8, 1, '2026-02-03T08:00:00Z', 'tests', '2026-01-05T19:20', 'record', 'weighing', 'ochre-stock/1', X'090F68975D26D5292AFEBF822E2547FB', '{"record":"weighing","id":"ochre-stock/1","mix":"ochre-stock","act":"add","at":"2026-01-05T19:20","sequence":0,"lot":"ochre-1","mass_g":3,"balance":"bench"}', X'AAECB657CC036C48AB4D4669F69825E119F44AB9D26E543FA37C86A6ACD29D8D', X'87E28AA224B6FD79CD657A13C2A90B8FBE9B87FD858BEFC2C62C6010825D8072', X'40776874CBE7675A41AE925CA6AF6067407D054ED72FBAABEF187B953C8E23DB');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (9, 1, '2026-02-03T08:00:00Z', 'tests', '2026-01-05T19:30', 'record', 'weighing', 'ochre-stock/2', X'90648DF7E41526A8306974E3BF301DB0', '{"record":"weighing","id":"ochre-stock/2","mix":"ochre-stock","act":"add","at":"2026-01-05T19:30","sequence":0,"lot":"base-1","mass_g":97}', X'833592749AC29FC2D69834BED8BC4139A0B103330B43D60E5D3A1349BBFDEADC', X'40776874CBE7675A41AE925CA6AF6067407D054ED72FBAABEF187B953C8E23DB', X'75EFD7E957DCE7D8EBA17C1586536771EECF8D1BDA464100461EA30A6B776B57');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (10, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'edition', 'TIDE', X'CC76E3234D053CE9D2FF026FA3DD08DA', '{"record":"edition","id":"TIDE","code":"TIDE","title":"Spring Tide","maker":"maren","process":"linocut","status":"open"}', X'45131FBC631E59E189D4D54A9348FABC20E6E087802E13031E1F5B5479C85F0D', X'75EFD7E957DCE7D8EBA17C1586536771EECF8D1BDA464100461EA30A6B776B57', X'3F43719B38ABDCC35200DAB712B10259C834A41C0797E6C9325432D45350DC43');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (11, 1, '2026-02-03T08:00:00Z', 'tests', 'record', 'impression', 'TIDE/1', X'EEB28A33E7D23548A26A395838F7A12D', '{"record":"impression","id":"TIDE/1","edition":"TIDE","workingNumber":1,"fate":"kept"}', X'7DFC62E13925ED92F575D5D998F5227E515C4B03E61F5E0E0DC9B5D562513DA2', X'3F43719B38ABDCC35200DAB712B10259C834A41C0797E6C9325432D45350DC43', X'16A89C4F9917774603CA63439F25A7FF2F6190AC9843B520A108FA341FBC1AC7');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (12, 1, '2026-02-03T08:00:00Z', 'tests', '2026-02-01', 'record', 'look', 'TIDE/look-1', X'BAA619A2F13B6BD00192BDDD59CBE203', '{"record":"look","id":"TIDE/look-1","impressions":["TIDE/1"],"at":"2026-02-01","touch":"dry","colour":"true"}', X'8F43070DB8733EAA2B47B992C5FB4FD52DA5F469B0072BD3236FC7D811F5C406', X'16A89C4F9917774603CA63439F25A7FF2F6190AC9843B520A108FA341FBC1AC7', X'B159BFB8BFAC7EF957FCA7B16564FF7EF9CBD3ED8CAC4770623457ED22FDAF78');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (13, 1, '2026-02-03T08:00:00Z', 'tests', '2026-02-03', 'record', 'stockTake', 'ochre-1/1', X'1A6C809B9C5D7C9332B640838C4504A7', '{"record":"stockTake","id":"ochre-1/1","lot":"ochre-1","at":"2026-02-03","mass_g":238.5,"balance":"bench"}', X'1A6CF1180D13A18EB0175DA2CE81755CF54CFE1EA2DBB1D71F3B5FC5FBBCA33F', X'B159BFB8BFAC7EF957FCA7B16564FF7EF9CBD3ED8CAC4770623457ED22FDAF78', X'9D50A5D50F4EC89EA65EB5FFD012C84BEDBA79202291D46E6AB7DB0B11F08B65');
INSERT INTO "book" ("key", "id", "entry", "studio", "latitude_deg", "longitude_deg", "timeZone", "lengthUnit")
VALUES (1, 'studio', 1, 'A shed of ours (invented)', 55.7, 12.6, 'Europe/Copenhagen', 'mm');
INSERT INTO "book_houseRules" ("book", "position", "rule", "value", "origin", "source")
VALUES (1, 0, 'lightDays', 10.0, 'fitted', 'looks of one winter (invented)');
INSERT INTO "party" ("key", "id", "entry", "name", "contactWithheld")
VALUES (1, 'maren', 2, 'Maren', 0);
INSERT INTO "party_roles" ("party", "position", "value")
VALUES (1, 0, 'maker');
INSERT INTO "place" ("key", "id", "entry", "name", "placeKind")
VALUES (1, 'rack', 3, 'Rack by the window', 'rack');
INSERT INTO "place_light" ("place", "position", "lightKind")
VALUES (1, 0, 'dark');
INSERT INTO "place_light" ("place", "position", "from", "fromEarliest", "fromLatest", "lightKind", "windowAzimuth_deg", "daylightFactor_pct", "glassTransmittance", "directSun", "note")
VALUES (1, 1, '2026-01-02', 29455200, 29456639, 'daylight', 180.0, 3.0, 0.8, 0, 'the shutter came down');
INSERT INTO "edition" ("key", "id", "entry", "code", "title", "maker", "process", "status")
VALUES (1, 'TIDE', 10, 'TIDE', 'Spring Tide', 1, 'linocut', 'open');
INSERT INTO "lot" ("key", "id", "entry", "lotKind", "colourWords", "netMass_g")
VALUES (1, 'ochre-1', 4, 'ink', 'Ochre, dull and warm', 250.0);
INSERT INTO "lot" ("key", "id", "entry", "lotKind", "colourWords")
VALUES (2, 'base-1', 5, 'base', 'Transparent base');
INSERT INTO "lot_pigments" ("lot", "position", "value")
VALUES (1, 0, 'PY42');
INSERT INTO "mix" ("key", "id", "entry", "name", "purpose", "drierFree")
VALUES (1, 'ochre-stock', 7, 'Ochre stock', 'letDown', 1);
INSERT INTO "weighing" ("key", "id", "entry", "mix", "act", "at", "atEarliest", "atLatest", "sequence", "lot", "mass_g", "balance")
VALUES (1, 'ochre-stock/1', 8, 1, 'add', '2026-01-05T19:20', 29460680, 29460680, 0, 1, 3.0, 1);
INSERT INTO "weighing" ("key", "id", "entry", "mix", "act", "at", "atEarliest", "atLatest", "sequence", "lot", "mass_g")
VALUES (2, 'ochre-stock/2', 9, 1, 'add', '2026-01-05T19:30', 29460690, 29460690, 0, 2, 97.0);
INSERT INTO "impression" ("key", "id", "entry", "edition", "workingNumber", "fate")
VALUES (1, 'TIDE/1', 11, 1, 1, 'kept');
INSERT INTO "look" ("key", "id", "entry", "at", "atEarliest", "atLatest", "touch", "colour")
VALUES (1, 'TIDE/look-1', 12, '2026-02-01', 29498400, 29499839, 'dry', 'true');
INSERT INTO "look_impressions" ("look", "position", "impression")
VALUES (1, 0, 1);
INSERT INTO "balance" ("key", "id", "entry", "name", "readability_g", "capacity_g")
VALUES (1, 'bench', 6, 'Bench balance', 0.01, 500.0);
INSERT INTO "stockTake" ("key", "id", "entry", "lot", "at", "atEarliest", "atLatest", "mass_g", "balance")
VALUES (1, 'ochre-1/1', 13, 1, '2026-02-03', 29501280, 29502719, 238.5, 1);
COMMIT;
