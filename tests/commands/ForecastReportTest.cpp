// What forecasts, their reminders and rackbook light say of single prints.
#include "commands/ForecastReport.h"

#include <gtest/gtest.h>

#include <sstream>

#include "calc/StudioFixture.h"
#include "commands/ForecastCalendar.h"
#include "commands/ToldChanceWords.h"
#include "exchange/TreeJson.h"

#include <nlohmann/json.hpp>

namespace rackbook {
namespace {

class ForecastReportTest : public StudioTest {
protected:
    void forecastAsOf(const std::string& asOf) {
        const LightModel& model = modelAsOf(asOf);
        m_labels.clear();
        for (std::size_t i = 0; i < history.impressions.size(); ++i)
            m_labels.push_back({"e-" + std::to_string(i + 1), "E", static_cast<int>(i + 1), ""});
        m_readiness = readinessOf(history, rules, build::on(asOf).latest(), &model);
        m_plan = forecastPlanOf(history, m_labels, m_readiness, model, rules, -1);
    }
    ForecastFacts facts() const { return {history, rules, m_readiness, m_plan, false}; }
    // Lines are not broken.
    std::string said() const {
        std::ostringstream out;
        std::ostringstream err;
        ConsoleTraits traits;
        traits.width = 10'000;
        Console console(out, err, traits);
        printForecast(console, facts());
        std::string text = out.str();
        for (char& c : text)
            if (c == '\n')
                c = ' ';
        return text;
    }
    nlohmann::json groupsAsJson() const {
        return nlohmann::json::parse(jsonText(forecastTree(facts())))["groups"];
    }
    std::vector<CalendarEntry> reminders() const {
        return remindersOf(m_plan, m_readiness, history, rules);
    }
    static bool holds(const std::string& text, const std::string& words) {
        return text.find(words) != std::string::npos;
    }
    void interleave(const std::string& id, const std::string& at, const std::string& place) {
        book.move(place, at, {id}, [](Move& move) { move.interleaved = true; });
    }

