// Entry by questions, from the words that are missing to what the book says.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "Script.h"
#include "Talk.h"
#include "commands/CommandTable.h"
#include "commands/GuideSteps.h"

namespace rackbook {
namespace {

class GuidedTest : public ::testing::Test {
protected:
    GuidedTest() {
        runScript("studio");
        transcriptOf(splitWords("rackbook impressions TIDE 9-20"));
        transcriptOf(splitWords("rackbook layer TIDE 3 straw"));
    }

    static std::string shown(const std::string& command) {
        return transcriptOf(splitWords(command));
    }

    static bool says(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }

    const FreshFolder m_folder;
};

// Layer 3 on sheets 1 to 18, two of them spoiled.
TEST_F(GuidedTest, RecordsAPullFromPlainAnswers) {
    const Talk told = talk({"rackbook", "pull"}, {"", "3", "1 to 18", "4 and 9", "none", "", "",
                                                  "line", "", "", "", "", "", "", "y"});
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_TRUE(says(told.text, "Which edition [TIDE]: ")) << told.text;
    EXPECT_TRUE(says(told.text, "Recorded in studio.rackbook.")) << told.text;
    EXPECT_TRUE(says(told.text, "The same without questions: rackbook pull --spoiled=4,9"))
        << told.text;
    const std::string pulls = shown("rackbook list pull --edition TIDE");
    EXPECT_TRUE(says(pulls, "TIDE:1-18")) << pulls;
    EXPECT_TRUE(says(pulls, "TIDE:4,9")) << pulls;
    EXPECT_TRUE(says(shown("rackbook show impression TIDE:4"), "spoiled"));
    EXPECT_TRUE(says(shown("rackbook show impression TIDE:5"), "line"));
}

TEST_F(GuidedTest, OffersTheSheetsThatAreLeft) {
    transcriptOf(splitWords("rackbook pull TIDE 1 1-5 --start 2026-03-20T10:00"));
    const Talk told = talk({"rackbook", "pull", "TIDE", "1"}, {});
    EXPECT_TRUE(says(told.text, "by working number [6-20]: ")) << told.text;
    EXPECT_FALSE(says(told.text, "Which edition")) << told.text;
}

TEST_F(GuidedTest, RecordsNothingWhereThePersonGivesUp) {
    const std::string before = stateOfBook();
    const Talk told = talk({"rackbook", "pull"}, {"TIDE", "3", "1-18"});
    EXPECT_EQ(told.exitCode, 2);
    EXPECT_TRUE(says(told.text, "Nothing was recorded.")) << told.text;
    EXPECT_EQ(stateOfBook(), before);
}

TEST_F(GuidedTest, ExplainsAMistakeAndAsksAgain) {
    const Talk told =
        talk({"rackbook", "hang"}, {"TIDE:1-99", "TIDE:1-4", "atttic", "line", "", "", "y"});
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_TRUE(says(told.text, "TIDE has no sheets 21-99") || says(told.text, "21-99"))
        << told.text;
    EXPECT_TRUE(says(told.text, "no place \"atttic\"") || says(told.text, "atttic")) << told.text;
}

// What only all answers together show is told before anything is recorded.
TEST_F(GuidedTest, LetsAnswersBeChangedThatDoNotStandTogether) {
    const Talk told =
        talk({"rackbook", "pull", "TIDE", "3"},
             {"1-4", "4", "", "", "", "", "", "", "", "", "", "", "n", "1", "5-8", "2", "5", "y"});
    EXPECT_TRUE(says(told.text, "--spoiled names 4, but pulled were 5-8")) << told.text;
    const Talk allSpoiled =
        talk({"rackbook", "pull", "TIDE", "3"},
             {"1-2", "all", "", "", "", "line", "", "", "", "", "", "", "2", "none", "y"});
    EXPECT_TRUE(says(allSpoiled.text, "This cannot be recorded:")) << allSpoiled.text;
    EXPECT_EQ(allSpoiled.exitCode, 0) << allSpoiled.text;
    EXPECT_TRUE(says(shown("rackbook show impression TIDE:2"), "line"));
}

// What cannot be is told at its question, and asked again.
TEST_F(GuidedTest, TellsImpossibleAnswersAtTheirQuestion) {
    const Talk told = talk({"rackbook", "pull", "TIDE", "3"},
                           {"1-4", "9", "4", "", "yesterday 18.10", "17.00", "1850", "", "", "",
                            "900", "21,5 °C", "130", "55 %", "10", "12", "6,5", "", "y"});
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_TRUE(says(told.text, "9 was not pulled. Pulled were 1-4")) << told.text;
    EXPECT_TRUE(says(told.text, "That is 2026-03-27T18:10.")) << told.text;
    EXPECT_TRUE(says(told.text, "that is before it began (2026-03-27T18:10)")) << told.text;
    EXPECT_TRUE(says(told.text, "900 °C cannot be.")) << told.text;
    EXPECT_TRUE(says(told.text, "130 % cannot be.")) << told.text;
    EXPECT_TRUE(says(told.text, "more ink is left than there was before (10 g)")) << told.text;
    EXPECT_TRUE(says(told.text, "--end=2026-03-27T18:50")) << told.text;
    EXPECT_TRUE(says(told.text, "--temperature=21.5")) << told.text;
}

TEST_F(GuidedTest, AsksAgainWhetherADayToComeIsMeant) {
    const Talk told = talk({"rackbook", "hang", "TIDE:1-4"},
                           {"line", "31.3.2026", "", "31.3.2026", "y", "", "y"});
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_TRUE(says(told.text, "That is in 3 days. Enter it all the same [y/N]: ")) << told.text;
    EXPECT_TRUE(says(told.text, "warning: move move-")) << told.text;
    EXPECT_TRUE(says(shown("rackbook list move"), "2026-03-31"));
    const Talk weighed =
        talk({"rackbook", "weigh", "veil-a"}, {"rose", "0", "-3", "4,5", "", "", "", "y"});
    EXPECT_TRUE(says(weighed.text, "a mass of 0 g is no weighing")) << weighed.text;
    EXPECT_TRUE(says(weighed.text, "Give a mass of 0 g or more.")) << weighed.text;
    EXPECT_EQ(weighed.exitCode, 0) << weighed.text;
}

// Numbers alone, where it is plain which edition is meant.
TEST_F(GuidedTest, TakesSheetsAsPeopleSayThem) {
    const Talk told = talk({"rackbook", "hang"}, {"tide 4 and 9", "line", "", "", "y"});
    EXPECT_TRUE(says(told.text, "That is TIDE:4,9.")) << told.text;
    const Talk look = talk({"rackbook", "look"}, {"1 to 3", "dry", "none", "all", "", "", "y"});
    EXPECT_EQ(look.exitCode, 0) << look.text;
    EXPECT_TRUE(says(look.text, "That is TIDE:1-3.")) << look.text;
    EXPECT_TRUE(says(look.text, "--stands-for=TIDE")) << look.text;
}

// An edition without ink: no question that nothing could answer.
TEST_F(GuidedTest, AsksForNoPortionWhereThereIsNone) {
    shown("rackbook edition MARSH Marsh --maker maren");
    shown("rackbook layer MARSH 1 reed");
    shown("rackbook impressions MARSH 1-4");
    const Talk told =
        talk({"rackbook", "pull", "MARSH", "1"},
             {"all", "", "", "", "", "hand press", "two blankets", "", "", "", "", "", "y"});
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_FALSE(says(told.text, "Which portion of ink")) << told.text;
    EXPECT_TRUE(says(told.text, "rackbook weigh MARSH-a")) << told.text;
    EXPECT_TRUE(says(told.text, "'--packing=two blankets'")) << told.text;
}

// Faults of a record are told by the questions, each on a line of its own.
TEST_F(GuidedTest, NamesTheQuestionsAndNoPaths) {
    const Talk layer =
        talk({"rackbook", "layer", "TIDE", "4"}, {"reed", "", "", "0,5", "-2", "drop"});
    EXPECT_TRUE(says(layer.text, "This cannot be recorded:")) << layer.text;
    EXPECT_TRUE(says(layer.text, "Wet ink aimed at, in g/m²: ")) << layer.text;
    EXPECT_FALSE(says(layer.text, "/filmWeight_gm2")) << layer.text;
    EXPECT_FALSE(says(layer.text, "\\u000A")) << layer.text;
}

TEST_F(GuidedTest, ChangesAnAnswerThatWasNotRight) {
    const Talk told =
        talk({"rackbook", "hang", "TIDE:1-4"}, {"line", "", "", "n", "1", "wall", "y"});
    EXPECT_EQ(told.exitCode, 0) << told.text;
    EXPECT_TRUE(says(shown("rackbook show impression TIDE:1"), "wall"));
    EXPECT_FALSE(says(shown("rackbook show impression TIDE:1"), "line"));
}

TEST_F(GuidedTest, GivesAnEntryUpAtTheSummary) {
    const std::string before = stateOfBook();
    const Talk told =
        talk({"rackbook", "hang", "TIDE:1-4"}, {"line", "", "", "n", "", "n", "drop"});
    EXPECT_EQ(told.exitCode, 2);
    EXPECT_EQ(stateOfBook(), before);
}

// A note that begins with a hyphen is a note.
TEST_F(GuidedTest, KeepsWordsThatLookLikeOptions) {
    const Talk told = talk({"rackbook", "look", "TIDE:1", "--touch", "dry"}, {});
    EXPECT_EQ(told.exitCode, 0) << told.text;  // nothing was missing
    const Talk entered =
        talk({"rackbook", "enter"}, {"party", "eva", "name=--Eva", "roles=maker", "", "", "y"});
    EXPECT_EQ(entered.exitCode, 0) << entered.text;
    EXPECT_TRUE(says(shown("rackbook show party eva"), "--Eva"));
}

TEST_F(GuidedTest, SaysWhichFieldsThereAre) {
    const Talk told = talk({"rackbook", "enter"}, {"place", "loft", "?"});
    EXPECT_TRUE(says(told.text, "placeKind (needed): ")) << told.text;
}

TEST_F(GuidedTest, AsksNothingWhereThereIsNoTerminal) {
    const std::string transcript = shown("rackbook pull");
    EXPECT_TRUE(says(transcript, "pull: EDITION is missing")) << transcript;
}

// Of what a verb cannot do without, nothing may go unasked.
TEST(GuideSteps, AskForEverythingThatIsNeeded) {
    for (const CommandSpec& spec : commandSpecs()) {
        if (!spec.writesBook)
            continue;
        std::set<std::string> asked;
        for (const GuideStep& step : guideSteps(spec)) {
            EXPECT_FALSE(step.question.empty()) << spec.name << " " << step.name;
            EXPECT_TRUE(asked.insert(step.name).second) << spec.name << " " << step.name;
        }
        for (const PositionalSpec& positional : spec.positionals)
            EXPECT_TRUE(!positional.required || asked.count(positional.name) > 0)
                << spec.name << " " << positional.name;
        for (const OptionSpec& option : spec.options)
            EXPECT_TRUE(!option.required || asked.count(option.name) > 0)
                << spec.name << " --" << option.name;
    }
}

TEST(GuideSteps, AskForThingsThatTheVerbsKnow) {
    for (const std::string& verb : guidedVerbs()) {
        const CommandSpec& spec = commandNamed(verb).spec;
        for (const GuideStep& step : guideSteps(spec)) {
            const auto isIt = [&](const auto& one) { return one.name == step.name; };
            EXPECT_TRUE(std::any_of(spec.positionals.begin(), spec.positionals.end(), isIt) ||
                        std::any_of(spec.options.begin(), spec.options.end(), isIt))
                << verb << " " << step.name;
        }
    }
}

}  // namespace
}  // namespace rackbook
