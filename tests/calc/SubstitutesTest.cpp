#include "calc/Substitutes.h"

#include <gtest/gtest.h>

#include "base/Edtf.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::messageOf;

TimeSpan on(const std::string& text) {
    const EdtfDate date = EdtfDate::parse(text);
    return {date.earliest(), date.latest()};
}

LotOnShelf lot(LotKind kind, double left_g, const std::vector<std::string>& pigments = {}) {
    LotOnShelf lot;
    lot.lotKind = kind;
    lot.pigments = pigments;
    lot.left_g = Estimate::exactly(left_g);
    return lot;
}

LotOnShelf blue(double left_g) {
    return lot(LotKind::ink, left_g, {"PB15:3"});
}

LotOnShelf drier(double left_g, const std::vector<DrierMetal>& metals) {
    LotOnShelf drier = lot(LotKind::drier, left_g);
    drier.drierMetals = metals;
    return drier;
}

LotOnShelf opened(LotOnShelf lot, const std::string& day) {
    lot.opened = on(day);
    return lot;
}

LotOnShelf finished(LotOnShelf lot, const std::string& day) {
    lot.finished = on(day);
    return lot;
}

LotService serviceOf(const std::vector<LotOnShelf>& shelf, double mass_g) {
    return servicesOf(shelf, {{0, mass_g}}, on("2026-03-04")).at(0);
}

// The service where lot 0 is finished and this is all there is besides.
LotService replacing(const LotOnShelf& needed, const std::vector<LotOnShelf>& others,
                     double mass_g = 10) {
    std::vector<LotOnShelf> shelf = {finished(needed, "2026-01-01")};
    shelf.insert(shelf.end(), others.begin(), others.end());
    return serviceOf(shelf, mass_g);
}

TEST(Substitutes, ALotWithEnoughServes) {
    EXPECT_EQ(serviceOf({blue(10)}, 10).answer, LotAnswer::serves);
    EXPECT_FALSE(serviceOf({blue(10)}, 10).leftNotKnown);
}

TEST(Substitutes, ALotWithAnUnknownRestServesAndSaysSo) {
    LotOnShelf unknown = blue(0);
    unknown.left_g = Estimate::anyMass();
    const LotService service = serviceOf({unknown}, 10);
    EXPECT_EQ(service.answer, LotAnswer::serves);
    EXPECT_TRUE(service.leftNotKnown);
    unknown.left_g = {12, notKnown, 20};
    EXPECT_FALSE(serviceOf({unknown}, 10).leftNotKnown);
    unknown.left_g = {2, notKnown, 8};
    EXPECT_EQ(serviceOf({unknown}, 10).answer, LotAnswer::tooLittle);
}

TEST(Substitutes, ALotFinishedByThatDayDoesNotServe) {
    EXPECT_EQ(serviceOf({finished(blue(50), "2026-03-05")}, 10).answer, LotAnswer::serves);
    for (const char* day : {"2026-03-04", "2026-03", "2025"})
        EXPECT_EQ(serviceOf({finished(blue(50), day)}, 10).answer, LotAnswer::needsColourMatching);
}

TEST(Substitutes, OnlyExactlyTheSamePigmentsReplace) {
    const LotOnShelf needed = lot(LotKind::ink, 0, {"PB15:3", "PW6"});
    const LotOnShelf same = lot(LotKind::ink, 50, {"PW6", "PB15:3"});
    EXPECT_EQ(replacing(needed, {same}).by, 1);
    for (const std::vector<std::string>& pigments :
         {std::vector<std::string>{"PB15:3"}, {"PB15:3", "PW6", "PBk7"}, {}})
        EXPECT_EQ(replacing(needed, {lot(LotKind::ink, 50, pigments)}).answer,
                  LotAnswer::needsColourMatching);
    EXPECT_EQ(replacing(needed, {lot(LotKind::modifier, 50, {"PB15:3", "PW6"})}).answer,
              LotAnswer::needsColourMatching);
    // Nothing is known of either.
    EXPECT_EQ(replacing(lot(LotKind::ink, 0), {lot(LotKind::ink, 50)}).answer,
              LotAnswer::needsColourMatching);
}