    std::vector<ImpressionLabel> m_labels;
    Readiness m_readiness;
    ForecastPlan m_plan;
};

TEST_F(ForecastReportTest, AnInterleavedPrintIsNotThereAsNow) {
    interleave(print("2026-05-10T10:00", "rack"), "2026-05-12T10:00", "rack");
    forecastAsOf("2026-05-20");
    EXPECT_TRUE(holds(said(), "Now at rack, interleaved; "));
    EXPECT_TRUE(holds(said(), "rack, with the interleaving taken off"));
    EXPECT_FALSE(holds(said(), "as now"));
    const nlohmann::json first = groupsAsJson().at(0)["places"].at(0);
    EXPECT_EQ(first["place"], "rack");
    EXPECT_EQ(first["isHere"], false);
    EXPECT_EQ(first["interleavedHere"], true);
    ASSERT_EQ(reminders().size(), 1u);
    EXPECT_TRUE(holds(reminders()[0].description,
                      "It is at rack, in light with the interleaving taken off."));
}

TEST_F(ForecastReportTest, ABarePrintIs) {
    print("2026-05-10T10:00", "rack");
    interleave(print("2026-05-10T10:00", "rack"), "2026-05-12T10:00", "drawer");
    forecastAsOf("2026-05-20");
    EXPECT_TRUE(holds(said(), "Now at rack; "));
    EXPECT_TRUE(holds(said(), "rack, as now"));
    EXPECT_TRUE(holds(said(), "Now at drawer, interleaved; "));
    EXPECT_FALSE(holds(said(), "taken off"));
    for (const nlohmann::json& group : groupsAsJson())
        for (const nlohmann::json& at : group["places"]) {
            EXPECT_EQ(at["isHere"], group["verdict"] == "moreLight" && at["place"] == "rack");
            EXPECT_EQ(at["interleavedHere"], false);
        }
}

// Alike in all but the interleaving.
TEST_F(ForecastReportTest, BareAndInterleavedPrintsStandApart) {
    book.place("dim", PlaceKind::other, LightKind::dark);
    const std::string bare = print("2026-05-10T10:00", "dim");
    interleave(nextPrint(), "2026-05-10T10:00", "dim");
    book.pull("e-layer1", "2026-05-10T10:00", {"e-2"});
    forecastAsOf("2026-05-20");
    EXPECT_EQ(m_plan.groups.size(), 2u);
}

TEST_F(ForecastReportTest, TheCaptionGivesTheChanceByWhichRowsAreShown) {
    print("2026-11-10T10:00", "rack");
    forecastAsOf("2026-12-01");
    EXPECT_TRUE(holds(said(), "a chance of 10 %"));
    EXPECT_FALSE(holds(said(), "50 %"));
    lookAt(print("2026-11-10T11:00", "rack"), "2026-11-28", LookColour::turned);
    forecastAsOf("2026-12-01");
    EXPECT_TRUE(holds(said(), "a chance of 10 %"));
    EXPECT_TRUE(holds(said(),
                      "; 50 % where the last look did not find it true, because the next is worth "
                      "making when it is likelier than not to find it so, on the day by which half "
                      "are back"));
    lookAt("e-1", "2026-11-28", LookColour::turned);
    forecastAsOf("2026-12-01");
    EXPECT_FALSE(holds(said(), "10 %"));
    EXPECT_TRUE(holds(said(), "a chance of 50 %"));
}

TEST_F(ForecastReportTest, WhatWasFoundTrueWantsAnotherLookAndNoChance) {
    lookAt(print("2026-05-10T10:00", "rack"), "2026-06-10", LookColour::trueColour);
    forecastAsOf("2026-06-11");
    const std::string text = said();
    EXPECT_TRUE(holds(
        text, "The colour was found true on 2026-06-10: 1 of the 2 looks that the studio wants."));
    EXPECT_TRUE(holds(text, "Another look may be made from 2026-06-13 on."));
    EXPECT_FALSE(holds(text, "half back by"));
    EXPECT_FALSE(holds(text, "chance"));
    const nlohmann::json group = groupsAsJson().at(0);
    EXPECT_TRUE(group["returnedChance"].is_null());
    EXPECT_EQ(group["returnedChanceWhy"], "foundTrue");
    EXPECT_EQ(group["foundTrueOn"]["earliest"], "2026-06-10T00:00");
    EXPECT_EQ(group["nextLookFrom"], "2026-06-13");
    EXPECT_EQ(group["looksFoundTrue"], 1);
    EXPECT_EQ(group["looksWanted"], 2);
    EXPECT_TRUE(group["places"].at(0)["likely"].is_null());
    forecastAsOf("2026-06-13");
    EXPECT_TRUE(holds(said(), "Another look is due now."));
}

// It had turned and come back before its days in light were over.
TEST_F(ForecastReportTest, WhatWasFoundTrueEarlyIsForecastWithoutChances) {
    const std::string id = print("2026-05-10T10:00", "rack");
    lookAt(id, "2026-05-14", LookColour::turned);
    lookAt(id, "2026-05-18", LookColour::trueColour);
    forecastAsOf("2026-05-19");
    const std::string text = said();
    EXPECT_TRUE(holds(text, "The colour was found true on 2026-05-18: 1 of the 2 looks"));
    EXPECT_TRUE(holds(text, "another look from"));
    EXPECT_FALSE(holds(text, "half"));
    EXPECT_FALSE(holds(text, "most"));
    ASSERT_EQ(reminders().size(), 1u);
    EXPECT_TRUE(holds(reminders()[0].description, "The colour was found true on 2026-05-18"));
    EXPECT_FALSE(holds(reminders()[0].description, "half"));
    // Both looks, and only days are missing: by hand, 21 from 10 May at ten.
    lookAt(id, "2026-05-22", LookColour::trueColour);
    forecastAsOf("2026-05-23");
    EXPECT_TRUE(holds(said(), "Hanging in light, its days are done by 2026-05-31."));
}

TEST_F(ForecastReportTest, WhatDatesLeaveOpenIsNotForecast) {
    print("2025/2026", "rack");
    forecastAsOf("2026-06-10");
    EXPECT_TRUE(holds(said(), "No forecast: dates of pulls or moves are known so badly"));
    EXPECT_FALSE(holds(said(), "half back by"));
    const nlohmann::json group = groupsAsJson().at(0);
    EXPECT_TRUE(group["returnedChance"].is_null());
    EXPECT_EQ(group["returnedChanceWhy"], "datesTooWide");
    EXPECT_TRUE(group["places"].at(0)["early"].is_null());
    EXPECT_TRUE(reminders().empty());
    EXPECT_EQ(toldChanceWords(m_readiness.rows[0], history), "not known: dates");
}

TEST_F(ForecastReportTest, AChanceIsToldInPercent) {
    print("2026-05-10T10:00", "rack");
    forecastAsOf("2026-06-10");
    const std::string percent = toldChanceWords(m_readiness.rows[0], history);
    EXPECT_EQ(percent.substr(percent.size() - 2), " %");
    lookAt("e-1", "2026-06-10", LookColour::trueColour);
    forecastAsOf("2026-06-10");
    EXPECT_EQ(toldChanceWords(m_readiness.rows[0], history), "found true on 2026-06-10");
}

}  // namespace
}  // namespace rackbook
