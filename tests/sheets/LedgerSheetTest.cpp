#include "sheets/LedgerSheet.h"

#include <gtest/gtest.h>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

using test::onDay;

const test::SheetMeasurer measurer;

PageModel sheetOf(const RecordSet& records, const std::string& edition = {},
                  bool namesHolders = false, const char* day = "2026-03-20") {
    const SheetTemplate shipped = test::shippedTemplate("ledger", ledgerSheetRules());
    const ReadinessQuestion question{onDay(day), edition, namesHolders, shipped.label("atGallery"),
                                     shipped.label("atHolder")};
    return ledgerSheet(ledgerFactsOf(records, question), shipped, measurer, test::fixedClock);
}

// 1 is at a holder's, 2 in a gallery's back room, 4 with a holder by word of the record alone.
build::Book ledgerBook() {
    build::Book book = test::editionBook();
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.place("Secret Gallery", PlaceKind::gallery);
    book.place("Secret back room", PlaceKind::room,
               [](Place& r) { r.within = Ref<Place>{"Secret Gallery"}; });
    book.place("Secret Holder's home", PlaceKind::holderAddress);
    book.move("window", "2026-02-01", build::impressionIds("HB", 1, 8));
    book.move("Secret back room", "2026-03-05", {"HB-2"});
    book.move("Secret Holder's home", "2026-03-06", {"HB-1"});
    book.edition("ZZ", [](Edition& r) { r.title = "Other"; }).impressions("ZZ", 1, 2);
    book.edition("YY", [](Edition& r) { r.title = "Empty"; });
    book.impressions("ZZ", 3, 3, [](Impression& r) { r.holder = Ref<Party>{"secret"}; });
    return book;
}

std::string linesOf(const PageModel& model) {
    return test::linesOf(model);
}

TEST(LedgerSheet, ListsEveryImpression) {
    const std::string lines = linesOf(sheetOf(ledgerBook().records));
    for (const char* row :
         {"1 | 1/5 | 2026-03-01 | in existence | a holder's place | ",
          "2 | 2/5 | 2026-03-01 | in existence | a gallery | ",
          "3 | 3/5 | 2026-03-01 | destroyed, 2026-03-10 | – | –",
          "4 | AP I/II | 2026-03-01 | in existence | window | ",
          "5 | BAT | 2026-03-01 | in existence | window | ", "6 | – | – | in existence | window | ",
          "9 | – | – | spoiled, 2026-01-09 | – | –", "10 | – | – | in existence | not known | ",
          "3 | – | – | in existence | a holder's place | "})
        EXPECT_NE(lines.find(row), std::string::npos) << row << "\n" << lines;
}

// 1–3 are numbered, 3 of them destroyed; 4 AP; 5 BAT; 6, 7, 8, 10 are kept and 9 is spoiled, none
// of them signed by 20 March.
TEST(LedgerSheet, CountsByKindAndFate) {
    const std::string lines = linesOf(sheetOf(ledgerBook().records, "HB"));
    for (const char* row :
         {"Numbered | 2 | – | 1 | 3", "Artist's proof | 1 | – | – | 1",
          "Bon à tirer | 1 | – | – | 1", "Not signed | 4 | 1 | – | 5", "Together | 8 | 1 | 1 | 10"})
        EXPECT_NE(lines.find(row), std::string::npos) << row << "\n" << lines;
    EXPECT_EQ(lines.find("Other (ZZ)"), std::string::npos);
}

TEST(LedgerSheet, SetsOneEditionAfterTheOther) {
    const std::string all = test::wordsOf(sheetOf(ledgerBook().records));
    const std::size_t first = all.find("Harbour (HB)");
    const std::size_t second = all.find("Other (ZZ)");
    const std::size_t third = all.find("Empty (YY)\nNo impression is recorded.");
    EXPECT_NE(first, std::string::npos);
    EXPECT_NE(third, std::string::npos) << all;
    EXPECT_LT(first, second);
    EXPECT_LT(second, third);
}

