#include "store/HistoryQuery.h"

#include <gtest/gtest.h>

#include <cmath>

#include "HistoryText.h"
#include "StoreBook.h"
#include "calc/HistoryOf.h"
#include "store/RecordReader.h"

namespace rackbook {
namespace {

using test::HistoryText;
using test::takeSound;

CivilMinute minuteOf(const char* text) {
    return EdtfDate::parse(text).earliest();
}

// Two editions, three sheets; everything is so small that the history can be read off.
class HistoryQueryTest : public test::StoreBook {
protected:
    HistoryQueryTest() {
        takeSound(book(), studio());
        takeSound(book(), inks());
        takeSound(book(), sheets());
        takeSound(book(), events());
    }

    static std::vector<Record> studio() {
        Party party;
        party.id = "printer";
        party.name = "P";
        Place rack;
        rack.id = "rack";
        rack.name = "Rack";
        rack.placeKind = PlaceKind::rack;
        Light dark;
        Light day;
        day.from = EdtfDate::parse("2025-05");
        day.lightKind = LightKind::daylight;
        rack.light = {dark, day};
        Place home;
        home.id = "home";
        home.name = "Home";
        home.placeKind = PlaceKind::holderAddress;
        Place wall = home;
        wall.id = "wall";
        wall.placeKind = PlaceKind::wall;
        wall.within = Ref<Place>{"rack"};
        wall.holder = Ref<Party>{"printer"};
        wall.light = {day};
        return {party, rack, home, wall};
    }

    static std::vector<Record> inks() {
        Lot base;
        base.id = "base";
        base.lotKind = LotKind::base;
        base.colourWords = "extender";
        Lot drier = base;
        drier.id = "drier";
        drier.lotKind = LotKind::drier;
        Mix stock;
        stock.id = "stock";
        stock.name = "stock";
        Mix portion = stock;
        portion.id = "portion";
        portion.purpose = MixPurpose::portion;
        Weighing first;
        first.id = "w1";
        first.mix.id = "stock";
        first.at = EdtfDate::parse("2025-06-01T09:00");
        first.lot = Ref<Lot>{"drier"};
        first.mass_g = 12.5;
        Weighing second;
        second.id = "w2";
        second.mix.id = "portion";
        second.at = EdtfDate::parse("2025-06-02");
        second.sequence = 3;
        second.fromMix = Ref<Mix>{"stock"};
        second.massLow_g = 1;
        second.massHigh_g = 2;
        return {base, drier, stock, portion, first, second};
    }

    static std::vector<Record> sheets() {
        Edition heron;
        heron.id = "heron";
        heron.code = "HER";
        heron.title = "Heron";
        heron.maker.id = "printer";
        heron.process = "linocut";
        Edition reed = heron;
        reed.id = "reed";
        reed.code = "REE";
        Layer layer;
        layer.id = "l1";
        layer.edition.id = "reed";
        layer.ordinal = 2;
        layer.colourWords = "grey";
        layer.extenderShare = 0.9;
        const auto sheet = [](const char* id, const char* edition, int number) {
            Impression impression;
            impression.id = id;
            impression.edition.id = edition;
            impression.workingNumber = number;
            return impression;
        };
        Impression signedOne = sheet("r1", "reed", 1);
        signedOne.designation = "1/2";
        signedOne.designationKind = DesignationKind::numbered;
        signedOne.holder = Ref<Party>{"printer"};
        Impression spoiled = sheet("r2", "reed", 2);
        spoiled.fate = ImpressionFate::spoiled;
        return {heron, reed, layer, spoiled, signedOne, sheet("h1", "heron", 7)};
    }