TEST(Substitutes, PrefersOpenedAndThenTheLongestOpened) {
    LotOnShelf old = blue(50);
    old.bought = on("2020-01-01");
    EXPECT_EQ(replacing(blue(0), {old, blue(50), opened(blue(50), "2026-02-01"),
                                  opened(blue(50), "2025-02-01"), opened(blue(5), "2024-02-01")})
                  .by,
              4);
    EXPECT_EQ(replacing(blue(0), {blue(50), old}).by, 2);
    // To be opened later: not opened yet.
    EXPECT_EQ(replacing(blue(0), {opened(blue(50), "2026-04-01"), old}).by, 2);
}

TEST(Substitutes, AKnownRestGoesBeforeAnUnknownOne) {
    LotOnShelf unknown = opened(blue(0), "2020-01-01");
    unknown.left_g = Estimate::anyMass();
    EXPECT_EQ(replacing(blue(0), {unknown, blue(50)}).by, 2);
    const LotService service = replacing(blue(0), {unknown});
    EXPECT_EQ(service.by, 1);
    EXPECT_TRUE(service.leftNotKnown);
}

TEST(Substitutes, ALotMustBeBoughtByThen) {
    LotOnShelf later = blue(50);
    later.bought = on("2026-03-05");
    EXPECT_EQ(replacing(blue(0), {later}).answer, LotAnswer::needsColourMatching);
    later.bought = on("2026-03-04");
    EXPECT_EQ(replacing(blue(0), {later}).answer, LotAnswer::replaced);
}

TEST(Substitutes, AnotherBaseIsPointedOut) {
    const LotService service =
        replacing(lot(LotKind::base, 0), {lot(LotKind::ink, 50), lot(LotKind::base, 50)});
    EXPECT_EQ(service.by, 2);
    EXPECT_TRUE(service.baseDiffers);
    EXPECT_EQ(service.factor, 1);
    EXPECT_EQ(replacing(lot(LotKind::base, 0), {}).answer, LotAnswer::noneAlike);
}

TEST(Substitutes, AModifierIsReplacedByOneOfTheSameWords) {
    LotOnShelf slackener = lot(LotKind::modifier, 50);
    slackener.colourWords = "Slackener";
    LotOnShelf stiffener = slackener;
    stiffener.colourWords = "Stiffener";
    EXPECT_EQ(replacing(slackener, {stiffener, slackener}).by, 2);
    EXPECT_EQ(replacing(slackener, {stiffener}).answer, LotAnswer::noneAlike);
}

TEST(Substitutes, DriersKeepTheMassOfTheirMetal) {
    const LotService service =
        replacing(drier(0, {{"cobalt", 0.06}}), {drier(50, {{"cobalt", 0.10}})});
    EXPECT_EQ(service.answer, LotAnswer::replaced);
    EXPECT_NEAR(service.factor, 0.6, 1e-12);
    EXPECT_FALSE(service.contentNotStated);
    // Twice as much of a weaker one is needed.
    EXPECT_EQ(replacing(drier(0, {{"cobalt", 0.06}}), {drier(19, {{"cobalt", 0.03}})}).answer,
              LotAnswer::tooLittle);
}

TEST(Substitutes, DriersOfOtherMetalsAreNotAlike) {
    const LotOnShelf needed = drier(0, {{"cobalt", 0.06}});
    EXPECT_EQ(replacing(needed, {drier(50, {{"manganese", 0.06}})}).answer, LotAnswer::noneAlike);
    EXPECT_EQ(replacing(needed, {drier(50, {{"cobalt", 0.06}, {"zirconium", 0.1}})}).answer,
              LotAnswer::noneAlike);
    EXPECT_EQ(replacing(drier(0, {}), {drier(50, {})}).answer, LotAnswer::noneAlike);
}

