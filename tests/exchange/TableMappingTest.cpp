#include "exchange/TableMapping.h"

#include <gtest/gtest.h>

#include "base/Error.h"
#include "exchange/FieldForms.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

TableMapping read(const std::string& text) {
    return mappingFrom(text, "m.json", test::schemaFolder());
}

std::string refusalOf(const std::string& text) {
    return test::messageOf([&] { read(text); });
}

// A mapping with one record; `record` is what stands in it.
std::string withRecord(const std::string& record, const std::string& before = {}) {
    return R"({"rackbookTable": 1, )" + before + R"("records": [{)" + record + "}]}";
}

std::string withField(const std::string& field) {
    return withRecord(R"("record": "lot", "id": "tin-{Nr}", "fields": {)" + field + "}");
}

TEST(TableMapping, ReadsEverythingThatItsFormHas) {
    const TableMapping mapping = read(withRecord(
        R"("record": "impression", "id": "{Code}/{#2}", "numbers": {"column": "Nr", "as": "ranges"},
           "when": {"column": "An", "isNot": ["-"]}, "changedOn": {"column": "Datum"},
           "fields": {"holder": {"pattern": "{An}", "find": "name", "otherwise": "x",
                                 "words": {"ich": "maker"}}})",
        R"("encoding": "windows-1252", "separator": ";", "skipRows": 2, "headings": false,
           "decimal": "comma", "thousands": ".", "dates": "dmy", "twoDigitYearsFrom": 1950,
           "missing": ["-"], "keepSpaces": true, "leaveOut": [{"column": "1", "is": ["Summe"]}], )"));
    EXPECT_EQ(mapping.form.encoding, "windows-1252");
    EXPECT_EQ(mapping.form.separator, ';');
    EXPECT_EQ(mapping.skipRows, 2u);
    EXPECT_FALSE(mapping.hasHeadings);
    EXPECT_EQ(mapping.numbers.decimal, ',');
    EXPECT_EQ(mapping.numbers.thousands, '.');
    EXPECT_EQ(mapping.dates.order, DateOrder::dayMonthYear);
    EXPECT_EQ(mapping.dates.twoDigitYearsFrom, 1950);
    EXPECT_TRUE(mapping.keepSpaces);
    EXPECT_EQ(mapping.leaveOut.at(0).is, std::vector<std::string>{"Summe"});
    const RecordRule& rule = mapping.records.at(0);
    EXPECT_EQ(rule.kind, RecordKind::impression);
    EXPECT_FALSE(rule.numbers->isCount);
    EXPECT_EQ(rule.when->isNot, std::vector<std::string>{"-"});
    EXPECT_EQ(rule.changedOn->text, "Datum");
    EXPECT_EQ(rule.fields.at(0).value.find, "name");
    EXPECT_EQ(rule.fields.at(0).value.otherwise, "x");
}

TEST(TableMapping, TellsEverythingThatIsWrongWithItsPointer) {
    EXPECT_EQ(refusalOf(withField(R"("netMass": {"column": "g"})")),
              "m.json:1 /records/0/fields/netMass: lot has no such field here. Did you mean "
              "netMass_g?");
    EXPECT_EQ(
        refusalOf(withField(R"("note": {"column": "g", "fixed": "x"})")),
        "m.json:1 /records/0/fields/note: exactly one of column, pattern and fixed is wanted. "
        "Keep the one that the value comes from.");
    EXPECT_EQ(refusalOf(withField(R"("note": {"column": "g", "find": "name"})")),
              "m.json:1 /records/0/fields/note/find: only the id of another record can be found "
              "(name). Leave it out.");
    EXPECT_EQ(
        refusalOf(withField(R"("supplier": {"column": "g", "find": "nam"})")),
        "m.json:1 /records/0/fields/supplier/find: party has no such field (nam). Name one of "
        "its fields, such as name, code or title.");
    EXPECT_EQ(refusalOf(withField(R"("note": {"pattern": "{a"})")),
              "m.json:1 /records/0/fields/note/pattern: a brace of this pattern is not closed or "
              "names nothing ({a). Write a heading in each pair, such as {Code}; {{ is a brace.");
    EXPECT_EQ(
        refusalOf(withField(R"("note": {"fixed": "?"})")),
        "m.json:1 /records/0/fields/note/fixed: this is still to be filled in (?). Write what "
        "is the same for every row, or name a column.");
    EXPECT_EQ(
        refusalOf(withField(R"("supplier": {"pattern": "no. {a}"})")),
        "m.json:1 /records/0/fields/supplier/pattern: the pattern holds characters that no id "
        "has (no. {a}). Use letters without accents, digits and . _ - / only.");
    EXPECT_EQ(refusalOf(withRecord(R"("record": "tin", "id": "x", "fields": {})")).substr(0, 66),
              "m.json:1 /records/0/record: there is no such kind of record (tin).");
    EXPECT_EQ(refusalOf(withRecord(R"("record": "lot", "id": "{#}", "fields": {})")),
              "m.json:1 /records/0/id: the pattern has a number, and nothing is counted ({#}). Add "
              "\"numbers\" beside it.");
    EXPECT_EQ(refusalOf(R"({"rackbookTable": 1, "decimals": "comma", "records": []})"),
              "m.json:1 /records: the list is shorter than 1 item. It means: What each row makes.\n"
              "m.json:1 /decimals: there is no field \"decimals\" here (comma). Did you mean "
              "decimal?");
    EXPECT_EQ(refusalOf(withRecord(R"("record": "lot", "id": "x", "fields": {})",
                                   R"("decimal": "comma", "thousands": ",", )")),
              "m.json:1 /thousands: the same mark parts thousands and stands before decimals (,). "
              "Say another one for either.");
}

TEST(TableMapping, OfTheTestsAndTheDemonstrationIsSound) {
    for (const std::string name :
         {"tests/exchange/tables/editions.mapping", "tests/exchange/tables/tins.mapping",
          "tests/exchange/tables/sales.mapping", "demo-edition/old-lists/editions.mapping"})
        EXPECT_FALSE(read(test::bytesOf(test::sourcePath(name))).records.empty()) << name;
}

TEST(FieldForms, KnowEveryField) {
    EXPECT_EQ(fieldAt(RecordKind::lot, "netMass_g")->field->form, FieldForm::number);
    EXPECT_EQ(fieldAt(RecordKind::lot, "pigments")->field->isList, true);
    EXPECT_EQ(fieldAt(RecordKind::lot, "supplier")->field->target, RecordKind::party);
    EXPECT_EQ(fieldAt(RecordKind::lot, "boughtOn")->field->form, FieldForm::date);
    EXPECT_EQ(fieldAt(RecordKind::place, "light.2.lightKind")->part, 1u);
    EXPECT_EQ(fieldAt(RecordKind::place, "light.1.directSun")->field->form, FieldForm::yesNo);
    EXPECT_FALSE(fieldAt(RecordKind::place, "light"));
    EXPECT_FALSE(fieldAt(RecordKind::place, "light.0.lightKind"));
    EXPECT_FALSE(fieldAt(RecordKind::place, "light.lightKind"));
    EXPECT_FALSE(fieldAt(RecordKind::lot, "netMass_g.1.x"));
}

}  // namespace
}  // namespace rackbook
