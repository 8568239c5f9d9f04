#include "sheets/ReadinessSheet.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

using test::onDay;

const test::SheetMeasurer measurer;

PageModel sheetOf(const RecordSet& records, const std::string& edition = {},
                  bool namesHolders = false, const char* day = "2026-03-20",
                  const std::string& language = "en") {
    const SheetTemplate shipped =
        test::shippedTemplate("readiness", readinessSheetRules(), language);
    const ReadinessQuestion question{onDay(day), edition, namesHolders, shipped.label("atGallery"),
                                     shipped.label("atHolder")};
    return readinessSheet(readinessFactsOf(records, question), shipped, measurer, test::fixedClock);
}

// Four extender-rich sheets: 1 and 2 hang in light, 3 was put into a drawer, 4 is with a holder; a
// second edition without pulls.
build::Book rackBook() {
    build::Book book;
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    book.party("secret");
    book.place("Secret Holder's home", PlaceKind::holderAddress,
               [](Place& r) { r.holder = Ref<Party>{"secret"}; });
    book.lot("clear", LotKind::base);
    book.lot("cobalt", LotKind::drier);
    book.mix("portion", MixPurpose::portion);
    book.addLot("portion", "clear", 98, "2026-03-01T08:00");
    book.addLot("portion", "cobalt", 2, "2026-03-01T08:01");
    book.edition("HB").layer("HB", 1).impressions("HB", 1, 5);
    book.pull("HB-layer1", "2026-03-02T10:00", build::impressionIds("HB", 1, 4),
              [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
    book.move("window", "2026-03-02T12:00", build::impressionIds("HB", 1, 4));
    book.move("drawer", "2026-03-06T12:00", {"HB-3"});
    book.move("Secret Holder's home", "2026-03-07T12:00", {"HB-4"});
    book.edition("ZZ", [](Edition& r) { r.title = "Other"; }).impressions("ZZ", 1, 2);
    return book;
}

TEST(ReadinessSheet, GroupsImpressionsThatStandAlike) {
    const PageModel model = sheetOf(rackBook().records, "HB", false, "2026-03-10");
    EXPECT_TRUE(test::says(model, "HB 1, 2"));
    EXPECT_TRUE(test::says(model, "Bring out into light HB 3 "));
    EXPECT_TRUE(test::says(model, "Leave in light, or hang there HB 1, 2 "));
    EXPECT_TRUE(test::says(model, " Layer 1 "));
    // From noon of 2 March to the end of 10 March: 8.5 days.
    EXPECT_TRUE(test::says(model, " 8 of 14 "));
    EXPECT_TRUE(test::says(model, "the studio wants"));
    EXPECT_FALSE(test::says(model, "ZZ"));
    expectTidy(model, Margins{});
}

TEST(ReadinessSheet, PutsUrgentThingsFirst) {
    const std::string all = test::wordsOf(sheetOf(rackBook().records));
    const std::size_t bringOut = all.find("Bring out into light");
    const std::size_t moreLight = all.find("Find out what the record doesn't say");
    EXPECT_LT(all.find("At a glance"), bringOut);
    EXPECT_LT(bringOut, moreLight);
    EXPECT_NE(moreLight, std::string::npos);
}

TEST(ReadinessSheet, NamesHoldersOnlyWhenAsked) {
    EXPECT_FALSE(test::says(sheetOf(rackBook().records), "Secret"));
    EXPECT_TRUE(test::says(sheetOf(rackBook().records), "a holder's place"));
    EXPECT_TRUE(test::says(sheetOf(rackBook().records, {}, true), "Secret Holder's"));
}

TEST(ReadinessSheet, CountsByEditionAndVerdict) {
    const std::string lines = test::linesOf(sheetOf(rackBook().records));
    EXPECT_NE(lines.find("Harbour (HB) | "), std::string::npos) << lines;
    EXPECT_NE(lines.find("Other (ZZ) | – | – | – | 2 | – | – | 2"), std::string::npos) << lines;
    EXPECT_NE(lines.find("All editions | "), std::string::npos) << lines;
}

TEST(ReadinessSheet, SaysWhereItsRulesComeFrom) {
    const PageModel model = sheetOf(rackBook().records);
    EXPECT_TRUE(test::says(model, "14 days"));
    EXPECT_TRUE(test::says(model, "80 %"));
    EXPECT_TRUE(test::says(model, "common practice, no source"));
}

TEST(ReadinessSheet, ManagesWithoutImpressions) {
    build::Book book;
    const PageModel model = sheetOf(book.records);
    EXPECT_TRUE(test::says(model, "No impression is recorded."));
    EXPECT_TRUE(
        test::says(model, "Nothing: every impression that was checked can go into storage."));
    expectTidy(model, Margins{});
}

// The groups in the order in which they first stand on the sheet.
std::vector<std::string> groupsIn(const PageModel& model) {
    const std::string words = test::wordsOf(model);
    std::vector<std::pair<std::size_t, std::string>> places;
    for (const char* group : {"HB 1, 2", "HB 3", "HB 4", "HB 5", "ZZ 1, 2"})
        places.emplace_back(words.find(group), group);
    std::sort(places.begin(), places.end());
    std::vector<std::string> groups;
    for (const auto& [at, group] : places) {
        EXPECT_NE(at, std::string::npos) << group;
        groups.push_back(group);
    }
    return groups;
}

TEST(ReadinessSheet, SaysWhyInTheLanguageOfTheSheetAndInOneOrder) {
    const RecordSet records = rackBook().records;
    const PageModel english = sheetOf(records);
    EXPECT_TRUE(
        test::says(english, "Layer 1 (98 % extender, 2 % drier) was printed 2 March 2026."));
    EXPECT_TRUE(test::says(english, "Put away too early, 6 March 2026 (drawer)"));
    EXPECT_TRUE(test::says(english, "No printing is recorded."));
    EXPECT_TRUE(test::says(sheetOf(records, {}, false, "2026-03-20", "de"),
                           "wurde am 2. März 2026 gedruckt."));
    EXPECT_TRUE(test::says(sheetOf(records, {}, false, "2026-03-20", "fr"),
                           "a été imprimée le 2 mars 2026."));
    for (const char* language : {"de", "fr", "es", "ja"}) {
        const PageModel model = sheetOf(records, {}, false, "2026-03-20", language);
        EXPECT_EQ(groupsIn(model), groupsIn(english)) << language;
        for (const char* word : {" the ", "extender", "light", " is ", "common practice"})
            EXPECT_FALSE(test::says(model, word)) << language << " " << word;
        expectTidy(model, Margins{});
    }
}

// 6 is destroyed on 15 March: until then it is judged like the others, and not left out as well.
TEST(ReadinessSheet, LeavesOutWhatWasLostOnlyFromThatDayOn) {
    build::Book book = rackBook();
    book.impressions("HB", 6, 6, [](Impression& r) {
        r.fate = ImpressionFate::destroyed;
        r.fateOn = build::on("2026-03-15");
    });
    EXPECT_FALSE(test::says(sheetOf(book.records, {}, false, "2026-03-10"), "were left out"));
    EXPECT_TRUE(test::says(sheetOf(book.records), "1 spoiled or destroyed were left out."));
}

TEST(ReadinessSheet, PrintsTheUsualSkiesOfTheStudio) {
    EXPECT_FALSE(test::says(sheetOf(rackBook().records), "For months that the book has"));
    build::Book book = rackBook();
    book.add(rackbook::Book{}, [](rackbook::Book& r) {
        r.id = "book";
        r.studio = "Studio";
        r.timeZone = "Europe/Copenhagen";
        r.monthlySkies = {{1, 0.15, 0.6, "own notes"}, {12, 0.1, 0.65, "own notes"}};
    });
    EXPECT_TRUE(test::says(sheetOf(book.records), "January 15 / 60, December 10 / 65."));
}

}  // namespace
}  // namespace rackbook
