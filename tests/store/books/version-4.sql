-- The rows of a book of version 4, as rackbook wrote them. Invented.
BEGIN;
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (1, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'book', 'studio', X'1D81AD64EC6301B626BE1AA2B8FE54B4', '{"record":"book","id":"studio","studio":"A shed of ours (invented)","latitude_deg":55.7,"longitude_deg":12.6,"timeZone":"Europe/Copenhagen","lengthUnit":"mm","houseRules":[{"rule":"lightDays","value":10,"origin":"fitted","source":"looks of one winter (invented)"}],"monthlySkies":[{"month":6,"sunnyShare":0.4,"overcastShare":0.25,"source":"our own notes (invented)"}]}', X'A5A59B17D6A1F707C3DC2CC6BD5F600B822940082B99D59CCDF8BCD2C6FE5FCC', X'0000000000000000000000000000000000000000000000000000000000000000', X'50BB2D80F73B9F4B79A6A457DF9B5CA6A4406BCA3ADF11ABA8E2C5CC62423069');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (2, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'party', 'maren', X'07C0785A5756FE577B6100AC3534904C', '{"record":"party","id":"maren","name":"Maren","roles":["maker"]}', X'1A019609492C43C4ED1268B3F12FE4E998E7EB4E2BA9470FC73A3B2574BFCA77', X'50BB2D80F73B9F4B79A6A457DF9B5CA6A4406BCA3ADF11ABA8E2C5CC62423069', X'155EF2C7D9D93FBB9843DE697BAFE877E6C830964B6CF6AC222866D2327524C3');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (3, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'place', 'rack', X'8E4AF0BBF74DB1F871AFF02342C9B677', '{"record":"place","id":"rack","name":"Rack by the window","placeKind":"rack","light":[{"lightKind":"dark"},{"from":"2026-01-02","lightKind":"daylight","windowAzimuth_deg":180,"daylightFactor_pct":3,"glass":"laminated","glassTransmittance":0.8,"glassUltravioletTransmittance":0.02,"directSun":false,"note":"the shutter came down"}]}', X'4972AF7AB0278B65BAAA65C9F1F1594A7BD8886C896427E4D4EF3656C5C68E89', X'155EF2C7D9D93FBB9843DE697BAFE877E6C830964B6CF6AC222866D2327524C3', X'A879231C29AC64CC189DD52BA29D797BDE2E525484F9D541FBA3216B83C9F130');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (4, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'lot', 'ochre-1', X'A047812907A37F35EC9084D1044B5FB9', '{"record":"lot","id":"ochre-1","lotKind":"ink","colourWords":"Ochre, dull and warm","pigments":["PY42"],"netMass_g":250}', X'1A5766CC91966B0BBA3448063AE02DEDCE3C2A49084C1C8FDD28EAB0D70D8408', X'A879231C29AC64CC189DD52BA29D797BDE2E525484F9D541FBA3216B83C9F130', X'0AB66D7A339986762E450C06E9638B288A54C32FF3D6DD6DDFB51A41B86E05CD');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (5, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'lot', 'base-1', X'9A6ABDB781401ACA7899EA4D1822C943', '{"record":"lot","id":"base-1","lotKind":"base","colourWords":"Transparent base"}', X'6D69090D6B107EAF615D2D10C90C62015BDEB8EB5DAFFAE33BC67898467B7D4D', X'0AB66D7A339986762E450C06E9638B288A54C32FF3D6DD6DDFB51A41B86E05CD', X'F4672C6D3339BE7AD778D496C2EB8E69CA0F5D601243E6CC73A123EB66C6428D');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (6, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'balance', 'bench', X'67C8A0E65A9862CDF2A5FA63365E0BDE', '{"record":"balance","id":"bench","name":"Bench balance","readability_g":0.01,"capacity_g":500}', X'9E5EA541116DF3678EC41A6774E1F267F2764A964C3EBBE45F0A183F4174DC04', X'F4672C6D3339BE7AD778D496C2EB8E69CA0F5D601243E6CC73A123EB66C6428D', X'2F5EFBDF587F9D65B3A9C90F1AD3C4D5672C8D61FECE9786CCF1344F8565B892');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (7, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'mix', 'ochre-stock', X'F9DC02BD898313A8A002DD08B18B7C3D', '{"record":"mix","id":"ochre-stock","name":"Ochre stock","purpose":"letDown","drierFree":true}', X'520B2CBF9AA5D68D200C88CF5E14E145F1A44BD4753944BC5A45FD3B580A803A', X'2F5EFBDF587F9D65B3A9C90F1AD3C4D5672C8D61FECE9786CCF1344F8565B892', X'D144BB59E7958345466199B120A81C869934C6C7344A250A30892E330FFC3326');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (8, 1, '2026-02-04T08:00:00Z', 'tests', '2026-01-05T19:20', 'record', 'weighing', 'ochre-stock/1', X'F4E8A5F9B7E3F96D17D8FE551D8D3E06', '{"record":"weighing","id":"ochre-stock/1","mix":"ochre-stock","act":"add","at":"2026-01-05T19:20","sequence":0,"lot":"ochre-1","mass_g":3,"balance":"bench"}', X'2158B7B909369D7617110C0F91D9CD91C32A442345609E1FC25177EEC8D42F9D', X'D144BB59E7958345466199B120A81C869934C6C7344A250A30892E330FFC3326', X'4C97C4054F11C7FB85E012A9FE913C917FF95EA4213760D9BD9AD0001847CF00');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (9, 1, '2026-02-04T08:00:00Z', 'tests', '2026-01-05T19:30', 'record', 'weighing', 'ochre-stock/2', X'BCD9ACCFAC1D0A88144091050F801C8F', '{"record":"weighing","id":"ochre-stock/2","mix":"ochre-stock","act":"add","at":"2026-01-05T19:30","sequence":0,"lot":"base-1","mass_g":97}', X'94D379D4A557FDF68509E2DF89D8EF91EF3DC2608BBF0A5BEA5C7625F77A7543', X'4C97C4054F11C7FB85E012A9FE913C917FF95EA4213760D9BD9AD0001847CF00', X'4C476E74686CFE5C64B45BD08F2F6646F35542F24A74D0447B930B23DCD4C9B6');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (10, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'edition', 'TIDE', X'1EF40A269073A80230E64CDEA30D0E5C', '{"record":"edition","id":"TIDE","code":"TIDE","title":"Spring Tide","maker":"maren","process":"linocut","status":"open"}', X'C152D4910BC113F1D932B69B6761019A22244BD1A13E1224CADF1D1997279CC2', X'4C476E74686CFE5C64B45BD08F2F6646F35542F24A74D0447B930B23DCD4C9B6', X'FF7CC659BF80D8F06E7E8D3F2949E08E2272720EA1FC4003D5B1F1B4A750525C');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (11, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'impression', 'TIDE/1', X'55AC07649ED2F832BBB7212128D52D0C', '{"record":"impression","id":"TIDE/1","edition":"TIDE","workingNumber":1,"fate":"kept"}', X'1981085898D5043D1F4EF89D20792DE8FE00745C844C9E63C4889E364AC4BD97', X'FF7CC659BF80D8F06E7E8D3F2949E08E2272720EA1FC4003D5B1F1B4A750525C', X'7C1485EFC9903AE23125BF01C768E6B5D581B2C1CCB97D8C3282CC16CA4012D2');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (12, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-01', 'record', 'look', 'TIDE/look-1', X'1229C8D4B0BADFCD20F3EEB702024662', '{"record":"look","id":"TIDE/look-1","impressions":["TIDE/1"],"at":"2026-02-01","touch":"dry","colour":"true"}', X'2DFEE417969645385988063263B6F4F2846F98225F4BD52DB65FEC05400CE593', X'7C1485EFC9903AE23125BF01C768E6B5D581B2C1CCB97D8C3282CC16CA4012D2', X'C5768BCC10B48DC7D95EFAD285A9816B684FFA35CBDB46856493999326CF9B91');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (13, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-03', 'record', 'stockTake', 'ochre-1/1', X'F571C02724CBA6CFADB2263A00C5AD37', '{"record":"stockTake","id":"ochre-1/1","lot":"ochre-1","at":"2026-02-03","mass_g":238.5,"balance":"bench"}', X'654A25370CF3814651330B0D9A5A8D499B51E6097E39FA62871376DF4DA2EEE2', X'C5768BCC10B48DC7D95EFAD285A9816B684FFA35CBDB46856493999326CF9B91', X'77907D645E8021AB133462F60A2E8AD202DA70BCAD8B0DF923DA094446C55D69');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (14, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'party', 'harbour', X'85092E82485F4677748D484B43826BAE', '{"record":"party","id":"harbour","name":"Harbour Room (invented)","roles":["holder"]}', X'71F3D57D77210C9368B92281BE7F5EAB709B671A3330D800571B5C1B619C0C1E', X'77907D645E8021AB133462F60A2E8AD202DA70BCAD8B0DF923DA094446C55D69', X'FE671A4F099AB2728DEB90F514291BF437EA5788BA577C606824CD15D5A27A4D');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (15, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-02', 'record', 'weather', '2026-02-02', X'4E6736850FD4A3B1A2A9B8519330EF63', '{"record":"weather","id":"2026-02-02","on":"2026-02-02","oktas":5.5}', X'2C602B0258C06E128A15E94438C0D4A56FF7B3E96AE346B8ACFC132BD16C7F48', X'FE671A4F099AB2728DEB90F514291BF437EA5788BA577C606824CD15D5A27A4D', X'AD5FE9A38324870BFF3855910FE2A4F90B787426D0A6CD1B6A56E252CBE6C610');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (16, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-02T12:00', 'record', 'metering', 'rack/1', X'AC36D4CBEEF9EF7C13CDC4BE0885991F', '{"record":"metering","id":"rack/1","place":"rack","from":"2026-02-02T12:00","to":"2026-02-02T13:00","exposure_lxh":812.5}', X'56E2E5C93792E9CD9BB37ACFCEB133FD39BDF8C82938F4E02E9584759480B4FD', X'AD5FE9A38324870BFF3855910FE2A4F90B787426D0A6CD1B6A56E252CBE6C610', X'AA5506E32A81A5E5DF0CDCD5CD701FD803C5D1F0788F418BA562BF25972D3AAB');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (17, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-04', 'record', 'issue', 'TIDE/issue-1', X'9B6164D00022238F28E8D913C48EBC3C', '{"record":"issue","id":"TIDE/issue-1","sheetKind":"edition","issuedOn":"2026-02-04","recipient":"harbour","edition":"TIDE","impressions":["TIDE/1"],"fileSha256":"abababababababababababababababababababababababababababababababab"}', X'D0001E21C0A3C35BA5FFC172B8FC546AABED6D147666E1D9CA545EDBEB87F257', X'AA5506E32A81A5E5DF0CDCD5CD701FD803C5D1F0788F418BA562BF25972D3AAB', X'22D2B5ADFF74E3FFD432A38C04F5BB1E66FE40DE75992642FB3B49E50464AF03');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (18, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-04', 'record', 'move', 'TIDE/move-1', X'582746AFB8FFA76D50AF0E4113DD654D', '{"record":"move","id":"TIDE/move-1","impressions":["TIDE/1"],"to":"rack","at":"2026-02-04","why":"consign","document":"TIDE/issue-1"}', X'FCD65307D42F47807029BC34F8EC74ECFB976901F0E2A4EFCCCB23505363F4C7', X'22D2B5ADFF74E3FFD432A38C04F5BB1E66FE40DE75992642FB3B49E50464AF03', X'BA6908A6933AB8E33D360E858AD6CC035349902BBA3620158A90AA5FC1FA93BF');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (19, 1, '2026-02-04T08:00:00Z', 'tests', '2026-02-04', 'record', 'transfer', 'TIDE/transfer-1', X'34EE6FF763FBE1EBB566CECD69969726', '{"record":"transfer","id":"TIDE/transfer-1","transferKind":"consignment","impressions":["TIDE/1"],"giver":"maren","receiver":"harbour","agreedOn":"2026-02-04","dueOn":"2026-05","price":900,"currency":"EUR"}', X'FB833B11E591BEBC0E6CC5BF9B7D78B9D628C7BBD014B0A706C69CF4A47A71B1', X'BA6908A6933AB8E33D360E858AD6CC035349902BBA3620158A90AA5FC1FA93BF', X'399BEAC0303C760EDDC97A1BB1C9D7EF4DE99B27D18CB8A96C59FC832D041BF8');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (20, 1, '2026-02-04T08:00:00Z', 'tests', 'record', 'attachment', 'TIDE/scan-1', X'2D17324D319E0F737C746CF2CF77937F', '{"record":"attachment","id":"TIDE/scan-1","sha256":"cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd","mediaType":"image/png","caption":"A scan","edition":"TIDE"}', X'F7A0E4F1E7AEC27B1A71BA80B49495E6AB0C482A2F150C8220E1D64DE1A9C3CD', X'399BEAC0303C760EDDC97A1BB1C9D7EF4DE99B27D18CB8A96C59FC832D041BF8', X'5DB55ECE5CCB71D934392270D2B0ED01B1C241062527E1D74DBE8E2646A58783');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "action", "kind", "id", "earlier", "reason", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (21, 2, '2026-03-04T08:00:00Z', 'tests', 'correct', 'attachment', 'TIDE/scan-1', 20, 'measured', X'F649844021EC8D3784F979446709DD68', '{"record":"attachment","id":"TIDE/scan-1","sha256":"cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd","mediaType":"image/png","width_px":120,"height_px":80,"orientation":1,"caption":"A scan","edition":"TIDE"}', X'589836FB6C77CA21343BE4543C5B9546420CAFEB8A04A49DAE66143B1514220E', X'5DB55ECE5CCB71D934392270D2B0ED01B1C241062527E1D74DBE8E2646A58783', X'BDF1C441CA9CA546C7484686E10F002F7CD73903769BFEDB26D4C263E949A6EA');
INSERT INTO "journal" ("entry", "intake", "recordedAt", "recordedBy", "happenedAt", "action", "kind", "id", "earlier", "reason", "salt", "payload", "payloadHash", "previousHash", "hash")
VALUES (22, 3, '2026-03-04T08:00:00Z', 'tests', '2026-02-04', 'correct', 'issue', 'TIDE/issue-1', 17, 'looked up', X'A55E666CE28ADED00B307ED70CF5B79F', '{"record":"issue","id":"TIDE/issue-1","sheetKind":"edition","issuedOn":"2026-02-04","asOf":"2026-02-03","language":"da","recipient":"harbour","edition":"TIDE","impressions":["TIDE/1"],"namesHolders":true,"fileName":"tide.pdf","fileSha256":"abababababababababababababababababababababababababababababababab"}', X'532A2301DADDC86C6D10FC2ABA307BCF37BA544D5ECF899C498BBA6420E029E4', X'BDF1C441CA9CA546C7484686E10F002F7CD73903769BFEDB26D4C263E949A6EA', X'43938991100538287EB9E4778AEAFF45816F32A294DE56BA77C3A109AFD6BC1D');
INSERT INTO "book" ("key", "id", "entry", "studio", "latitude_deg", "longitude_deg", "timeZone", "lengthUnit")
VALUES (1, 'studio', 1, 'A shed of ours (invented)', 55.7, 12.6, 'Europe/Copenhagen', 'mm');
INSERT INTO "book_houseRules" ("book", "position", "rule", "value", "origin", "source")
VALUES (1, 0, 'lightDays', 10.0, 'fitted', 'looks of one winter (invented)');
INSERT INTO "party" ("key", "id", "entry", "name", "contactWithheld")
VALUES (1, 'maren', 2, 'Maren', 0);
INSERT INTO "party" ("key", "id", "entry", "name", "contactWithheld")
VALUES (2, 'harbour', 14, 'Harbour Room (invented)', 0);
INSERT INTO "party_roles" ("party", "position", "value")
VALUES (1, 0, 'maker');
INSERT INTO "party_roles" ("party", "position", "value")
VALUES (2, 0, 'holder');
INSERT INTO "place" ("key", "id", "entry", "name", "placeKind")
VALUES (1, 'rack', 3, 'Rack by the window', 'rack');
INSERT INTO "place_light" ("place", "position", "lightKind")
VALUES (1, 0, 'dark');
INSERT INTO "place_light" ("place", "position", "from", "fromEarliest", "fromLatest", "lightKind", "windowAzimuth_deg", "daylightFactor_pct", "glassTransmittance", "directSun", "note", "glass", "glassUltravioletTransmittance")
VALUES (1, 1, '2026-01-02', 29455200, 29456639, 'daylight', 180.0, 3.0, 0.8, 0, 'the shutter came down', 'laminated', 0.02);
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
INSERT INTO "issue" ("key", "id", "entry", "sheetKind", "issuedOn", "issuedOnEarliest", "issuedOnLatest", "recipient", "edition", "fileSha256", "asOf", "asOfEarliest", "asOfLatest", "language", "namesHolders", "fileName")
VALUES (1, 'TIDE/issue-1', 22, 'edition', '2026-02-04', 29502720, 29504159, 2, 1, 'abababababababababababababababababababababababababababababababab', '2026-02-03', 29501280, 29502719, 'da', 1, 'tide.pdf');
INSERT INTO "issue_impressions" ("issue", "position", "impression")
VALUES (1, 0, 1);
INSERT INTO "move" ("key", "id", "entry", "to", "at", "atEarliest", "atLatest", "why", "interleaved", "document")
VALUES (1, 'TIDE/move-1', 18, 1, '2026-02-04', 29502720, 29504159, 'consign', 0, 1);
INSERT INTO "move_impressions" ("move", "position", "impression")
VALUES (1, 0, 1);
INSERT INTO "look" ("key", "id", "entry", "at", "atEarliest", "atLatest", "touch", "colour")
VALUES (1, 'TIDE/look-1', 12, '2026-02-01', 29498400, 29499839, 'dry', 'true');
INSERT INTO "look_impressions" ("look", "position", "impression")
VALUES (1, 0, 1);
INSERT INTO "transfer" ("key", "id", "entry", "transferKind", "giver", "receiver", "agreedOn", "agreedOnEarliest", "agreedOnLatest", "dueOn", "dueOnEarliest", "dueOnLatest", "price", "currency")
VALUES (1, 'TIDE/transfer-1', 19, 'consignment', 1, 2, '2026-02-04', 29502720, 29504159, '2026-05', 29626560, 29671199, 900.0, 'EUR');
INSERT INTO "transfer_impressions" ("transfer", "position", "impression")
VALUES (1, 0, 1);
INSERT INTO "attachment" ("key", "id", "entry", "sha256", "mediaType", "caption", "edition", "width_px", "height_px", "orientation")
VALUES (1, 'TIDE/scan-1', 21, 'cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd', 'image/png', 'A scan', 1, 120, 80, 1);
INSERT INTO "balance" ("key", "id", "entry", "name", "readability_g", "capacity_g")
VALUES (1, 'bench', 6, 'Bench balance', 0.01, 500.0);
INSERT INTO "stockTake" ("key", "id", "entry", "lot", "at", "atEarliest", "atLatest", "mass_g", "balance")
VALUES (1, 'ochre-1/1', 13, 1, '2026-02-03', 29501280, 29502719, 238.5, 1);
INSERT INTO "book_monthlySkies" ("book", "position", "month", "sunnyShare", "overcastShare", "source")
VALUES (1, 0, 6, 0.4, 0.25, 'our own notes (invented)');
INSERT INTO "weather" ("key", "id", "entry", "on", "onEarliest", "onLatest", "oktas")
VALUES (1, '2026-02-02', 15, '2026-02-02', 29499840, 29501279, 5.5);
INSERT INTO "metering" ("key", "id", "entry", "place", "from", "fromEarliest", "fromLatest", "to", "toEarliest", "toLatest", "exposure_lxh")
VALUES (1, 'rack/1', 16, 1, '2026-02-02T12:00', 29500560, 29500560, '2026-02-02T13:00', 29500620, 29500620, 812.5);
COMMIT;
