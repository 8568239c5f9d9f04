// The lists of an invented studio, as LibreOffice wrote them (tables/README.md).
#include "exchange/TableRecords.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "base/Error.h"
#include "exchange/TableFindings.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using Held = std::map<std::pair<RecordKind, std::string>, std::string>;

StandingRecords standingIn(const Held& held) {
    return {[held](RecordKind kind, const std::string& id) {
                return held.count({kind, id}) != 0;
            },
            [held](RecordKind kind, const std::string& id) {
                return held.at({kind, id});
            },
            [held](RecordKind kind, const std::string& field) {
                std::vector<std::pair<std::string, std::string>> texts;
                for (const auto& [key, text] : held)
                    if (key.first == kind && field == "name")
                        texts.emplace_back(key.second, text);
                return texts;
            }};
}

std::string fixture(const std::string& name) {
    return test::bytesOf(test::sourcePath("tests/exchange/tables/" + name));
}

struct Taken {
    MadeFromTable made;
    std::string told;
};

Taken take(const std::string& bytes, const std::string& mappingText, const Held& held = {},
           const std::vector<int>& onlyRows = {}) {
    const TableMapping mapping = mappingFrom(mappingText, "m.json", test::schemaFolder());
    const TableFile table = tableFileFrom(bytes, mapping.form, "t.csv");
    Taken taken;
    taken.made = recordsFrom(table, mapping, standingIn(held), onlyRows);
    for (const Finding& finding : tableFindings(table, mapping, taken.made, {}))
        taken.told += describe(finding) + "\n";
    return taken;
}

std::string jsonOf(const Taken& taken, const std::string& id) {
    for (const TableRecord& record : taken.made.records)
        if (record.id == id)
            return record.json;
    return "none";
}

std::string withEncoding(std::string mapping, const std::string& encoding) {
    return mapping.insert(mapping.find("\"about\""), "\"encoding\": \"" + encoding + "\", ");
}

TEST(TableRecords, OfOldListsAreTheSameInEveryFormThatTheSpreadsheetWrites) {
    for (const std::string list : {"editions", "tins", "sales"}) {
        const std::string mapping = fixture(list + ".mapping");
        Held held;
        for (const std::string id : {"REUSE/01", "REUSE/02", "REUSE/03", "REUSE/04", "DEICH/01",
                                     "DEICH/02", "DEICH/03", "KRAN/04"})
            held[{RecordKind::impression, id}] = R"({"record":"impression","id":")" + id + "\"}";
        const Taken utf8 = take(fixture(list + "-commas-utf-8.csv"), mapping, held);
        const Taken utf16 = take(fixture(list + "-tabs-utf-16.csv"), mapping, held);
        const Taken windows = take(fixture(list + "-semicolons-windows-1252.csv"),
                                   withEncoding(mapping, "windows-1252"), held);
        EXPECT_EQ(utf8.told, utf16.told);
        EXPECT_EQ(utf8.told, windows.told);
        EXPECT_EQ(recordsText(utf8.made), recordsText(utf16.made));
        EXPECT_EQ(recordsText(utf8.made), recordsText(windows.made));
        EXPECT_FALSE(utf8.told.empty());
    }
}

TEST(TableRecords, OfAnEditionListAreEditionsAndTheirSheets) {
    const Taken taken = take(fixture("editions-commas-utf-8.csv"), fixture("editions.mapping"));
    EXPECT_EQ(
        jsonOf(taken, "DEICH"),
        R"({"code":"DEICH","declaredNumbered":8,"id":"DEICH","imageHeight_mm":297.0,)"
        R"("imageWidth_mm":210.0,"maker":"tilda","note":"Zwei Zeilen:\nerst hell, dann dunkel",)"
        R"("paper":"Bütten „weiß“","process":"Linolschnitt, verlorene Form",)"
        R"("record":"edition","title":"Deich; nach dem Sturm","year":"2003~"})");
    EXPECT_EQ(jsonOf(taken, "DEICH/08"),
              R"({"designation":"8/8","designationKind":"numbered","edition":"DEICH",)"
              R"("id":"DEICH/08","record":"impression","workingNumber":8})");
    EXPECT_EQ(jsonOf(taken, "DEICH/09"), "none");
    EXPECT_EQ(
        taken.told,
        "t.csv, row 6 (line 7), column \"Auflage\": this is not a number (zehn). Write digits "
        "alone, such as 12,5; a unit beside each is named in the mapping: \"units\": "
        "[\"g\"].\n");
    EXPECT_EQ(taken.made.rowsRead, 4u);
    EXPECT_EQ(taken.made.rowsLeftOut, 1u);
}