    static std::vector<Record> events() {
        Pull pull;
        pull.id = "p1";
        pull.layer.id = "l1";
        pull.start = EdtfDate::parse("2025-06-02T10:00");
        pull.portion = Ref<Mix>{"portion"};
        pull.impressions = {{"r2"}, {"r1"}};
        pull.inkBefore_g = 20;
        pull.inkAfter_g = 12.5;
        Pull later;
        later.id = "p2";
        later.layer.id = "l1";
        later.start = EdtfDate::parse("2025-06-01");
        later.impressions = {{"r1"}};
        Move in;
        in.id = "m1";
        in.impressions = {{"h1"}, {"r1"}};
        in.to.id = "rack";
        in.at = EdtfDate::parse("2025-06-03");
        in.why = MoveWhy::hang;
        in.interleaved = true;
        Move out;
        out.id = "m2";
        out.impressions = {{"r1"}};
        out.from = Ref<Place>{"rack"};
        out.to.id = "home";
        out.at = EdtfDate::parse("2025-06-20~");
        out.until = EdtfDate::parse("2025-07-01");
        out.why = MoveWhy::lend;
        Look sample;
        sample.id = "k1";
        sample.impressions = {{"h1"}};
        sample.standsFor = {{"r1"}};
        sample.at = EdtfDate::parse("2025-06-10");
        sample.colour = LookColour::returning;
        Look own;
        own.id = "k2";
        own.impressions = {{"r1"}};
        own.at = EdtfDate::parse("2025-06-11");
        own.touch = Touch::tacky;
        return {pull, later, in, out, sample, own};
    }