TEST(Substitutes, WithoutContentsTheFactorIsAGuess) {
    const LotOnShelf needed = drier(0, {{"cobalt", 0.06}});
    const LotService service = replacing(needed, {drier(50, {{"cobalt", {}}})});
    EXPECT_EQ(service.factor, 1);
    EXPECT_TRUE(service.contentNotStated);
    EXPECT_TRUE(replacing(needed, {drier(50, {{"cobalt", 0}})}).contentNotStated);
}

TEST(Substitutes, MetalsInAnotherProportionArePointedOut) {
    const LotOnShelf needed = drier(0, {{"cobalt", 0.02}, {"zirconium", 0.06}});
    EXPECT_FALSE(
        replacing(needed, {drier(50, {{"zirconium", 0.12}, {"cobalt", 0.04}})}).metalsDiffer);
    const LotService service =
        replacing(needed, {drier(50, {{"cobalt", 0.04}, {"zirconium", 0.06}})});
    EXPECT_TRUE(service.metalsDiffer);
    EXPECT_NEAR(service.factor, 0.8, 1e-12);
}

TEST(Substitutes, SeveralLotsTogetherMayDo) {
    const LotService service =
        serviceOf({blue(4), blue(3), opened(blue(5), "2026-01-01"), blue(9)}, 10);
    EXPECT_EQ(service.answer, LotAnswer::tooLittle);
    EXPECT_EQ(service.together, (std::vector<int>{0, 2, 1}));
    EXPECT_NEAR(service.short_g, 1, 1e-12);
    EXPECT_EQ(service.shortTogether_g, 0);
}

TEST(Substitutes, SaysHowMuchIsLackingAltogether) {
    const LotService service = serviceOf({blue(4), blue(3)}, 10);
    EXPECT_NEAR(service.short_g, 6, 1e-12);
    EXPECT_NEAR(service.shortTogether_g, 3, 1e-12);
    EXPECT_EQ(service.together, (std::vector<int>{0, 1}));
}

// Both need the one tin that is left; what its own need takes is not offered twice.
TEST(Substitutes, NoGramIsPromisedTwice) {
    const std::vector<LotOnShelf> shelf = {finished(blue(50), "2026-01-01"),
                                           finished(blue(50), "2026-01-01"), blue(25)};
    const std::vector<LotService> services =
        servicesOf(shelf, {{0, 8}, {1, 8}, {2, 15}}, on("2026-03-04"));
    EXPECT_EQ(services[2].answer, LotAnswer::serves);
    EXPECT_EQ(services[0].by, 2);
    EXPECT_EQ(services[1].answer, LotAnswer::tooLittle);
    EXPECT_NEAR(services[1].shortTogether_g, 6, 1e-12);
}

TEST(Substitutes, NeedsComeFromTheRecipe) {
    Recipe recipe;
    recipe.stages = {{"a", MixPurpose::stock, {{4, -1, 0.25}, {2, -1, 0.75}}}};
    const std::vector<LotNeed> needs = needsOf(recipe, 40);
    ASSERT_EQ(needs.size(), 2U);
    EXPECT_EQ(needs[0].lot, 2);
    EXPECT_DOUBLE_EQ(needs[0].mass_g, 30);
}

TEST(Substitutes, RefusesWhatCannotBe) {
    const auto refusal = [](const LotNeed& need) {
        return messageOf([&] { servicesOf({blue(4)}, {need}, on("2026-03-04")); });
    };
    for (const int missing : {-1, 1})
        EXPECT_EQ(refusal({missing, 1}), "need 1: it names no lot. Name a lot of the book.");
    for (const double mass_g : {-1.0, notKnown, std::numeric_limits<double>::infinity()})
        EXPECT_EQ(refusal({0, mass_g}),
                  "need 1: its mass is not a number of 0 or more. Give it in g.");
}

}  // namespace
}  // namespace rackbook