TEST(TableRecords, OfAStockListTellEveryErrorWithRowAndColumn) {
    const Taken taken = take(fixture("tins-commas-utf-8.csv"), fixture("tins.mapping"));
    EXPECT_EQ(jsonOf(taken, "tin-3"),
              R"({"boughtOn":"2006-11-30","colourWords":"Kobaltblau, Ton","container":"tube",)"
              R"("id":"tin-3","lotKind":"ink","netMass_g":62.5,"pigments":["PB28","PW6"],)"
              R"("price":1234.5,"record":"lot"})");
    EXPECT_EQ(
        taken.told,
        "t.csv, row 3, column \"Angebrochen\": this is no date (Frühjahr). Write it as well as "
        "it is known, such as 2019-03-04, 2019-03, 2019, 2019~ for about and 2019? for "
        "perhaps; schema/README.md lists the ways.\n"
        "t.csv, row 5, column \"Gekauft am\": the calendar has no such day (31.11.2006). Look "
        "it up, or say another order of dates.\n"
        "t.csv, row 6, column \"Art\": it is none of the words that may stand here (Firnis). "
        "Say what it means in the mapping, such as \"words\": {\"Firnis\": \"ink\"}; it is one "
        "of ink, base, drier or modifier.\n"
        "t.csv, row 6, column \"Inhalt g\": this is not a number (250 ml). Write digits alone, "
        "such as 12,5; a unit beside each is named in the mapping: \"units\": [\"g\"].\n");
}

TEST(TableRecords, OfASalesListAreTransfersAndWhoHasTheSheets) {
    Held held;
    for (const std::string id : {"REUSE/01", "REUSE/02", "REUSE/03", "REUSE/04", "DEICH/01",
                                 "DEICH/02", "DEICH/03", "KRAN/04"})
        held[{RecordKind::impression, id}] = R"({"record":"impression","id":")" + id + "\"}";
    const std::string text = fixture("sales-commas-utf-8.csv");
    const Taken taken = take(text, fixture("sales.mapping"), held);
    EXPECT_EQ(jsonOf(taken, "Jon-Thorsson"),
              R"({"id":"Jon-Thorsson","name":"Jón Þórsson","record":"party","roles":["holder"]})");
    EXPECT_EQ(
        jsonOf(taken, "in-Kommission-01.06.1999-REUSE"),
        R"({"agreedOn":"1999-06-01","giver":"tilda","id":"in-Kommission-01.06.1999-REUSE",)"
        R"("impressions":["REUSE/02","REUSE/03","REUSE/04"],"note":"bis Herbst","price":360.0,)"
        R"("receiver":"Galerie-Salzhafen","record":"transfer","transferKind":"consignment"})");
    EXPECT_EQ(jsonOf(taken, "REUSE/02"),
              R"({"holder":"Galerie-Salzhafen","id":"REUSE/02","record":"impression"})");
    EXPECT_EQ(
        taken.told,
        "t.csv, row 6, column \"Kürzel and Nr\": neither the book nor this table has impression "
        "KRAN/21, which is to change. Enter it first, or correct the cell.\n"
        "t.csv, row 7, column \"Vorgang\": it is none of the words that may stand here "
        "(getauscht). Say what it means in the mapping, such as \"words\": {\"getauscht\": "
        "\"consignment\"}; it is one of consignment, sale, loan, gift or return.\n");
    // The same list after its first row was taken: what was changed then is not changed again.
    held[{RecordKind::transfer, "verkauft-14.02.1999-REUSE"}] = "{}";
    const Taken again = take(text, fixture("sales.mapping"), held);
    EXPECT_EQ(again.made.changesLeftOut, 1u);
    EXPECT_EQ(jsonOf(again, "REUSE/01"), "none");
}

const char* const small = R"({"rackbookTable": 1, "records": [{"record": "party", "id": "{Name}",
    "fields": {"name": {"column": "Name"}, "note": {"column": "Note"}}}]})";

