// What is asked of a part of a book, held against the whole of it.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "StoreBook.h"
#include "base/Error.h"
#include "store/HistoryPart.h"
#include "store/HistoryQuery.h"
#include "store/JournalQuery.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"
#include "store/TextSearch.h"
#include "support/Build.h"

namespace rackbook {
namespace {

using Ids = std::set<std::string>;

template <class R>
Ids idsOf(const RecordSet& records) {
    Ids ids;
    for (const R& record : records.of<R>())
        ids.insert(record.id);
    return ids;
}

CivilMinute minuteOf(const char* text) {
    return EdtfDate::parse(text).earliest();
}

// Two editions, a and b, of three prints each; each printed twice, with ink of its own that was let
// down from a stock of its own.
class PartsTest : public test::StoreBook {
protected:
    PartsTest() {
        build::Book all;
        all.party("buyer", [](Party& r) {
            r.name = "Élodie Bår";
            r.contact = "hidden@example.invalid";
        });
        all.place("rack", PlaceKind::rack, LightKind::daylight);
        all.place("drawer", PlaceKind::drawer, LightKind::dark);
        all.lot("base", LotKind::base).lot("rose", LotKind::ink);
        for (const std::string edition : {"a", "b"}) {
            all.edition(edition, [&](Edition& r) { r.title = "Title of " + edition; });
            all.layer(edition, 1).impressions(edition, 1, 3);
            all.mix("stock-" + edition, MixPurpose::stock);
            all.mix("portion-" + edition, MixPurpose::portion,
                    [&](Mix& r) { r.edition = Ref<Edition>{edition}; });
            const std::string year = edition == "a" ? "2025" : "2026";
            all.addLot("stock-" + edition, "rose", 20, year + "-03-01");
            all.addMix("portion-" + edition, "stock-" + edition, 5, year + "-03-02");
            const auto withIt = [&](Pull& r) { r.portion = Ref<Mix>{"portion-" + edition}; };
            all.pull(edition + "-layer1", year + "-03-03T09:00", {edition + "-1", edition + "-2"},
                     withIt);
            all.pull(edition + "-layer1", year + "-03-04T09:00", {edition + "-3"}, withIt);
            all.move("rack", year + "-03-05", {edition + "-1", edition + "-2", edition + "-3"});
            all.look(year + "-03-20", {edition + "-1"}, Touch::dry, LookColour::trueColour,
                     [&](Look& r) { r.standsFor = {{edition + "-2"}}; });
        }
        all.mix("gone", MixPurpose::stock, [](Mix& r) { r.finishedOn = build::on("2025-04-01"); });
        all.mix("empty", MixPurpose::stock);
        all.transfer(TransferKind::loan, "maker", "buyer", "2026-04-01", {"a-1"},
                     [](Transfer& r) { r.dueOn = build::on("2026-05-01"); });
        test::takeSound(book(), listed(all.records));
    }

