#include "calc/Characterisation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "InventedInks.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using namespace test;

using Samples = std::vector<DrawdownSample>;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

Characterisation learnt(const Samples& samples, const FilmSurface& surface = {}) {
    return characterise(samples, inventedKinds(), surface);
}

// Two of base alone, and three let-downs of each of the inks.
Samples usualDrawdowns(const std::vector<int>& inks, const FilmSurface& surface = {}) {
    const std::vector<Bands> backings = {whitePaper(), blackCard()};
    Samples samples = {drawdownOf("base-thin", {{clearBase, 1}}, 6, backings, surface),
                       drawdownOf("base-thick", {{clearBase, 1}}, 14, backings, surface)};
    for (const int ink : inks)
        for (const double share : {0.02, 0.1, 0.4})
            samples.push_back(drawdownOf("ink" + std::to_string(ink) + "-" + std::to_string(share),
                                         letDown(ink, share), 5, backings, surface));
    return samples;
}

void misread(Samples& samples, double spread, Chance& chance) {
    for (DrawdownSample& sample : samples)
        for (ReadingOver& over : sample.over)
            for (Bands* bands : {&over.backing, &over.film})
                for (double& value : *bands)
                    value = std::max(0.0, value + spread * chance.spread());
}

void expectSameOptics(const Characterisation& one, const Characterisation& other, int lot) {
    ASSERT_TRUE(one.of(lot));
    ASSERT_TRUE(other.of(lot));
    EXPECT_EQ(one.of(lot)->optics.absorption_m2g, other.of(lot)->optics.absorption_m2g);
    EXPECT_EQ(one.of(lot)->optics.scattering_m2g, other.of(lot)->optics.scattering_m2g);
}

// Invented inks are read without error and must come back. What is left comes from the pull towards
// a usual S (InkFit.h): K within 1/200, S within 1/50, colours within 0.05.
TEST(Characterisation, RecoversInksFromReadingsWithoutError) {
    for (const FilmSurface& surface : {FilmSurface{}, FilmSurface{0.04, 0.6, 1}}) {
        const Characterisation found =
            learnt(usualDrawdowns({coldYellow, deepBlue}, surface), surface);
        EXPECT_EQ(found.surface.specularShare, surface.specularShare);
        const std::vector<InkOptics> truth = inventedOptics();
        for (const int lot : {clearBase, coldYellow, deepBlue}) {
            SCOPED_TRACE(lot);
            const LotOptics* its = found.of(lot);
            ASSERT_TRUE(its);
            EXPECT_EQ(its->source, OpticsSource::fitted);
            expectOptics(its->optics, truth[static_cast<std::size_t>(lot)], 0.005, 0.02);
            expectOptics(found.optics[static_cast<std::size_t>(lot)], its->optics, 0, 0);
            EXPECT_EQ(its->fit.readings, its->readings);
            EXPECT_LT(its->fit.most_dE00, 0.02);
            ASSERT_TRUE(its->leftOut);
            EXPECT_LT(its->leftOut->mean_dE00, 0.02);
            EXPECT_LT(its->leftOut->most_dE00, 0.1);
        }
    }
}

// Readings 0.002 off: predictions miss the readings by what the readings miss the truth by, give or
// take what the fit itself is off (no source: the order of magnitude is held).
TEST(Characterisation, TellsOfNoiseByWhatItMissesWhenLeftOut) {
    const Samples exact = usualDrawdowns({warmRed, greenBlue});
    Samples noisy = exact;
    Chance chance(7);
    misread(noisy, 0.002, chance);
    double noise_dE00 = 0;
    double readings = 0;
    for (std::size_t i = 2; i < exact.size(); ++i)
        for (std::size_t j = 0; j < exact[i].over.size(); ++j, ++readings)
            noise_dE00 += deltaE00(labOf(exact[i].over[j].film, ViewingLight::D50),
                                   labOf(noisy[i].over[j].film, ViewingLight::D50));
    noise_dE00 /= readings;
    const Characterisation found = learnt(noisy);
    for (const int lot : {warmRed, greenBlue}) {
        const LotOptics* its = found.of(lot);
        ASSERT_TRUE(its && its->leftOut);
        EXPECT_GT(its->leftOut->mean_dE00, 0.5 * noise_dE00);
        EXPECT_LT(its->leftOut->mean_dE00, 5 * noise_dE00);
        EXPECT_GE(its->leftOut->most_dE00, its->leftOut->mean_dE00);
        EXPECT_LE(its->fit.mean_dE00, its->leftOut->mean_dE00);
    }
}