TEST(LedgerSheet, NamesHoldersOnlyWhenAsked) {
    const std::string all = test::wordsOf(sheetOf(ledgerBook().records));
    for (const char* word : {"Secret", "secret", "private"})
        EXPECT_EQ(all.find(word), std::string::npos) << word;
    const PageModel named = sheetOf(ledgerBook().records, {}, true);
    EXPECT_TRUE(test::says(named, "Secret back room"));
    EXPECT_TRUE(test::says(named, "Secret Holder's home"));
    EXPECT_TRUE(test::says(named, "Secret Holder "));
}

TEST(LedgerSheet, LeavesOutWhatCameLater) {
    const std::string lines = linesOf(sheetOf(ledgerBook().records, "HB", false, "2026-03-04"));
    EXPECT_NE(lines.find("3 | 3/5 | 2026-03-01 | in existence | window | "), std::string::npos)
        << lines;
    EXPECT_NE(lines.find("2 | 2/5 | 2026-03-01 | in existence | window | "), std::string::npos)
        << lines;
    build::Book book = ledgerBook();
    book.transfer(TransferKind::sale, "maker", "secret", "2026-03-18", {"ZZ-3"});
    const std::string before = linesOf(sheetOf(book.records, "ZZ", false, "2026-03-17"));
    EXPECT_NE(before.find("3 | – | – | in existence | not known | "), std::string::npos) << before;
    const std::string after = linesOf(sheetOf(book.records, "ZZ", false, "2026-03-19"));
    EXPECT_NE(after.find("3 | – | – | in existence | a holder's place | "), std::string::npos)
        << after;
}

TEST(LedgerSheet, SaysTheVerdictInAWord) {
    const PageModel model = sheetOf(ledgerBook().records, "HB");
    EXPECT_NE(linesOf(model).find("4 | AP I/II | 2026-03-01 | in existence | window | look due"),
              std::string::npos)
        << linesOf(model);
}

TEST(LedgerSheet, IsTidyOverManyPages) {
    build::Book book = ledgerBook();
    for (int number = 11; number <= 200; ++number)
        book.signedImpression("HB", number, std::to_string(number) + "/300",
                              DesignationKind::numbered, "2026-03-02");
    const PageModel model = sheetOf(book.records);
    EXPECT_GT(model.pages.size(), 3u);
    expectTidy(model, Margins{});
    expectTidy(sheetOf(RecordSet()), Margins{});
    EXPECT_TRUE(test::says(sheetOf(RecordSet()), "No impression is recorded."));
}

// Sold, given, on consignment and on loan; what came back is nothing to tell. Spoiled sheets lie
// where their last move put them.
TEST(LedgerSheet, SaysWhatWasHandedOverAndUntilWhen) {
    build::Book book = ledgerBook();
    const auto due = [](Transfer& r) { r.dueOn = build::on("2026-06-30"); };
    book.transfer(TransferKind::consignment, "maker", "secret", "2026-03-05", {"HB-2"}, due);
    book.transfer(TransferKind::sale, "maker", "secret", "2026-03-06", {"HB-1"});
    book.transfer(TransferKind::loan, "maker", "secret", "2026-03-07", {"HB-4"}, due);
    book.transfer(TransferKind::gift, "maker", "secret", "2026-03-08", {"HB-5"});
    book.transfer(TransferKind::loan, "maker", "secret", "2026-03-07", {"HB-6"});
    book.transfer(TransferKind::giveBack, "secret", "maker", "2026-03-09", {"HB-6"});
    book.move("window", "2026-01-08", {"HB-9"});
    const PageModel model = sheetOf(book.records, "HB");
    for (const char* words : {"on consignment until 2026-06-30", "sold 2026-03-06",
                              "on loan until 2026-06-30", "given 2026-03-08"})
        EXPECT_TRUE(test::says(model, words)) << words << "\n" << test::linesOf(model);
    EXPECT_FALSE(test::says(model, "on loan since"));
    EXPECT_NE(linesOf(model).find("spoiled, 2026-01-09 | window | –"), std::string::npos)
        << linesOf(model);
    EXPECT_FALSE(test::says(model, "Secret"));
    EXPECT_FALSE(test::says(sheetOf(book.records, "HB", false, "2026-03-05"), "sold"));
}

}  // namespace
}  // namespace rackbook