    static std::vector<Record> listed(const RecordSet& records) {
        std::vector<Record> all;
        forEachRecordType([&](auto tag) {
            for (const auto& record : records.of<typename decltype(tag)::Type>())
                all.emplace_back(record);
        });
        return all;
    }
};

TEST_F(PartsTest, AroundAnEditionLiesWhatBelongsToIt) {
    const RecordSet around = recordsAround(book(), {{"a"}, {}, {}});
    EXPECT_EQ(idsOf<Edition>(around), Ids{"a"});
    EXPECT_EQ(idsOf<Impression>(around), (Ids{"a-1", "a-2", "a-3"}));
    EXPECT_EQ(idsOf<Layer>(around), Ids{"a-layer1"});
    EXPECT_EQ(idsOf<Mix>(around), (Ids{"portion-a", "stock-a"}));
    EXPECT_EQ(idsOf<Pull>(around), (Ids{"pull1", "pull2"}));
    EXPECT_EQ(idsOf<Move>(around), Ids{"move1"});
    EXPECT_EQ(idsOf<Look>(around), Ids{"look1"});
    EXPECT_EQ(idsOf<Transfer>(around), Ids{"transfer1"});
    // What belongs to the studio as a whole.
    EXPECT_EQ(idsOf<Lot>(around), (Ids{"base", "rose"}));
    EXPECT_EQ(idsOf<Party>(around), (Ids{"buyer", "maker"}));
    const RecordSet kinds = recordsOfKinds(book(), {RecordKind::mix});
    EXPECT_EQ(idsOf<Mix>(kinds).size(), 6U);
    EXPECT_TRUE(kinds.of<Lot>().empty());
}

TEST_F(PartsTest, TimePicksPullsTransfersAndMixes) {
    ASSERT_EQ(pullsSince(book(), minuteOf("2026-03-04")).size(), 1U);
    EXPECT_EQ(pullsSince(book(), minuteOf("2026-03-04"))[0].id, "pull4");
    ASSERT_EQ(transfersThatEnd(book()).size(), 1U);
    const auto inUse = [&](const char* since) {
        const std::vector<std::string> ids = mixesInUse(book(), minuteOf(since));
        return Ids(ids.begin(), ids.end());
    };
    EXPECT_EQ(inUse("2024-01-01"),
              (Ids{"stock-a", "portion-a", "stock-b", "portion-b", "empty", "gone"}));
    // Nothing went into or out of that of a since; the portion of b was printed with.
    EXPECT_EQ(inUse("2025-12-01"), (Ids{"stock-b", "portion-b", "empty"}));
    EXPECT_EQ(inUse("2026-03-04"), (Ids{"portion-b", "empty"}));
}

TEST_F(PartsTest, TheLatestPullsNameTheirPrints) {
    const CivilMinute asOf = minuteOf("2026-12-01");
    EXPECT_EQ(printsOfLatestPulls(book(), 1, asOf), (std::vector<std::string>{"b-3"}));
    EXPECT_EQ(printsOfLatestPulls(book(), 2, asOf),
              (std::vector<std::string>{"b-1", "b-2", "b-3"}));
    EXPECT_EQ(printsOfLatestPulls(book(), 1, minuteOf("2025-03-03T12:00")), std::nullopt);
    EXPECT_EQ(printsOfLatestPulls(book(), 4, asOf), std::nullopt);
}

TEST_F(PartsTest, TheHistoryOfOnePrintIsThatOfTheWhole) {
    const PrintsPart part = historyOfPrints(book(), {"b-2"});
    ASSERT_EQ(part.history.impressions.size(), 1U);
    EXPECT_EQ(part.history.pullsOf.items.size(), 1U);
    EXPECT_EQ(part.history.moves.size(), 1U);
    EXPECT_EQ(part.looks, std::vector<std::string>{"look2"});
    // The look stood for it; nobody looked at it.
    EXPECT_EQ(part.history.looksOf.items.size(), 1U);
    EXPECT_TRUE(part.history.ownLooksOf.items.empty());
    History whole = historyIn(book());
    EXPECT_EQ(whole.impressions.size(), 6U);
    keepPrints(book(), whole, {"b-2"});
    ASSERT_EQ(whole.impressions.size(), 1U);
    EXPECT_EQ(whole.looksOf.items.size(), 1U);
    EXPECT_TRUE(whole.ownLooksOf.items.empty());
    EXPECT_EQ(whole.pulls[whole.pullsOf.items.at(0)].start.earliest,
              part.history.pulls[part.history.pullsOf.items.at(0)].start.earliest);
}

TEST_F(PartsTest, APartOfTheInkHoldsWhatItCameFrom) {
    const PartOfInk part = inkPartOf(book(), {{}, {"portion-a", "nowhere"}, {}});
    EXPECT_EQ(Ids(part.mixes.begin(), part.mixes.end()), (Ids{"portion-a", "stock-a"}));
    EXPECT_EQ(part.weighings.size(), 2U);
    EXPECT_EQ(part.pulls.size(), 2U);
    EXPECT_EQ(part.history.mixCount, 2U);
    EXPECT_EQ(part.mixes.at(positionIn(part.mixes, "portion-a")), "portion-a");
    EXPECT_EQ(positionIn(part.mixes, "nowhere"), part.mixes.size());
    const PartOfInk ofLot = inkPartOf(book(), {{}, {}, {"rose"}});
    EXPECT_EQ(ofLot.weighings.size(), 2U);
}

TEST_F(PartsTest, WordsAreFoundByTheirBeginnings) {
    const auto found = [&](const char* question) {
        std::vector<std::string> ids;
        for (const FoundText& one : searchTexts(book(), question, 50).found)
            ids.push_back(one.id + "/" + one.field);
        std::sort(ids.begin(), ids.end());
        return ids;
    };
    using Found = std::vector<std::string>;
    EXPECT_EQ(found("TITL"), (Found{"a/title", "b/title"}));
    EXPECT_EQ(found("title of b"), Found{"b/title"});
    EXPECT_EQ(found("elodie"), Found{"buyer/name"});
    EXPECT_EQ(found("Élodie bar"), Found{"buyer/name"});
    // Words of a question in ASCII, texts that are not, and the other way round.
    EXPECT_EQ(found("stock-a"), (Found{"stock-a/id", "stock-a/name"}));
    EXPECT_EQ(found("stóck-a"), (Found{"stock-a/id", "stock-a/name"}));
    EXPECT_EQ(found("hidden"), Found{});
    const TextSearch none = searchTexts(book(), "titles", 50);
    ASSERT_EQ(none.unknown.size(), 1U);
    EXPECT_EQ(none.unknown[0].second, "title");
    EXPECT_EQ(searchTexts(book(), "title", 1).found.size(), 1U);
    EXPECT_EQ(searchTexts(book(), "title", 1).count, 2U);
    EXPECT_THROW(searchTexts(book(), " ", 1), UsageError);
}

TEST_F(PartsTest, TheJournalTellsOfOneRecordAndOfOneIntake) {
    Party buyer = *findIn<Party>(book(), "buyer");
    buyer.name = "Élodie Baar";
    EXPECT_EQ(test::correctionProblems(book(), {buyer}), "");
    const std::vector<JournalEntry> its = journalOf(book(), RecordKind::party, "buyer");
    ASSERT_EQ(its.size(), 2U);
    EXPECT_EQ(its[1].action, JournalAction::correct);
    EXPECT_EQ(its[1].earlier, its[0].entry);
    EXPECT_EQ(its[1].reason, "it was wrong");
    EXPECT_EQ(journalEntry(book(), its[1].entry)->id, "buyer");
    EXPECT_EQ(journalEntry(book(), 1'000'000), std::nullopt);
    const auto latest = latestIntakes(book(), 1);
    ASSERT_EQ(latest.size(), 1U);
    ASSERT_EQ(latest[0].size(), 1U);
    EXPECT_EQ(latest[0][0].entry, its[1].entry);
    EXPECT_EQ(journalOfIntake(book(), its[0].intake).size(),
              static_cast<std::size_t>(its[1].entry) - 1);
}

}  // namespace
}  // namespace rackbook
