// What had to be forgotten: out of the journal, its chain whole, and its bytes out of the files.
#include "store/ForgetSaid.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "StoreBook.h"
#include "records/Forgetting.h"
#include "store/BookAsSaid.h"
#include "store/JointIntake.h"
#include "store/JournalCopy.h"
#include "store/NewBook.h"
#include "store/RecordReader.h"
#include "store/Salvage.h"

namespace rackbook {
namespace {

using test::entriesOf;
using test::takeSound;
using test::termsOfTest;
using test::textOfProblems;

constexpr const char* secret = "Ingeborg Sørine";

IntakeTerms termsAt(const std::string& recordedAt) {
    IntakeTerms terms = termsOfTest();
    terms.recordedAt = recordedAt;
    terms.reason = "had to be forgotten";
    return terms;
}

class ForgetSaidTest : public test::StoreBook {
protected:
    ForgetSaidTest() {
        takeSound(book(), {party("first"), home("first"), shelf()});
        EXPECT_EQ(textOfProblems(take(book(), entriesOf({party("later"), home("later")}),
                                      termsAt("2026-04-01T10:00:00Z"))),
                  "");
    }

    static Party party(const std::string& note) {
        Party party;
        party.id = "p1";
        party.name = secret;
        party.roles = {PartyRole::holder};
        party.contact = "Sørine, Lærkevej 9";
        party.note = note + ", Sørine";
        return party;
    }
    static Place home(const std::string& note) {
        Place home;
        home.id = "home";
        home.name = std::string("At ") + secret + "'s";
        home.placeKind = PlaceKind::holderAddress;
        home.holder = Ref<Party>{"p1"};
        home.light.emplace_back().note = "Sørine's window";
        home.note = note;
        return home;
    }
    static Place shelf() {
        Place shelf;
        shelf.id = "shelf";
        shelf.name = "Shelf";
        shelf.within = Ref<Place>{"home"};
        return shelf;
    }

    std::size_t forget(const std::string& at = "2026-05-01T10:00:00Z") {
        overwriteWhatGoes(book());
        JointIntake together(book());
        const std::vector<Record> left = {*forgotten(Record(party(""))),
                                          *forgotten(Record(home("")))};
        EXPECT_EQ(textOfProblems(take(book(), entriesOf(left), termsAt(at))), "");
        const std::size_t entries =
            forgetSaid(book(), {{RecordKind::party, "p1"}, {RecordKind::place, "home"}});
        together.keep();
        return entries;
    }

    std::string findings() {
        std::string told;
        for (const Finding& finding : verify(book(), decodeRecord).findings)
            told += describe(finding) + "\n";
        return told;
    }