    static std::vector<std::uint32_t> rows(const RowLists& lists, std::size_t i) {
        return {lists.begin(i), lists.end(i)};
    }
};

using Rows = std::vector<std::uint32_t>;

TEST_F(HistoryQueryTest, GivesImpressionsByEditionAndWorkingNumber) {
    const History history = historyIn(book());
    ASSERT_EQ(history.editions.size(), 2u);
    EXPECT_EQ(history.editions[0].id, "heron");
    EXPECT_EQ(history.editions[1].code, "REE");
    ASSERT_EQ(history.impressions.size(), 3u);
    EXPECT_EQ(history.impressions[0].edition, 0);
    EXPECT_EQ(history.impressions[0].workingNumber, 7);
    EXPECT_FALSE(history.impressions[0].withHolder);
    EXPECT_EQ(history.impressions[1].edition, 1);
    EXPECT_EQ(history.impressions[1].workingNumber, 1);
    EXPECT_TRUE(history.impressions[1].withHolder);
    EXPECT_EQ(history.impressions[2].workingNumber, 2);
    EXPECT_EQ(history.impressions[2].fate, ImpressionFate::spoiled);
}

TEST_F(HistoryQueryTest, GivesLayersAndPulls) {
    const History history = historyIn(book());
    ASSERT_EQ(history.layers.size(), 1u);
    EXPECT_EQ(history.layers[0].edition, 1);
    EXPECT_EQ(history.layers[0].ordinal, 2);
    EXPECT_EQ(history.layers[0].extenderShare, 0.9);
    EXPECT_EQ(history.layers[0].colourWords, "grey");
    ASSERT_EQ(history.pulls.size(), 2u);
    EXPECT_EQ(history.pulls[0].layer, 0);
    EXPECT_EQ(history.pulls[0].portion, 1);
    EXPECT_EQ(history.pulls[0].start.earliest, minuteOf("2025-06-02T10:00"));
    EXPECT_EQ(history.pulls[0].inkUsed_g, 7.5);
    EXPECT_EQ(history.pulls[1].portion, -1);
    EXPECT_TRUE(std::isnan(history.pulls[1].inkUsed_g));
    EXPECT_EQ(history.pulls[1].start.latest, minuteOf("2025-06-02") - 1);
}

TEST_F(HistoryQueryTest, GivesInksAndWeighings) {
    const History history = historyIn(book());
    EXPECT_EQ(history.lots, (std::vector<LotKind>{LotKind::base, LotKind::drier}));
    EXPECT_EQ(history.mixCount, 2u);
    ASSERT_EQ(history.weighings.size(), 2u);
    EXPECT_EQ(history.weighings[0].mix, 0);
    EXPECT_EQ(history.weighings[0].lot, 1);
    EXPECT_EQ(history.weighings[0].fromMix, -1);
    EXPECT_EQ(history.weighings[0].mass_g, 12.5);
    EXPECT_TRUE(std::isnan(history.weighings[0].massLow_g));
    EXPECT_EQ(history.weighings[1].mix, 1);
    EXPECT_EQ(history.weighings[1].lot, -1);
    EXPECT_EQ(history.weighings[1].fromMix, 0);
    EXPECT_EQ(history.weighings[1].sequence, 3);
    EXPECT_TRUE(std::isnan(history.weighings[1].mass_g));
    EXPECT_EQ(history.weighings[1].massLow_g, 1);
    EXPECT_EQ(history.weighings[1].massHigh_g, 2);
    EXPECT_EQ(history.weighings[1].at.latest - history.weighings[1].at.earliest, minutesPerDay - 1);
}

TEST_F(HistoryQueryTest, GivesPlacesWithTheirLight) {
    const History history = historyIn(book());
    ASSERT_EQ(history.places.size(), 3u);
    EXPECT_EQ(history.places[0].id, "rack");
    EXPECT_EQ(history.places[0].within, -1);
    EXPECT_FALSE(history.places[0].atHolder);
    EXPECT_EQ(history.places[0].lightEnd - history.places[0].lightBegin, 2u);
    EXPECT_EQ(history.light[history.places[0].lightBegin].from.earliest, beginningOfTime);
    EXPECT_EQ(history.light[history.places[0].lightBegin].lightKind, LightKind::dark);
    EXPECT_EQ(history.light[history.places[0].lightBegin + 1].from.latest,
              minuteOf("2025-06-01") - 1);
    EXPECT_TRUE(history.places[1].atHolder);
    EXPECT_EQ(history.places[1].lightBegin, history.places[1].lightEnd);
    EXPECT_EQ(history.places[2].within, 0);
    EXPECT_TRUE(history.places[2].atHolder);
    EXPECT_EQ(history.light[history.places[2].lightBegin].lightKind, LightKind::daylight);
}

TEST_F(HistoryQueryTest, GivesMovesAndLooks) {
    const History history = historyIn(book());
    ASSERT_EQ(history.moves.size(), 2u);
    EXPECT_EQ(history.moves[0].to, 0);
    EXPECT_EQ(history.moves[0].from, -1);
    EXPECT_EQ(history.moves[0].why, MoveWhy::hang);
    EXPECT_TRUE(history.moves[0].interleaved);
    EXPECT_FALSE(history.moves[0].hasUntil);
    EXPECT_EQ(history.moves[1].to, 1);
    EXPECT_EQ(history.moves[1].from, 0);
    EXPECT_EQ(history.moves[1].at.earliest, minuteOf("2025-06-19"));
    EXPECT_TRUE(history.moves[1].hasUntil);
    EXPECT_EQ(history.moves[1].until.earliest, minuteOf("2025-07-01"));
    ASSERT_EQ(history.looks.size(), 2u);
    EXPECT_FALSE(history.looks[0].hasTouch);
    EXPECT_TRUE(history.looks[0].hasColour);
    EXPECT_EQ(history.looks[0].colour, LookColour::returning);
    EXPECT_TRUE(history.looks[1].hasTouch);
    EXPECT_EQ(history.looks[1].touch, Touch::tacky);
    EXPECT_FALSE(history.looks[1].hasColour);
}

TEST_F(HistoryQueryTest, ListsWhatHappenedToEachImpressionInTheOrderOfRecording) {
    const History history = historyIn(book());
    EXPECT_EQ(rows(history.pullsOf, 0), Rows{});
    EXPECT_EQ(rows(history.pullsOf, 1), (Rows{0, 1}));
    EXPECT_EQ(rows(history.pullsOf, 2), Rows{0});
    EXPECT_EQ(rows(history.movesOf, 0), Rows{0});
    EXPECT_EQ(rows(history.movesOf, 1), (Rows{0, 1}));
    EXPECT_EQ(rows(history.movesOf, 2), Rows{});
    EXPECT_EQ(rows(history.looksOf, 0), Rows{0});
    // The first look only stands for it; it was recorded first all the same.
    EXPECT_EQ(rows(history.looksOf, 1), (Rows{0, 1}));
    EXPECT_EQ(rows(history.looksOf, 2), Rows{});
}

TEST_F(HistoryQueryTest, GivesThoseThatAreAskedFor) {
    HistoryFilter filter;
    filter.edition = "reed";
    const History ofEdition = historyIn(book(), filter);
    ASSERT_EQ(ofEdition.impressions.size(), 2u);
    EXPECT_EQ(rows(ofEdition.pullsOf, 0), (Rows{0, 1}));
    EXPECT_EQ(rows(ofEdition.looksOf, 0), (Rows{0, 1}));
    EXPECT_EQ(rows(ofEdition.movesOf, 1), Rows{});
    EXPECT_EQ(ofEdition.places.size(), 3u);
    filter.impressions = std::vector<std::string>{"r2", "h1"};
    const History ofBoth = historyIn(book(), filter);
    ASSERT_EQ(ofBoth.impressions.size(), 1u);
    EXPECT_EQ(ofBoth.impressions[0].workingNumber, 2);
    filter.edition.reset();
    const History ofIds = historyIn(book(), filter);
    ASSERT_EQ(ofIds.impressions.size(), 2u);
    // By edition and working number, whatever the order of asking.
    EXPECT_EQ(ofIds.impressions[0].workingNumber, 7);
    EXPECT_EQ(ofIds.impressions[1].workingNumber, 2);
    EXPECT_EQ(rows(ofIds.movesOf, 0), Rows{0});
    EXPECT_EQ(rows(ofIds.pullsOf, 1), Rows{0});
    filter.impressions = std::vector<std::string>{"unknown"};
    EXPECT_TRUE(historyIn(book(), filter).impressions.empty());
    filter.impressions.reset();
    filter.edition = "unknown";
    EXPECT_TRUE(historyIn(book(), filter).impressions.empty());
}

// There are two ways to a history: from the tables, and from records in memory.
TEST_F(HistoryQueryTest, GivesTheSameAsTheRecordsDo) {
    BookFile full = BookFile::create({folder().file("full.book"), test::schemaFolder(), 0});
    takeSound(full, test::namedRecords());
    takeSound(full, test::fullRecords());
    const std::string text = HistoryText(historyIn(full)).text();
    EXPECT_EQ(text, HistoryText(historyOf(everythingIn(full))).text());
    EXPECT_NE(text.find("impression "), std::string::npos);
}

TEST_F(HistoryQueryTest, LabelsImpressions) {
    const History history = historyIn(book());
    const std::vector<ImpressionLabel> labels = labelsOf(book(), history);
    ASSERT_EQ(labels.size(), 3u);
    EXPECT_EQ(labels[0].id, "h1");
    EXPECT_EQ(labels[0].edition, "HER");
    EXPECT_EQ(labels[0].workingNumber, 7);
    EXPECT_EQ(labels[0].designation, "");
    EXPECT_EQ(labels[1].id, "r1");
    EXPECT_EQ(labels[1].designation, "1/2");
}

TEST_F(HistoryQueryTest, IsEmptyForAnEmptyBook) {
    const BookFile empty = BookFile::create({folder().file("empty"), test::schemaFolder(), 0});
    const History history = historyIn(empty);
    EXPECT_TRUE(history.impressions.empty());
    EXPECT_EQ(history.pullsOf.offsets, Rows{0});
}

TEST_F(HistoryQueryTest, NamesTheStatementsThatItRuns) {
    for (const std::string& sql : historyQueries()) {
        Statement statement = database().prepare(sql);
        statement.step();
    }
    EXPECT_EQ(historyQueries().size(), 15u);
}

}  // namespace
}  // namespace rackbook
