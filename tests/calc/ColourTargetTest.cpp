#include "calc/ColourTarget.h"

#include <gtest/gtest.h>

#include "MatchFixture.h"

namespace rackbook {
namespace {

using namespace test;

// The ΔE00 of each light by Colorimetry.h, from the spectra themselves.
TEST(ColourTarget, TellsHowFarAColourIsInEachLight) {
    const Bands wanted = readingOver(whitePaper(), plantedGrey, 5);
    const Bands other = readingOver(whitePaper(), letDown(softBlack, 0.05), 5);
    const auto apart = [&](ViewingLight light) {
        return deltaE00(labOf(spectrumOf(wanted), light, Observer::deg2),
                        labOf(spectrumOf(other), light, Observer::deg2));
    };
    const ColourMiss miss = missOf(other, targetOf(wanted));
    EXPECT_NEAR(miss.underD50_dE00, apart(ViewingLight::D50), 1e-9);
    EXPECT_NEAR(miss.underA_dE00.value(), apart(ViewingLight::A), 1e-9);
    EXPECT_NEAR(miss.underFL11_dE00.value(), apart(ViewingLight::FL11), 1e-9);
    EXPECT_EQ(missOf(wanted, targetOf(wanted)).underD50_dE00, 0);
    // A twentieth of the mean square of the others, as the header says.
    EXPECT_NEAR(costOf({2, 3.0, 5.0}), 4 + 0.05 * (9 + 25) / 2, 1e-12);
    EXPECT_NEAR(costOf({2, std::nullopt, std::nullopt}), 4, 1e-12);
}

}  // namespace
}  // namespace rackbook