    // In any file beside the book, as the bytes lie there.
    bool liesInAnyFile(const std::string& words) const {
        for (const auto& entry :
             std::filesystem::directory_iterator(std::filesystem::path(path()).parent_path()))
            if (test::bytesOf(entry.path().string()).find(words) != std::string::npos)
                return true;
        return false;
    }
};

TEST_F(ForgetSaidTest, TheChainStandsAndTheTablesAreThoseOfTheJournal) {
    EXPECT_EQ(forget(), 4u);
    const Verification found = verify(book(), decodeRecord);
    EXPECT_EQ(findings(), "");
    EXPECT_EQ(found.forgotten, 4);
    EXPECT_EQ(found.entries, 7);
    rebuild(book(), decodeRecord);
    EXPECT_EQ(findings(), "");
    EXPECT_EQ(findIn<Party>(book(), "p1")->name, forgottenName);
    EXPECT_EQ(findIn<Party>(book(), "p1")->contact, std::nullopt);
    EXPECT_EQ(findIn<Place>(book(), "home")->holder->id, "p1");
    EXPECT_EQ(findIn<Place>(book(), "home")->light.front().note, std::nullopt);
    EXPECT_EQ(findIn<Place>(book(), "shelf")->name, "Shelf");
    // Nothing more to take out.
    EXPECT_EQ(forgetSaid(book(), {{RecordKind::party, "p1"}}), 0u);
}

TEST_F(ForgetSaidTest, IsAllOrNothing) {
    {
        JointIntake together(book());
        forgetSaid(book(), {{RecordKind::party, "p1"}});
    }
    EXPECT_EQ(numberFrom("SELECT count(*) FROM journal WHERE payload IS NULL"), 0);
}

TEST_F(ForgetSaidTest, LeavesNoByteInAnyFile) {
    ASSERT_TRUE(liesInAnyFile(secret));
    forget();
    EXPECT_TRUE(dropOldBytes(book()));
    for (const char* words : {secret, "Lærkevej", "Sørine", "Ingeborg"})
        EXPECT_FALSE(liesInAnyFile(words)) << words << ", while the book is open";
    close();
    for (const char* words : {secret, "Lærkevej", "Sørine", "Ingeborg"})
        EXPECT_FALSE(liesInAnyFile(words)) << words;
    reopen();
    EXPECT_EQ(findings(), "");
}

// Rows that were deleted long ago, when nothing was overwritten, lie there too.
TEST_F(ForgetSaidTest, LeavesNoByteOfWhatWasDeletedBefore) {
    tamper(
        "PRAGMA secure_delete = OFF; CREATE TABLE long_ago (t TEXT); INSERT INTO long_ago SELECT "
        "'Ingeborg Sørine of long "
        "ago' || hex(randomblob(3000)) FROM journal; DROP TABLE long_ago");
    ASSERT_TRUE(liesInAnyFile("of long ago"));
    reopen();
    forget();
    EXPECT_TRUE(dropOldBytes(book()));
    EXPECT_FALSE(liesInAnyFile("of long ago"));
}

TEST_F(ForgetSaidTest, SaysThatAReaderKeepsOldBytesAlive) {
    {
        const BookFile reader = BookFile::openToRead(options());
        ASSERT_EQ(findIn<Party>(reader, "p1")->name, secret);
        forget();
        EXPECT_FALSE(dropOldBytes(book()));
        EXPECT_TRUE(liesInAnyFile(secret));
    }
    EXPECT_TRUE(dropOldBytes(book()));
    EXPECT_FALSE(liesInAnyFile(secret));
    EXPECT_EQ(findings(), "");
}

TEST_F(ForgetSaidTest, WhatTheBookSaidBeforeNamesNobody) {
    forget();
    for (const char* before : {"2026-03-05T00:00:00Z", "2026-04-02T00:00:00Z"}) {
        const BookFile said = bookAsSaid(book(), before, decodeRecord);
        const std::optional<Party> party = findIn<Party>(said, "p1");
        ASSERT_TRUE(party);
        EXPECT_EQ(party->name, forgottenName);
        // As it was left, and not the least that could be said.
        EXPECT_EQ(party->roles, std::vector<PartyRole>{PartyRole::holder});
        const std::optional<Place> home = findIn<Place>(said, "home");
        ASSERT_TRUE(home && home->holder);
        EXPECT_EQ(home->placeKind, PlaceKind::holderAddress);
        EXPECT_EQ(home->holder->id, "p1");
        EXPECT_EQ(findIn<Place>(said, "shelf")->within->id, "home");
    }
    const BookFile early = bookAsSaid(book(), "2026-03-01T00:00:00Z", decodeRecord);
    EXPECT_FALSE(findIn<Party>(early, "p1"));
}

// Where the entry that says what was left is lost too, others can name the record all the same.
TEST_F(ForgetSaidTest, IsNamedByOthersWithoutAnyEntryThatSaysIt) {
    forget();
    std::vector<JournalRow> rows;
    eachJournalRow(book(), [&](const JournalRow& one) {
        if (one.entry <= 3)
            rows.push_back(one);
    });
    BookOptions again = options();
    again.path = folder().file("again.book");
    std::size_t at = 0;
    const auto next = [&](JournalRow& one) {
        if (at == rows.size())
            return false;
        one = rows[at++];
        return true;
    };
    EXPECT_EQ(bookOfJournal(
                  again, next, [](const std::string&) { return std::nullopt; }, decodeRecord),
              3);
    BookFile made = BookFile::openToWrite(again);
    for (const Finding& finding : verify(made, decodeRecord).findings)
        ADD_FAILURE() << describe(finding);
    EXPECT_EQ(findIn<Party>(made, "p1")->name, forgottenName);
    EXPECT_EQ(findIn<Place>(made, "home")->name, forgottenName);
    EXPECT_EQ(findIn<Place>(made, "shelf")->within->id, "home");
}

TEST_F(ForgetSaidTest, CopiesOfTheJournalKnowNoMore) {
    forget();
    std::vector<JournalRow> rows;
    eachJournalRow(book(), [&](const JournalRow& one) { rows.push_back(one); });
    BookOptions again = options();
    again.path = folder().file("again.book");
    std::size_t at = 0;
    bookOfJournal(
        again,
        [&](JournalRow& one) {
            if (at == rows.size())
                return false;
            one = rows[at++];
            return true;
        },
        [](const std::string&) { return std::nullopt; }, decodeRecord);
    const BookFile made = BookFile::openToRead(again);
    EXPECT_TRUE(verify(made, decodeRecord).findings.empty());
    EXPECT_EQ(verify(made, decodeRecord).lastHash, verify(book(), decodeRecord).lastHash);
    EXPECT_EQ(test::bytesOf(again.path).find(secret), std::string::npos);
}

// The rows of before lie in free space when nobody looked after the bytes; what was forgotten in
// one place is not brought back from another.
TEST_F(ForgetSaidTest, SalvageBringsNothingBack) {
    database().execute("PRAGMA secure_delete = OFF");
    {
        JointIntake together(book());
        const std::vector<Record> left = {*forgotten(Record(party(""))),
                                          *forgotten(Record(home("")))};
        EXPECT_EQ(textOfProblems(take(book(), entriesOf(left), termsAt("2026-05-01T10:00:00Z"))),
                  "");
        forgetSaid(book(), {{RecordKind::party, "p1"}, {RecordKind::place, "home"}});
        together.keep();
    }
    // Else there would be nothing to bring back.
    ASSERT_TRUE(liesInAnyFile(secret));
    close();
    BookOptions found = options();
    found.path = folder().file("found.book");
    NewBook made(found);
    const Salvaged salvaged = salvage(path(), made.book(), decodeRecord);
    EXPECT_TRUE(salvaged.isSameJournal);
    EXPECT_TRUE(salvaged.losses.empty());
    EXPECT_EQ(findIn<Party>(made.book(), "p1")->name, forgottenName);
    EXPECT_EQ(verify(made.book(), decodeRecord).forgotten, 4);
    EXPECT_TRUE(verify(made.book(), decodeRecord).findings.empty());
}

TEST_F(ForgetSaidTest, NoWayInBringsItBack) {
    forget();
    const std::string refused =
        textOfProblems(take(book(), entriesOf({party("again")}), termsAt("2026-06-01T10:00:00Z")));
    EXPECT_NE(refused.find("it had to be forgotten, and stays so"), std::string::npos) << refused;
    Place place = home("");
    place.name = forgottenName;
    place.note = "the house by the mill";
    EXPECT_NE(textOfProblems(take(book(), entriesOf({place}), termsAt("2026-06-01T10:00:00Z"))),
              "");
    // What names nobody may still change.
    Party left = std::get<Party>(*forgotten(Record(party(""))));
    left.roles = {PartyRole::holder, PartyRole::supplier};
    EXPECT_EQ(textOfProblems(take(book(), entriesOf({left}), termsAt("2026-06-01T10:00:00Z"))), "");
    EXPECT_EQ(findings(), "");
}

TEST_F(ForgetSaidTest, WhatWasStruckOutIsForgottenWhole) {
    Party other;
    other.id = "p2";
    other.name = "Torvald Nobody";
    takeSound(book(), {other});
    std::vector<Entry> strike = entriesOf({other});
    strike.front().strikes = true;
    EXPECT_EQ(textOfProblems(take(book(), strike, termsAt("2026-04-02T10:00:00Z"))), "");
    overwriteWhatGoes(book());
    EXPECT_EQ(forgetSaid(book(), {{RecordKind::party, "p2"}}), 2u);
    EXPECT_EQ(findings(), "");
    rebuild(book(), decodeRecord);
    EXPECT_EQ(findings(), "");
    EXPECT_FALSE(findIn<Party>(book(), "p2"));
    const BookFile said = bookAsSaid(book(), "2026-03-05T00:00:00Z", decodeRecord);
    EXPECT_EQ(findIn<Party>(said, "p2")->name, forgottenName);
    EXPECT_TRUE(dropOldBytes(book()));
    EXPECT_FALSE(liesInAnyFile("Torvald"));
}

TEST(Forgotten, IsWhatOthersReckonWith) {
    Place place;
    place.id = "gallery";
    place.name = "The Quay";
    place.placeKind = PlaceKind::gallery;
    place.capacity = 12;
    place.light.emplace_back().lightKind = LightKind::daylight;
    place.light.back().note = "over the harbour";
    EXPECT_FALSE(isNeutral(place));
    const Record left = *forgotten(Record(place));
    EXPECT_TRUE(isNeutral(left));
    EXPECT_EQ(std::get<Place>(left).capacity, 12);
    EXPECT_EQ(std::get<Place>(left).light.front().lightKind, LightKind::daylight);
    Party party;
    party.name = forgottenName;
    EXPECT_TRUE(isNeutral(party));
    party.contact = "c";
    EXPECT_FALSE(isNeutral(party));
    EXPECT_FALSE(forgotten(Record(Mix{})));
    EXPECT_FALSE(forgotten(RecordKind::lot, "rose"));
    EXPECT_FALSE(isNeutral(Mix{}));
}

}  // namespace
}  // namespace rackbook
