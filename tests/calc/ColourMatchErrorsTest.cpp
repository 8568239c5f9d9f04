#include "calc/ColourMatch.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "MatchFixture.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace test;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

std::string refusalOf(const std::function<void(MatchQuestion&)>& spoil) {
    MatchQuestion question = questionFor(targetMadeOf(plantedGrey), plantedThree);
    spoil(question);
    return messageOf<InputError>([&] { matchesFor(question, 1); });
}

TEST(ColourMatchErrors, RefusesToMatchWithoutInks) {
    EXPECT_EQ(refusalOf([](MatchQuestion& question) { question.colours.clear(); }),
              "match: no ink is known that could be taken. Make and measure drawdowns of the inks "
              "that are there.");
}

TEST(ColourMatchErrors, RefusesWhereNoRoomIsLeftForColour) {
    EXPECT_EQ(refusalOf([](MatchQuestion& question) { question.baseShare = 1; }),
              "match: base and drier together are to be 100 % of the ink. Leave room for colour.");
    EXPECT_EQ(refusalOf([](MatchQuestion& question) {
                  question.baseShare = 0.75;
                  question.held = {{honeyDrier, 0.5}};
              }),
              "match: base and drier together are to be 125 % of the ink. Leave room for colour.");
    EXPECT_EQ(refusalOf([](MatchQuestion& question) {
                  question.held = {{honeyDrier, 1}};
              }),
              "match: base and drier together are to be 100 % of the ink. Leave room for colour.");
    EXPECT_NE(refusalOf([](MatchQuestion& question) { question.baseShare = unknown; }),
              "(nothing was thrown)");
}

TEST(ColourMatchErrors, RefusesAFilmOfNothing) {
    const std::string refusal = "match: the film weight is not above 0. Give it in g/m².";
    const double wrong[][2] = {{0, 5}, {-1, 5}, {6, 5}, {unknown, 5}, {5, unknown}};
    for (const auto& range : wrong)
        EXPECT_EQ(refusalOf([&](MatchQuestion& question) {
                      question.filmWeightLeast_gm2 = range[0];
                      question.filmWeightGreatest_gm2 = range[1];
                  }),
                  refusal);
}

// Shares are 0 … 1 and add up to 1, or the question is refused.
TEST(ColourMatchErrors, RefusesSharesThatCannotBe) {
    EXPECT_NE(refusalOf([](MatchQuestion& question) {
                  question.baseShare = -0.1;
                  question.held = {{honeyDrier, 0.2}};
              }),
              "(nothing was thrown)");
    EXPECT_EQ(refusalOf([](MatchQuestion& question) {
                  question.baseShare = 0.5;
                  question.held = {{honeyDrier, -0.2}};
              }).substr(0, 6),
              "match:");
}

TEST(ColourMatchErrors, AddsUpToOneAlsoWhereAShareOfNoBaseIsFixed) {
    MatchQuestion question = questionFor(targetMadeOf(plantedGrey), plantedThree);
    question.base = -1;
    question.baseShare = 0.5;
    try {
        for (const MatchFound& one : matchesFor(question, 3))
            expectSound(one, question);
    } catch (const InputError&) {
        // To refuse it is as good.
    }
}

TEST(ColourMatchErrors, RefusesATargetThatIsNoNumber) {
    EXPECT_NE(refusalOf([](MatchQuestion& question) {
                  question.target = {{unknown, 0, 0}, std::nullopt};
              }),
              "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