TEST(Characterisation, SaysWhichDrawdownWasLeftOutAndWhatItLaidDown) {
    Samples samples = usualDrawdowns({coldRed});
    // Over black first, so that the one over the lightest backing is not the first.
    for (DrawdownSample& sample : samples)
        std::swap(sample.over[0], sample.over[1]);
    // One drawdown read too dark over paper only.
    for (double& value : samples[3].over[1].film)
        value *= 0.97;
    const Characterisation found = learnt(samples);
    const LotOptics* its = found.of(coldRed);
    ASSERT_TRUE(its && its->leftOut);
    EXPECT_EQ(its->samples, (std::vector<std::size_t>{2, 3, 4}));
    EXPECT_EQ(its->readings, 6u);
    EXPECT_EQ(its->leftOut->readings, 6u);
    ASSERT_EQ(its->leftOutOf.size(), 3u);
    const double laid_gm2[] = {0.02 * 5, 0.1 * 5, 0.4 * 5};
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_EQ(its->leftOutOf[i].sample, i + 2);
        EXPECT_NEAR(its->leftOutOf[i].laid_gm2, laid_gm2[i], 1e-12);
    }
    // The others are exact: its own error is what it was read too dark by, over white and black.
    double squares = 0;
    for (const ReadingOver& over : samples[3].over) {
        const Bands exact = readingOver(over.backing, samples[3].shares, 5);
        squares += std::pow(
            deltaE00(labOf(exact, ViewingLight::D50), labOf(over.film, ViewingLight::D50)), 2);
    }
    EXPECT_NEAR(its->leftOutOf[1].error_dE00, std::sqrt(squares / 2), 0.05);
    EXPECT_GT(its->leftOutOf[1].error_dE00, 0.2);
    // What it does there: from base alone to what was read.
    EXPECT_GT(its->leftOutOf[1].effect_dE00, 5);
    EXPECT_GT(its->leftOutOf[2].effect_dE00, its->leftOutOf[1].effect_dE00);
    EXPECT_LT(*its->relativeError(), 0.1);
    // Base is as exact as before: nothing of the ink's error went into it.
    EXPECT_LT(found.of(clearBase)->leftOut->most_dE00, 0.1);
}

TEST(Characterisation, LeavesOutNothingWhereTheOthersHoldOneReading) {
    Samples samples = usualDrawdowns({});
    samples.push_back(drawdownOf("weak", letDown(coldRed, 0.05), 5, {whitePaper()}));
    samples.push_back(drawdownOf("strong", letDown(coldRed, 0.3), 5, {whitePaper()}));
    const Characterisation two = learnt(samples);
    ASSERT_TRUE(two.of(coldRed));
    EXPECT_EQ(two.of(coldRed)->source, OpticsSource::fitted);
    EXPECT_FALSE(two.of(coldRed)->leftOut);
    EXPECT_TRUE(two.of(coldRed)->leftOutOf.empty());
    // With two readings in one of them, only the other can be left out.
    samples.back() = drawdownOf("strong", letDown(coldRed, 0.3), 5);
    const Characterisation three = learnt(samples);
    ASSERT_TRUE(three.of(coldRed)->leftOut);
    EXPECT_EQ(three.of(coldRed)->leftOut->readings, 1u);
    ASSERT_EQ(three.of(coldRed)->leftOutOf.size(), 1u);
    EXPECT_EQ(three.of(coldRed)->leftOutOf[0].sample, 2u);
}