TEST(TableRecords, RefuseRaggedRows) {
    EXPECT_EQ(take("Name,Note\nA,x\nB\nC,x,y\nD,x,,\n", small).told,
              "t.csv, row 3: the row has 1 cell, and there are 2 headings. Give a cell for each "
              "heading; a cell that holds the separator wants quotation marks.\n"
              "t.csv, row 4: the row has 3 cells, and there are 2 headings. Give a cell for each "
              "heading; a cell that holds the separator wants quotation marks.\n");
}

TEST(TableRecords, AreOneWhereRowsAgreeAndRefusedWhereTheyDiffer) {
    const Taken taken = take("Name,Note\nA,x\nA,x\nA,y\nB,\n", small);
    EXPECT_EQ(taken.made.records.size(), 2u);
    EXPECT_EQ(
        taken.told,
        "t.csv, row 4, column \"Name\": party A is made by row 2 already, and differs in note. "
        "Take one of the two rows out, put more columns into the id, or say \"ifNew\": true "
        "where the first row counts.\n");
}

TEST(TableRecords, SayOnceThatARowComesAgainWithAllThatItMakes) {
    const std::string told = take("Code,Size\nA,3\nA,4\n",
                                  R"({"rackbookTable": 1, "records": [
        {"record": "edition", "id": "{Code}", "fields": {"title": {"column": "Size"}}},
        {"record": "impression", "id": "{Code}/{#2}", "numbers": {"column": "Size", "as": "count"},
         "fields": {"note": {"pattern": "of {Size}"}}}]})")
                                 .told;
    std::size_t count = 0;
    for (std::size_t at = told.find("is made by row 2"); at != std::string::npos;
         at = told.find("is made by row 2", at + 1))
        ++count;
    EXPECT_EQ(count, 1u) << told;
}

TEST(TableRecords, CountLikeErrorsBeyondTen) {
    std::string text = "Name,Note\n";
    for (int i = 0; i < 25; ++i)
        text += ",x\n";
    const std::string told = take(text, small).told;
    EXPECT_EQ(std::count(told.begin(), told.end(), '\n'), 11);
    EXPECT_NE(told.find("t.csv, column \"Name\": and 15 more rows with the same remedy."),
              std::string::npos);
}

TEST(TableRecords, AreThoseOfTheRowsAskedFor) {
    EXPECT_EQ(take("Name,Note\nA,\nB,\nC,\n", small, {}, {3}).made.records.size(), 1u);
    EXPECT_EQ(test::messageOf([] { take("Name,Note\nA,\n", small, {}, {9}); }),
              "t.csv: no row of records was found. Say with skipRows and headings in the mapping "
              "where they begin.");
}

TEST(TableRecords, WantTheColumnsThatTheMappingNames) {
    EXPECT_EQ(
        test::messageOf([] { take("Namee,Note\nA,\n", small); }),
        "m.json:1 /records/0/id: the table has no column that is headed so (Name). Did you "
        "mean \"Namee\"?\nm.json:2 /records/0/fields/name/column: the table has no column that "
        "is headed so (Name). Did you mean \"Namee\"?");
    EXPECT_EQ(test::messageOf([] { take("Name,Note,Note\nA,,\n", small); }),
              "m.json:2 /records/0/fields/note/column: more than one column of the table is headed "
              "so (Note). Name it by its position, counted from \"1\".");
}

TEST(TableRecords, FindOthersByWhatStandsInAField) {
    const std::string mapping = R"({"rackbookTable": 1, "records": [{"record": "edition",
        "id": "{Code}", "fields": {"maker": {"column": "By", "find": "name"}}}]})";
    const Held held = {{{RecordKind::party, "p1"}, "Tilda Moor"},
                       {{RecordKind::party, "p2"}, "Ole"},
                       {{RecordKind::party, "p3"}, "ole"}};
    const Taken taken = take("Code,By\nA,tilda  moor\nB,Ole\nC,Nobody\n", mapping, held);
    EXPECT_EQ(jsonOf(taken, "A"), R"({"id":"A","maker":"p1","record":"edition"})");
    EXPECT_EQ(
        taken.told,
        "t.csv, row 3, column \"By\": more than one party has this name: p2 and p3 (Ole). Say "
        "which by its id.\n"
        "t.csv, row 4, column \"By\": no party has this name (Nobody). Write it as the book "
        "has it, or enter the party first.\n");
}

}  // namespace
}  // namespace rackbook
