#include "sheets/TransferSheet.h"

#include <gtest/gtest.h>

#include <functional>

#include "EditionBook.h"
#include "SheetMeasures.h"
#include "SheetTools.h"

namespace rackbook {
namespace {

using test::onDay;

const test::SheetMeasurer measurer;

// The book of the edition's sheet with a gallery.
build::Book transferBook(TransferKind kind, const std::function<void(Transfer&)>& edit = {}) {
    build::Book book = test::editionBook();
    book.party("gallery", [](Party& r) {
        r.name = "Galleri Test";
        r.contact = "desk@example.invalid";
        r.note = "private words";
    });
    book.transfer(kind, "maker", "gallery", "2026-03-18", {"HB-1", "HB-2", "HB-4", "HB-7"},
                  [&](Transfer& r) {
                      r.dueOn = build::on("2026-09");
                      r.price = 8800;
                      r.currency = "DKK";
                      r.terms = "Forty per cent to the gallery.";
                      r.note = "private words";
                      if (edit)
                          edit(r);
                  });
    return book;
}

PageModel sheetOf(const build::Book& book, bool namesContacts = false,
                  const char* day = "2026-03-20", const std::string& language = "en") {
    const SheetTemplate shipped = test::shippedTemplate("transfer", transferSheetRules(), language);
    return transferSheet(transferFactsOf(book.records, book.records.of<Transfer>().front(),
                                         onDay(day), namesContacts),
                         shipped, measurer, test::fixedClock);
}

TEST(TransferSheet, SaysWhatWasAgreedBetweenWhom) {
    const PageModel model = sheetOf(transferBook(TransferKind::consignment));
    EXPECT_TRUE(test::says(model, "Consignment note Reference transfer1"));
    EXPECT_TRUE(test::says(model, "Consigned by maker Consigned to Galleri Test"));
    EXPECT_TRUE(test::says(model, "Agreed on 18 March 2026 Ends on September 2026"));
    EXPECT_TRUE(test::says(model, "Price 8800 DKK, for all 4 together"));
    EXPECT_TRUE(test::says(model, "Forty per cent to the gallery."));
    EXPECT_TRUE(test::says(model, "it is not legal advice"));
    EXPECT_TRUE(test::says(model, "Impressions: 4."));
    EXPECT_EQ(model.info.title, "Consignment note transfer1");
    expectTidy(model, Margins{});
}

TEST(TransferSheet, HasTheWordsOfItsKind) {
    const auto saysOf = [](TransferKind kind, const char* words) {
        return test::says(sheetOf(transferBook(kind)), words);
    };
    EXPECT_TRUE(saysOf(TransferKind::sale, "Seller maker Buyer Galleri Test"));
    EXPECT_TRUE(saysOf(TransferKind::loan, "Lender maker Borrower Galleri Test"));
    EXPECT_TRUE(saysOf(TransferKind::gift, "Given by maker Given to Galleri Test"));
    EXPECT_TRUE(saysOf(TransferKind::giveBack, "Returned by maker Returned to Galleri Test"));
}

// Who owns a print needs no rules for keeping it, and gives it back to nobody.
TEST(TransferSheet, HasCareAndASecondConditionOnlyWhereItComesBack) {
    for (const TransferKind kind : {TransferKind::consignment, TransferKind::loan}) {
        const PageModel model = sheetOf(transferBook(kind));
        EXPECT_TRUE(test::says(model, "Flat and dry, at an even"));
        EXPECT_TRUE(test::says(model, "Condition when it comes back"));
    }
    for (const TransferKind kind :
         {TransferKind::sale, TransferKind::gift, TransferKind::giveBack}) {
        const PageModel model = sheetOf(transferBook(kind));
        EXPECT_FALSE(test::says(model, "Flat and dry, at an even"));
        EXPECT_FALSE(test::says(model, "Condition when it comes back"));
    }
}

// All of ink that is nearly all base, with drier, pulled on 2 January: 1 and 2 hang in light and
// were found true and dry twice, 3 went into a drawer after four days, 4 hangs without a look, and
// where 5 went nobody wrote down.
TEST(TransferSheet, SaysHonestlyWhatStillNeedsLight) {
    build::Book book;
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
    book.lot("clear", LotKind::base).lot("cobalt", LotKind::drier);
    book.mix("portion", MixPurpose::portion);
    book.addLot("portion", "clear", 98, "2026-01-01T08:00");
    book.addLot("portion", "cobalt", 2, "2026-01-01T08:01");
    book.edition("HB").layer("HB", 1);
    book.signedImpression("HB", 1, "1/3", DesignationKind::numbered, "2026-03-16");
    book.impressions("HB", 2, 5);
    book.pull("HB-layer1", "2026-01-02T10:00", build::impressionIds("HB", 1, 5),
              [](Pull& r) { r.portion = Ref<Mix>{"portion"}; });
    book.move("window", "2026-01-02T12:00", build::impressionIds("HB", 1, 4));
    book.move("drawer", "2026-01-06T12:00", {"HB-3"});
    book.look("2026-02-25", {"HB-1", "HB-2"}, Touch::dry, LookColour::trueColour);
    book.look("2026-03-15", {"HB-1", "HB-2"}, Touch::dry, LookColour::trueColour);
    book.party("gallery");
    book.transfer(TransferKind::loan, "maker", "gallery", "2026-03-18",
                  build::impressionIds("HB", 1, 5));
    const PageModel model = sheetOf(book);
    EXPECT_TRUE(test::says(model, "records as of 20 March 2026: HB 1/3, #2"));
    EXPECT_TRUE(test::says(model, "Still in need of light: HB #3"));
    EXPECT_TRUE(test::says(model, "Not yet confirmed as ready: HB #4"));
    EXPECT_TRUE(test::says(model, "Not known: HB #5"));
    EXPECT_TRUE(test::says(model, "looks have it on 20 March 2026"));
    expectTidy(model, Margins{});
}

TEST(TransferSheet, TellsContactsOnlyWhenAskedAndNotesNever) {
    const build::Book book = transferBook(TransferKind::loan);
    EXPECT_FALSE(test::says(sheetOf(book), "desk@example.invalid"));
    EXPECT_TRUE(test::says(sheetOf(book, true), "Galleri Test desk@example.invalid"));
    for (const bool namesContacts : {false, true})
        for (const char* word : {"private", "Secret", "secret"})
            EXPECT_FALSE(test::says(sheetOf(book, namesContacts), word)) << word;
}

TEST(TransferSheet, WritesAmountsAsMoney) {
    const auto priceOf = [](double price, bool hasCurrency) {
        const PageModel model = sheetOf(transferBook(TransferKind::sale, [=](Transfer& r) {
            r.price = price;
            r.impressions = {{"HB-1"}};
            if (!hasCurrency)
                r.currency.reset();
        }));
        const std::string all = test::wordsOf(model);
        const std::size_t at = all.find("\nPrice\n") + 7;
        return all.substr(at, all.find('\n', at) - at);
    };
    EXPECT_EQ(priceOf(2200, true), "2200 DKK");
    EXPECT_EQ(priceOf(450.5, true), "450.50 DKK");
    EXPECT_EQ(priceOf(12000, true), "12,000 DKK");
    EXPECT_EQ(priceOf(1.125, true), "1.125 DKK");
    EXPECT_EQ(priceOf(900, false), "900, currency not recorded");
}

TEST(TransferSheet, SaysWhatIsNotRecorded) {
    const build::Book book = transferBook(TransferKind::loan, [](Transfer& r) {
        r.price.reset();
        r.currency.reset();
        r.dueOn.reset();
        r.terms.reset();
        r.receiver = {"gone"};
    });
    const PageModel model = sheetOf(book);
    EXPECT_TRUE(test::says(model, "Borrower not recorded"));
    EXPECT_TRUE(test::says(model, "Ends on not recorded"));
    EXPECT_TRUE(test::says(model, "Terms not recorded This sheet says"));
    EXPECT_FALSE(test::says(model, "Price"));
}

TEST(TransferSheet, LeavesOutASignatureThatCameLater) {
    const build::Book book = transferBook(TransferKind::sale);
    EXPECT_TRUE(test::says(sheetOf(book, false, "2026-03-20"), "1/5 working number 1"));
    EXPECT_TRUE(test::says(sheetOf(book, false, "2026-02-20"), "not signed working number 1"));
}

TEST(TransferSheet, SetsManyImpressionsOnPagesWithSignaturesAtTheEnd) {
    build::Book book = test::editionBook();
    book.impressions("HB", 11, 70);
    for (int last = 11; last <= 70; ++last) {
        build::Book one = book;
        one.party("gallery");
        one.transfer(TransferKind::consignment, "maker", "gallery", "2026-03-18",
                     build::impressionIds("HB", 11, last));
        const PageModel model = sheetOf(one);
        expectTidy(model, Margins{});
        EXPECT_TRUE(test::says(model, "working number " + std::to_string(last)));
        EXPECT_NE(textOf(model.pages.back()).find("Place, date, signature"), std::string::npos);
        EXPECT_GT(model.pages.back().texts.size(), 7u) << last;
    }
}

TEST(TransferSheet, WrapsLongNamesAndTitles) {
    std::string title;
    while (title.size() < 600)
        title += "Harbour ";
    build::Book book;
    book.party("long", [&](Party& r) { r.name = title; });
    book.edition("HB", [&](Edition& r) { r.title = title; }).impressions("HB", 1, 2);
    book.transfer(TransferKind::gift, "maker", "long", "1999~", {"HB-1", "HB-2"});
    expectTidy(sheetOf(book), Margins{});
    EXPECT_TRUE(test::says(sheetOf(book), "Agreed on about 1999"));
}

TEST(TransferSheet, NamesTheMediumAndTheSheet) {
    EXPECT_TRUE(test::says(sheetOf(transferBook(TransferKind::sale)),
                           "linocut; image 300 × 300 mm, sheet 400 × 400 mm"));
}

// A sale of "2002", or to nobody who is recorded, was written down afterwards.
TEST(TransferSheet, AsksNobodyToSignForWhatWasRecordedAfterwards) {
    EXPECT_TRUE(test::says(sheetOf(transferBook(TransferKind::sale)), "Place, date, signature"));
    const auto old = [](Transfer& r) { r.agreedOn = build::on("2002"); };
    const auto gone = [](Transfer& r) { r.receiver = {"gone"}; };
    for (const build::Book& book :
         {transferBook(TransferKind::sale, old), transferBook(TransferKind::sale, gone)}) {
        EXPECT_FALSE(test::says(sheetOf(book), "Place, date, signature"));
        EXPECT_TRUE(test::says(sheetOf(book), "nobody is asked to sign for it here"));
    }
}

}  // namespace
}  // namespace rackbook