TEST(Characterisation, LearnsBaseThenDrierThenInks) {
    // The samples come in the opposite order; what each tells of is the last kind in it.
    const std::vector<LotShare> withDrier = {{clearBase, 0.86}, {honeyDrier, 0.04}, {coldRed, 0.1}};
    const Samples samples = {
        drawdownOf("ink", withDrier, 5),
        drawdownOf("ink-strong", {{clearBase, 0.5}, {honeyDrier, 0.1}, {coldRed, 0.4}}, 5),
        drawdownOf("drier", {{clearBase, 0.7}, {honeyDrier, 0.3}}, 9),
        drawdownOf("drier-alone", {{honeyDrier, 1}}, 5),
        drawdownOf("base-thin", {{clearBase, 1}}, 6),
        drawdownOf("base-thick", {{clearBase, 1}}, 14)};
    const Characterisation found = learnt(samples);
    const std::vector<InkOptics> truth = inventedOptics();
    ASSERT_EQ(found.lots.size(), 3u);
    EXPECT_EQ(found.lots[0].lot, clearBase);
    EXPECT_EQ(found.lots[1].lot, honeyDrier);
    EXPECT_EQ(found.lots[2].lot, coldRed);
    EXPECT_EQ(found.lots[0].samples, (std::vector<std::size_t>{4, 5}));
    EXPECT_EQ(found.lots[1].samples, (std::vector<std::size_t>{2, 3}));
    EXPECT_EQ(found.lots[2].samples, (std::vector<std::size_t>{0, 1}));
    expectOptics(found.of(honeyDrier)->optics, truth[honeyDrier], 0.01, 0.03);
    expectOptics(found.of(coldRed)->optics, truth[coldRed], 0.01, 0.02);
    EXPECT_TRUE(found.mixes.empty());
}

// S is held at what is usual for ink.
TEST(Characterisation, LearnsAbsorptionAloneFromOneReading) {
    Samples samples = usualDrawdowns({});
    samples.push_back(drawdownOf("one", letDown(deepBlue, 0.1), 5, {whitePaper()}));
    const Characterisation found = learnt(samples);
    const LotOptics* its = found.of(deepBlue);
    ASSERT_TRUE(its);
    EXPECT_EQ(its->source, OpticsSource::oneReading);
    EXPECT_EQ(its->readings, 1u);
    EXPECT_FALSE(its->leftOut);
    EXPECT_LT(its->fit.most_dE00, 0.05);
    for (std::size_t band = 0; band < bandCount; ++band)
        EXPECT_NEAR(its->optics.scattering_m2g[band], usualScatteringOfInk_m2g, 1e-12);
}

TEST(Characterisation, TakesABaseWithoutDrawdownsAsClear) {
    const Characterisation found = learnt({drawdownOf("ink", letDown(deepBlue, 0.1), 5),
                                           drawdownOf("strong", letDown(deepBlue, 0.4), 5)});
    for (const int lot : {clearBase, honeyDrier}) {
        ASSERT_TRUE(found.of(lot));
        EXPECT_EQ(found.of(lot)->source, OpticsSource::takenAsClear);
        EXPECT_EQ(found.of(lot)->optics.absorption_m2g, Bands{});
        EXPECT_EQ(found.of(lot)->optics.scattering_m2g, Bands{});
        EXPECT_EQ(found.of(lot)->readings, 0u);
        EXPECT_FALSE(found.of(lot)->leftOut);
    }
    ASSERT_TRUE(found.of(deepBlue));
    EXPECT_EQ(found.of(deepBlue)->source, OpticsSource::fitted);
}

TEST(Characterisation, KnowsNothingOfAnInkWithoutDrawdownsOfItsOwn) {
    Samples samples = usualDrawdowns({coldRed});
    const Characterisation without = learnt(samples);
    samples.push_back(drawdownOf("both", {{clearBase, 0.8}, {coldRed, 0.1}, {deepBlue, 0.1}}, 5));
    const Characterisation found = learnt(samples);
    EXPECT_FALSE(found.of(deepBlue));
    EXPECT_EQ(found.optics[deepBlue].absorption_m2g, Bands{});
    EXPECT_TRUE(found.mixes.empty());
    ASSERT_TRUE(found.of(coldRed));
    EXPECT_EQ(found.of(coldRed)->samples.size(), 3u);
    expectSameOptics(found, without, coldRed);
    EXPECT_FALSE(found.of(-1));
    EXPECT_FALSE(found.of(99));
}

