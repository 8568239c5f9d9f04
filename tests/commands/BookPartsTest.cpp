// What is read of a part of a book says the same of it as the whole book would.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "calc/MixLedger.h"
#include "calc/Readiness.h"
#include "commands/LightOfStudio.h"
#include "exchange/RecordCodec.h"
#include "store/Intake.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"
#include "support/DemoRecords.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

class BookPartsTest : public testing::Test {
protected:
    void SetUp() override {
        m_book.emplace(BookFile::create({m_folder.file("demo"), test::schemaFolder(), 0}));
        std::vector<Entry> entries;
        const RecordSet records = test::demoRecords();
        forEachRecordType([&](auto tag) {
            for (const auto& record : records.of<typename decltype(tag)::Type>())
                entries.push_back({record, encodeRecord(record), std::nullopt});
        });
        IntakeTerms terms;
        terms.recordedBy = "tests";
        terms.recordedAt = "2026-03-04T08:30:00Z";
        ASSERT_TRUE(take(*m_book, entries, terms).problems.empty());
    }
    const BookFile& book() const { return *m_book; }

    // By id, since positions differ.
    static std::string textOf(const MixContents& contents, const std::vector<std::string>& lots) {
        std::string text = textOf(contents.total_g) + " | " + textOf(contents.unrecorded);
        for (const MixPart& part : contents.parts)
            text +=
                " | " + lots[static_cast<std::size_t>(part.constituent)] + " " + textOf(part.share);
        return text;
    }

    template <class R>
    std::vector<std::string> idsOf() const {
        std::vector<std::string> ids;
        for (const R& record : allOf<R>(book()))
            ids.push_back(record.id);
        return ids;
    }

private:
    static std::string textOf(const Estimate& estimate) {
        return std::to_string(estimate.low) + " " + std::to_string(estimate.best) + " " +
               std::to_string(estimate.high);
    }

    test::TempFolder m_folder;
    std::optional<BookFile> m_book;
};

TEST_F(BookPartsTest, APartTellsOfAMixWhatTheWholeBookTells) {
    const MixLedger whole(ledgerByLot(inkHistoryIn(book())));
    const std::vector<std::string> lots = idsOf<Lot>();
    const std::vector<std::string> mixes = idsOf<Mix>();
    ASSERT_GT(mixes.size(), 10u);
    for (std::size_t i = 0; i < mixes.size(); ++i) {
        const PartOfInk part = inkPartOf(book(), {{}, {mixes[i]}, {}});
        const MixLedger own(ledgerByLot(part.history));
        EXPECT_EQ(textOf(own.atEnd(positionIn(part.mixes, mixes[i])), part.lots),
                  textOf(whole.atEnd(i), lots))
            << mixes[i];
    }
}

TEST_F(BookPartsTest, APartTellsOfAPullWhatTheWholeBookTells) {
    const MixLedger whole(ledgerByLot(inkHistoryIn(book())));
    const std::vector<std::string> lots = idsOf<Lot>();
    const std::vector<std::string> pulls = idsOf<Pull>();
    ASSERT_GT(pulls.size(), 10u);
    for (std::size_t i = 0; i < pulls.size(); ++i) {
        const PartOfInk part = inkPartOf(book(), {{pulls[i]}, {}, {}});
        const MixLedger own(ledgerByLot(part.history));
        EXPECT_EQ(textOf(own.atPull(positionIn(part.pulls, pulls[i])), part.lots),
                  textOf(whole.atPull(i), lots))
            << pulls[i];
    }
}

TEST_F(BookPartsTest, OnePrintIsJudgedAsAmongAll) {
    const HouseRules rules(bookRecordOf(book()).houseRules);
    const CivilMinute asOf = EdtfDate::parse("2026-03-20").latest();
    const History history = judgedHistoryIn(book(), {}, rules);
    const std::vector<ImpressionLabel> labels = labelsOf(book(), history);
    const Readiness whole = readinessOf(history, rules, asOf);
    ASSERT_GT(whole.rows.size(), 10u);
    for (const ReadinessRow& row : whole.rows) {
        const std::string& id = labels[static_cast<std::size_t>(row.impression)].id;
        const History part = judgedHistoryOfPrints(book(), {id}, rules);
        const Readiness own = readinessOf(part, rules, asOf);
        ASSERT_EQ(own.rows.size(), 1u) << id;
        EXPECT_EQ(own.rows[0].verdict, row.verdict) << id;
        EXPECT_EQ(own.rows[0].daysLow, row.daysLow) << id;
        EXPECT_EQ(own.rows[0].daysHigh, row.daysHigh) << id;
        EXPECT_EQ(std::to_string(own.rows[0].drierShare.best), std::to_string(row.drierShare.best))
            << id;
        EXPECT_EQ(std::to_string(own.rows[0].extenderShare.best),
                  std::to_string(row.extenderShare.best))
            << id;
        EXPECT_EQ(own.rows[0].place < 0, row.place < 0) << id;
    }
}

TEST_F(BookPartsTest, WhatIsAroundAnEditionIsAllThatNamesIt) {
    const RecordSet all = everythingIn(book());
    for (const Edition& edition : all.of<Edition>()) {
        const RecordSet part = recordsAround(book(), {{edition.id}, {}, {}});
        std::size_t prints = 0;
        for (const Impression& print : all.of<Impression>()) {
            if (print.edition.id != edition.id)
                continue;
            ++prints;
            EXPECT_NE(part.find<Impression>(print.id), nullptr) << print.id;
        }
        for (const Move& move : all.of<Move>()) {
            const bool isOfIt = std::any_of(
                move.impressions.begin(), move.impressions.end(),
                [&](const auto& ref) { return all.find(ref)->edition.id == edition.id; });
            EXPECT_TRUE(!isOfIt || part.find<Move>(move.id) != nullptr) << move.id;
        }
        EXPECT_GE(part.of<Impression>().size(), prints);
        EXPECT_EQ(part.of<Lot>().size(), all.of<Lot>().size());
        for (const Weighing& weighing : part.of<Weighing>()) {
            EXPECT_NE(part.find(weighing.mix), nullptr) << weighing.id;
            EXPECT_TRUE(!weighing.fromMix || part.find(weighing.fromMix) != nullptr) << weighing.id;
        }
        for (const Pull& pull : part.of<Pull>())
            for (const Ref<Impression>& print : pull.impressions)
                EXPECT_NE(part.find(print), nullptr) << pull.id;
    }
}

TEST_F(BookPartsTest, PrintsOfTheLatestPullsAreThoseThatWentThroughThem) {
    std::vector<Pull> pulls = allOf<Pull>(book());
    const CivilMinute asOf = EdtfDate::parse("2026-03-20").latest();
    EXPECT_EQ(printsOfLatestPulls(book(), pulls.size(), asOf), std::nullopt);
    std::stable_sort(pulls.begin(), pulls.end(), [](const Pull& a, const Pull& b) {
        return a.start.earliest() > b.start.earliest();
    });
    std::set<std::string> wanted;
    for (const Pull& pull : pulls)
        if (pull.start.earliest() >= pulls[2].start.earliest())
            for (const Ref<Impression>& print : pull.impressions)
                wanted.insert(print.id);
    const std::optional<std::vector<std::string>> found = printsOfLatestPulls(book(), 3, asOf);
    ASSERT_TRUE(found);
    EXPECT_EQ(std::set<std::string>(found->begin(), found->end()), wanted);
    EXPECT_LT(wanted.size(), allOf<Impression>(book()).size());
}

}  // namespace
}  // namespace rackbook
