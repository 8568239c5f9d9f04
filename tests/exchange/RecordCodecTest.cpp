#include "exchange/RecordCodec.h"

#include <gtest/gtest.h>

#include "exchange/RecordFiles.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"

namespace rackbook {
namespace {

using test::messageOf;

TEST(RecordCodec, BringsBackEveryFieldOfEveryKind) {
    for (const Record& record : test::fullRecords()) {
        SCOPED_TRACE(idOf(record));
        const std::string text = encodeRecord(record);
        const Record back = decodeRecord(text);
        EXPECT_TRUE(sameFacts(back, record)) << text;
        EXPECT_EQ(encodeRecord(back), text);
    }
}

TEST(RecordCodec, BringsBackRecordsWithLittleInThem) {
    for (const Record& record : test::namedRecords()) {
        SCOPED_TRACE(idOf(record));
        EXPECT_TRUE(sameFacts(decodeRecord(encodeRecord(record)), record));
    }
}

TEST(RecordCodec, WritesFieldsInTheirOrderAndLeavesOutWhatIsAbsent) {
    Weighing weighing;
    weighing.id = "w1";
    weighing.mix.id = "grey";
    weighing.at = EdtfDate::parse("2026-03-04T09:30");
    weighing.lot = Ref<Lot>{"white"};
    weighing.mass_g = 0.1;
    EXPECT_EQ(encodeRecord(weighing),
              R"({"record":"weighing","id":"w1","mix":"grey","act":"add",)"
              R"("at":"2026-03-04T09:30","sequence":0,"lot":"white","mass_g":0.1})");
}

TEST(RecordCodec, EscapesOnlyWhatJsonWants) {
    Mix mix;
    mix.id = "m";
    mix.name = "a\"b\\c/d\n\t é\x7F";
    EXPECT_EQ(encodeRecord(mix),
              "{\"record\":\"mix\",\"id\":\"m\",\"name\":\"a\\\"b\\\\c/d\\u000a\\u0009 "
              "é\x7F\",\"purpose\":\"stock\"}");
}

// Hashes in the books that there are were made of these bytes.
TEST(RecordCodec, WritesRoundNumbersAsItEverDid) {
    Weighing weighing;
    weighing.mass_g = 200000;
    EXPECT_NE(encodeRecord(weighing).find("\"mass_g\":2e+05"), std::string::npos);
    weighing.mass_g = 0.0001;
    EXPECT_NE(encodeRecord(weighing).find("\"mass_g\":1e-04"), std::string::npos);
    weighing.mass_g = 1600000;
    EXPECT_NE(encodeRecord(weighing).find("\"mass_g\":1600000"), std::string::npos);
}

TEST(RecordCodec, KeepsEveryBitOfANumber) {
    for (const double mass_g : {0.1 + 0.2, 1.0 / 3, 100000.0, 1e-7, 5e-324}) {
        Weighing weighing;
        weighing.act = WeighingAct::discard;
        weighing.mass_g = mass_g;
        EXPECT_EQ(*std::get<Weighing>(decodeRecord(encodeRecord(weighing))).mass_g, mass_g);
    }
}

TEST(RecordCodec, GivesEqualTextForEqualRecordsHoweverTheyWereWritten) {
    RecordFileReader reader(test::schemaFolder());
    reader.read("a", R"({"record":"mix","id":"m","name":"Re\u0301d","purpose":"stock"})");
    reader.read("b", R"({ "purpose": "stock", "name": "Réd", "id": "m", "drierFree": false,
                          "record": "mix" })");
    ASSERT_EQ(reader.records().size(), 2u);
    EXPECT_EQ(reader.records()[0].payload, reader.records()[1].payload);
}

// Rules change; what was written down under earlier ones stays readable.
TEST(RecordCodec, ReadsWhatTodaysRulesWouldRefuse) {
    Mix unnamed;
    unnamed.id = "m";
    unnamed.name = " ";
    EXPECT_EQ(std::get<Mix>(decodeRecord(encodeRecord(unnamed))).name, " ");
    EXPECT_FALSE(std::get<Look>(decodeRecord(R"({"record":"look","id":"l"})")).touch);
}

TEST(RecordCodec, RefusesTextThatItDidNotWrite) {
    const auto refusal = [](const char* text) {
        return messageOf<InputError>([&] { decodeRecord(text); });
    };
    const std::string unreadable =
        "a journal entry: its record cannot be read. Run rackbook verify to see which entry it is.";
    EXPECT_EQ(refusal("{}"), unreadable);
    EXPECT_EQ(refusal("[]"), unreadable);
    EXPECT_EQ(refusal("5"), unreadable);
    EXPECT_EQ(refusal(R"({"record":5})"), unreadable);
    EXPECT_EQ(refusal(R"({"record":"mix","id":5})"), unreadable);
    EXPECT_EQ(refusal(R"({"record":"pull","impressions":7})"), unreadable);
    EXPECT_EQ(refusal(R"({"record":"pull","impressions":{"a":1}})"), unreadable);
    EXPECT_EQ(refusal(R"({"record":"poem"})"),
              "a journal entry: its record is of an unknown kind. Use a newer Rackbook.");
    EXPECT_EQ(refusal(R"({"record":"mix","id":"m","purpose":"fun"})"),
              "a journal entry: \"fun\" is none of its words. Use one of stock, letDown or "
              "portion.");
    EXPECT_EQ(refusal(R"({"record":"mix","id":"a b"})"),
              "a journal entry: \"a b\" is not an id. Use letters without accents, digits and . _ "
              "- / only.");
    EXPECT_EQ(refusal("{\"record\""),
              "a journal entry:1: it is not JSON: syntax error while parsing object separator - "
              "unexpected end of input; expected ':'. Mend the file at that line.");
}

}  // namespace
}  // namespace rackbook