TEST(Characterisation, ChecksMixesOfInksAndNeverFitsThem) {
    Samples samples = usualDrawdowns({coldYellow, deepBlue});
    samples.push_back(
        drawdownOf("green", {{clearBase, 0.85}, {coldYellow, 0.1}, {deepBlue, 0.05}}, 5));
    const Characterisation exact = learnt(samples);
    ASSERT_EQ(exact.mixes.size(), 1u);
    EXPECT_EQ(exact.mixes[0].sample, samples.size() - 1);
    EXPECT_EQ(exact.mixes[0].check.readings, 2u);
    EXPECT_LT(exact.mixes[0].check.most_dE00, 0.05);

    for (ReadingOver& over : samples.back().over)
        for (double& value : over.film)
            value *= 0.9;
    const Characterisation misled = learnt(samples);
    for (const int lot : {clearBase, coldYellow, deepBlue})
        expectSameOptics(exact, misled, lot);
    EXPECT_GT(misled.mixes[0].check.mean_dE00, 1);
    // Against the readings themselves: paper's is the larger or the smaller of the two.
    const double overPaper =
        deltaE00(labOf(readingOver(whitePaper(), samples.back().shares, 5), ViewingLight::D50),
                 labOf(samples.back().over[0].film, ViewingLight::D50));
    EXPECT_LE(overPaper, misled.mixes[0].check.most_dE00 + 0.05);
}

TEST(Characterisation, DoesNotMindTheOrderOfDrawdowns) {
    Samples samples = usualDrawdowns({coldYellow});
    Chance chance(3);
    misread(samples, 0.002, chance);
    const Characterisation one = learnt(samples);
    std::reverse(samples.begin(), samples.end());
    const Characterisation other = learnt(samples);
    for (const int lot : {clearBase, coldYellow}) {
        expectOptics(one.of(lot)->optics, other.of(lot)->optics, 0.002, 0.002);
        EXPECT_NEAR(one.of(lot)->leftOut->mean_dE00, other.of(lot)->leftOut->mean_dE00, 0.01);
    }
}

TEST(Characterisation, DoesNotMindAnotherKindOfWhichNothingIsIn) {
    Samples samples = usualDrawdowns({coldRed});
    const Characterisation without = learnt(samples);
    for (DrawdownSample& sample : samples)
        sample.shares.push_back({deepBlue, 0});
    const Characterisation with = learnt(samples);
    expectSameOptics(without, with, coldRed);
    expectSameOptics(without, with, clearBase);
    EXPECT_FALSE(with.of(deepBlue));
}

TEST(Characterisation, LearnsFromADrawdownThatNamesItsLotTwice) {
    Samples samples = usualDrawdowns({coldRed});
    const Characterisation once = learnt(samples);
    samples[3].shares = {{clearBase, 0.9}, {coldRed, 0.04}, {coldRed, 0.06}};
    const Characterisation twice = learnt(samples);
    ASSERT_TRUE(twice.of(coldRed));
    EXPECT_EQ(twice.of(coldRed)->samples, once.of(coldRed)->samples);
    EXPECT_TRUE(twice.mixes.empty());
}

TEST(Characterisation, OfNothingKnowsBaseAndDrierAsClear) {
    const Characterisation found = learnt({});
    EXPECT_EQ(found.lots.size(), 2u);
    EXPECT_EQ(found.optics.size(), inventedKinds().size());
    EXPECT_TRUE(characterise({}, {}, {}).lots.empty());
}

std::string refusalOf(const DrawdownSample& wrong) {
    Samples samples = usualDrawdowns({});
    samples.push_back(wrong);
    return messageOf<InputError>([&] { learnt(samples); });
}

