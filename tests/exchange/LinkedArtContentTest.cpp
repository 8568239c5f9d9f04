// What of the records goes where in descriptions as Linked Art.
#include "LinkedArtBook.h"

namespace rackbook {
namespace {

using namespace test;

// 310 mm are 31 cm; the standard's documents name centimetres (AAT 300379098), not millimetres.
TEST(LinkedArtContent, WritesSizesWithTheirUnit) {
    const build::Book book = oneSheet(
        [](Edition& r) {
            r.sheetHeight_mm = 312.5;
            r.sheetWidth_mm.reset();
            r.imageHeight_mm = r.imageWidth_mm = std::nullopt;
        },
        build::AsIs());
    const Json sheet = sheetOf(book);
    ASSERT_EQ(sheet["dimension"].size(), 1u);
    EXPECT_EQ(sheet["dimension"][0]["value"], 31.25);
    EXPECT_EQ(sheet["dimension"][0]["unit"]["id"], "http://vocab.getty.edu/aat/300379098");
    EXPECT_EQ(sheet["dimension"][0]["classified_as"][0]["id"],
              "http://vocab.getty.edu/aat/300055644");
    EXPECT_TRUE(says(sheet, "312.5 mm"));
    EXPECT_FALSE(sheet.contains("part"));
}

// Winter and summer time of the studio; the bounds are those of EDTF.
TEST(LinkedArtContent, WritesTheBoundsOfDates) {
    build::Book book = oneSheet();
    book.layer("E", 1);
    book.layer("E", 2);
    book.pull("E-layer2", "2026-07-04", {"E-1"},
              [](Pull& r) { r.end = build::on("2026-07-05T11:30"); });
    book.pull("E-layer1", "2026-03", {"E-1"});
    const Json production = sheetOf(book)["produced_by"];
    const Json parts = production["part"];
    ASSERT_EQ(parts.size(), 3u);
    EXPECT_EQ(parts[1]["_label"], "layer 1, grey");
    EXPECT_EQ(parts[1]["timespan"]["begin_of_the_begin"], "2026-03-01T00:00:00+01:00");
    EXPECT_EQ(parts[1]["timespan"]["end_of_the_begin"], "2026-03-31T23:59:59+02:00");
    EXPECT_FALSE(parts[1]["timespan"].contains("end_of_the_end"));
    EXPECT_EQ(parts[2]["timespan"]["begin_of_the_end"], "2026-07-05T11:30:00+02:00");
    EXPECT_EQ(parts[2]["timespan"]["end_of_the_end"], "2026-07-05T11:30:59+02:00");
    EXPECT_EQ(production["timespan"]["begin_of_the_begin"], "2026-03-01T00:00:00+01:00");
    EXPECT_EQ(production["timespan"]["end_of_the_end"], "2026-07-05T11:30:59+02:00");
}

TEST(LinkedArtContent, BoundsTheMakingByTheYearThatTheEditionDeclares) {
    build::Book book = oneSheet();
    EXPECT_EQ(sheetOf(book)["produced_by"]["timespan"]["end_of_the_end"],
              "2026-12-31T23:59:59+01:00");
    book.layer("E", 1);
    book.pull("E-layer1", "2026-03-04", {"E-1"});
    const Json span = sheetOf(book)["produced_by"]["timespan"];
    EXPECT_EQ(span["begin_of_the_begin"], "2026-03-04T00:00:00+01:00");
    EXPECT_EQ(span["end_of_the_end"], "2026-12-31T23:59:59+01:00");
}

TEST(LinkedArtContent, LeavesOutBoundsThatNobodyKnowsOrNobodyCanWrite) {
    for (const char* date : {"Y17000", "-0044", "1999/..", "../1999", "1999/", "/1999", "199X",
                             "1999-21", "0000", "9999-12-31", "1999-05-06T07:08:09+05:30"}) {
        const build::Book book =
            oneSheet([&](Edition& r) { r.year = build::on(date); }, build::AsIs());
        const auto files = written(book.records, choice());
        expectWithinTheRules(files);
        const Json span = files.at("impression/E-1.json")["produced_by"]["timespan"];
        EXPECT_TRUE(says(span, date));
        EXPECT_EQ(span.contains("begin_of_the_begin"),
                  date[0] != 'Y' && date[0] != '-' && date[0] != '.' && date[0] != '/')
            << date;
    }
}

TEST(LinkedArtContent, KeepsTheShiftThatADateWasWrittenWith) {
    build::Book book = oneSheet();
    book.layer("E", 1);
    book.pull("E-layer1", "2026-05-06T07:08:09+05:30", {"E-1"});
    EXPECT_EQ(sheetOf(book)["produced_by"]["part"][1]["timespan"]["begin_of_the_begin"],
              "2026-05-06T07:08:00+05:30");
}

TEST(LinkedArtContent, TellsLayersByTheirBlocksAndPigments) {
    build::Book book = oneSheet();
    book.reductionBlock("B", "E", {"2026-01-01", "2026-01-09"});
    book.lot("blue", LotKind::ink, [](Lot& r) { r.pigments = {"PB15:3", "PW6"}; });
    book.lot("red", LotKind::ink, [](Lot& r) { r.pigments = {"PR122"}; });
    book.lot("base", LotKind::base);
    book.mix("stock", MixPurpose::stock).mix("heap", MixPurpose::portion);
    book.addLot("stock", "blue", 100, "2026-01-02").addLot("stock", "base", 900, "2026-01-02");
    book.addMix("heap", "stock", 20, "2026-01-10T08:00");
    book.addLot("stock", "red", 1, "2026-01-20");
    book.layer("E", 2, [](Layer& r) {
        r.block = Ref<Block>{"B"};
        r.blockState = 2;
    });
    book.pull("E-layer2", "2026-01-10T09:00", {"E-1"}, [](Pull& r) {
        r.portion = Ref<Mix>{"heap"};
        r.press = "hand, baren";
    });
    const Json part = sheetOf(book)["produced_by"]["part"][1];
    EXPECT_EQ(part["used_specific_object"][0]["id"], base + "block/B.json");
    EXPECT_TRUE(says(part, "State 2 of the block: cut"));
    EXPECT_TRUE(says(part, "Printed with: hand, baren"));
    EXPECT_TRUE(says(part,
                     "Ink: grey; pigments weighed into it (Colour Index generic names): "
                     "PB15:3, PW6"));
    const Json block = written(book.records, choice()).at("block/B.json");
    EXPECT_EQ(block["produced_by"]["part"][1]["timespan"]["begin_of_the_begin"],
              "2026-01-09T00:00:00+01:00");
}

TEST(LinkedArtContent, HoldsWhereNothingIsKnown) {
    const auto bare = [](Edition& r) {
        r.process.clear();
        r.year.reset();
        r.imageHeight_mm = r.imageWidth_mm = r.sheetHeight_mm = r.sheetWidth_mm = std::nullopt;
        r.paper.reset();
        r.declaredNumbered.reset();
        r.statement.reset();
    };
    build::Book book = oneSheet(bare, build::AsIs());
    book.block("B", "E");
    const auto files = written(book.records, choice());
    expectWithinTheRules(files);
    const Json& sheet = files.at("impression/E-1.json");
    EXPECT_EQ(sheet["_label"], "Harbour, working number 1");
    for (const char* member :
         {"dimension", "made_of", "carries", "part", "representation", "destroyed_by"})
        EXPECT_FALSE(sheet.contains(member)) << member;
    EXPECT_FALSE(sheet["produced_by"].contains("timespan"));
    EXPECT_FALSE(sheet["produced_by"].contains("technique"));
    EXPECT_FALSE(files.at("block/B.json").contains("produced_by"));
}

TEST(LinkedArtContent, CarriesAnyTextUnharmed) {
    const std::string awkward = "\"Ebbe\"\n<b>\\潮の満ち干\t— مد وجزر\u2028𝄞 ";
    build::Book book = oneSheet(
        [&](Edition& r) {
            r.title = r.process = awkward;
            r.paper = r.statement = awkward;
            r.inscriptions = {{awkward, awkward, ""}};
        },
        [&](Impression& r) { r.designation = awkward; });
    book.block("B", "E", [&](Block& r) { r.name = awkward; });
    book.layer("E", 1, [&](Layer& r) { r.colourWords = awkward; });
    book.pull("E-layer1", "2026-03-01", {"E-1"});
    const auto files = written(book.records, choice());
    expectWithinTheRules(files);
    EXPECT_TRUE(says(files.at("impression/E-1.json"), awkward));
    EXPECT_EQ(files.at("inscription/E.1.json")["content"], awkward);
    EXPECT_TRUE(says(files.at("edition/E.json"), awkward));
    EXPECT_EQ(files.at("block/B.json")["_label"], awkward);
}

TEST(LinkedArtContent, TellsWhatBecameOfSheetsAndBlocks) {
    build::Book book = oneSheet(build::AsIs(), [](Impression& r) {
        r.fate = ImpressionFate::destroyed;
        r.fateOn = build::on("2026-05");
    });
    book.block("B", "E", [](Block& r) {
        r.fate = MatrixFate::cancelled;
        r.fateOn = build::on("2026-06");
    });
    book.block("C", "E", [](Block& r) { r.fate = MatrixFate::destroyed; });
    const auto files = written(book.records, choice());
    expectWithinTheRules(files);
    EXPECT_EQ(files.at("impression/E-1.json")["destroyed_by"]["timespan"]["begin_of_the_begin"],
              "2026-05-01T00:00:00+02:00");
    EXPECT_TRUE(says(files.at("block/B.json"),
                     "Cancelled: marked so that it prints no more, "
                     "2026-06"));
    EXPECT_FALSE(files.at("block/B.json").contains("destroyed_by"));
    EXPECT_TRUE(files.at("block/C.json").contains("destroyed_by"));
}

// Inscriptions are what the edition says of its sheets; one that was never signed has none yet.
TEST(LinkedArtContent, LaysInscriptionsToSheetsThatWereSigned) {
    const auto inscribed = [](Edition& r) { r.inscriptions = {{"M. O.", "right", "pencil"}}; };
    EXPECT_FALSE(sheetOf(oneSheet(inscribed, build::AsIs())).contains("carries"));
    const build::Book book =
        oneSheet(inscribed, [](Impression& r) { r.signedOn = build::on("2026-04-01"); });
    EXPECT_EQ(sheetOf(book)["carries"][0]["id"], base + "inscription/E.1.json");
    EXPECT_TRUE(says(sheetOf(book), "Signed, 2026-04-01"));
}

TEST(LinkedArtContent, KnowsPhotographsByTheirHash) {
    build::Book book = oneSheet();
    const std::string hash(64, 'a');
    book.add(Attachment{}, [&](Attachment& r) {
        r.id = "front/1";
        r.sha256 = hash;
        r.mediaType = "image/jpeg";
        r.impression = Ref<Impression>{"E-1"};
    });
    const auto files = written(book.records, choice());
    const Json& picture = files.at("picture/front~1.json");
    EXPECT_TRUE(says(picture, hash));
    EXPECT_EQ(picture["format"], "image/jpeg");
    EXPECT_EQ(files.at("impression/E-1.json")["representation"][0]["digitally_shown_by"][0]["id"],
              base + "picture/front~1.json");
}

TEST(LinkedArtContent, SaysWhereEachFileComesFrom) {
    LinkedArtChoice chosen = choice();
    chosen.persons = {"maker"};
    const build::Book book = oneSheet();
    EXPECT_TRUE(says(sheetOf(book, chosen),
                     "Generated on 2026-03-20 by rackbook 1 from the book of North shed: "
                     "impression E-1. What that record does not say is left out."));
    chosen.saidOn = "2026-02-01";
    EXPECT_TRUE(
        says(sheetOf(book, chosen),
             "Generated on 2026-03-20 by rackbook 1 from the book of North shed, as it said "
             "on 2026-02-01: impression E-1. What that record does not say is left out."));
    for (const auto& [path, content] : written(book.records, chosen))
        if (content["type"] != "Type") {
            EXPECT_NE(content.dump().find("Generated on 2026-03-20"), std::string::npos) << path;
        }
}

}  // namespace
}  // namespace rackbook