TEST(Characterisation, RefusesAWrongFilmWeight) {
    DrawdownSample sample = drawdownOf("S-7", letDown(coldRed, 0.1), 5);
    sample.filmWeight_gm2 = 0;
    EXPECT_EQ(refusalOf(sample), "drawdown S-7: the film weight is 0. Give one above 0 g/m².");
    sample.filmWeight_gm2 = -2;
    EXPECT_EQ(refusalOf(sample), "drawdown S-7: the film weight is -2. Give one above 0 g/m².");
    sample.filmWeight_gm2 = unknown;
    EXPECT_EQ(refusalOf(sample), "drawdown S-7: the film weight is nan. Give one above 0 g/m².");
    sample.filmWeight_gm2 = std::numeric_limits<double>::infinity();
    EXPECT_EQ(refusalOf(sample), "drawdown S-7: the film weight is inf. Give one above 0 g/m².");
}

TEST(Characterisation, RefusesWrongShares) {
    DrawdownSample sample = drawdownOf("S-7", letDown(coldRed, 0.1), 5);
    sample.shares[0].share = 0.8;
    EXPECT_EQ(refusalOf(sample),
              "drawdown S-7: the shares of its ink add up to 0.9. Check its weighings.");
    sample.shares.clear();
    EXPECT_EQ(refusalOf(sample),
              "drawdown S-7: the shares of its ink add up to 0. Check its weighings.");
    const std::string wrongShare =
        "drawdown S-7: a share of its ink is wrong. Check its weighings.";
    sample.shares = {{clearBase, 1.1}, {coldRed, -0.1}};
    EXPECT_EQ(refusalOf(sample), wrongShare);
    sample.shares = {{clearBase, unknown}, {coldRed, 0.1}};
    EXPECT_EQ(refusalOf(sample), wrongShare);
    sample.shares = {{clearBase, 0.9}, {-1, 0.1}};
    EXPECT_EQ(refusalOf(sample), wrongShare);
    sample.shares = {{clearBase, 0.9}, {firstInk + inkCount, 0.1}};
    EXPECT_EQ(refusalOf(sample), wrongShare);
}

// Two readings over one backing are one, their mean: they leave nothing to check with.
TEST(Characterisation, TakesTheMeanOfReadingsOverOneBacking) {
    Samples samples = usualDrawdowns({});
    DrawdownSample twice = drawdownOf("twice", letDown(deepBlue, 0.1), 5, {whitePaper()});
    twice.over.push_back(twice.over.front());
    for (std::size_t band = 0; band < bandCount; ++band) {
        twice.over[0].film[band] += 0.01;
        twice.over[1].film[band] -= 0.01;
    }
    samples.push_back(twice);
    const Characterisation found = learnt(samples);
    const LotOptics* its = found.of(deepBlue);
    ASSERT_TRUE(its);
    EXPECT_EQ(its->source, OpticsSource::oneReading);
    EXPECT_EQ(its->readings, 1u);
    samples.back() = drawdownOf("once", letDown(deepBlue, 0.1), 5, {whitePaper()});
    const Characterisation once = learnt(samples);
    for (std::size_t band = 0; band < bandCount; ++band)
        EXPECT_NEAR(its->optics.absorption_m2g[band],
                    once.of(deepBlue)->optics.absorption_m2g[band],
                    1e-3 * its->optics.absorption_m2g[band]);
}

// Over white paper a film that is almost clear shows nothing of how it scatters.
TEST(Characterisation, SaysWhetherScatteringWasSeen) {
    const Characterisation white = learnt({drawdownOf("a", {{clearBase, 1}}, 5, {whitePaper()}),
                                           drawdownOf("b", {{clearBase, 1}}, 9, {whitePaper()})});
    EXPECT_FALSE(white.of(clearBase)->isScatteringSeen);
    EXPECT_LT(white.of(clearBase)->optics.scattering_m2g[10], 2e-3);
    const Characterisation both = learnt({drawdownOf("a", {{clearBase, 1}}, 5)});
    EXPECT_TRUE(both.of(clearBase)->isScatteringSeen);
}

}  // namespace
}  // namespace rackbook
