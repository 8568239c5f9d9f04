#include "calc/KubelkaMunk.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "support/MessageOf.h"

namespace rackbook {
namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

std::string refusalOf(const std::function<void()>& call) {
    return test::messageOf<InputError>(call);
}

std::string refusalOf(const TwoBackings& readings, double readingSpread = 0) {
    return refusalOf([&] { opticsFrom(readings, 1, readingSpread); });
}

const std::string check =
    " Check that film and backings were read with the same instrument and corrected for the "
    "surface.";

TEST(KubelkaMunkErrors, RefuseWrongInputs) {
    EXPECT_EQ(refusalOf([] { ksRatioOf(0); }),
              "film: the reflectance of the opaque film is 0. Give a fraction above 0, up to 1.");
    EXPECT_EQ(
        refusalOf([] { ksRatioOf(1.01); }),
        "film: the reflectance of the opaque film is 1.01. Give a fraction above 0, up to 1.");
    EXPECT_EQ(refusalOf([] { opaqueReflectanceOf(-1); }),
              "film: the ratio K/S is -1. Give 0 or more.");
    EXPECT_EQ(refusalOf([] {
                  bareFilm({-1, 0}, 1);
              }),
              "film: the absorption K is -1. Give 0 or more.");
    EXPECT_EQ(refusalOf([] {
                  bareFilm({0, -0.5}, 1);
              }),
              "film: the scattering S is -0.5. Give 0 or more.");
    EXPECT_EQ(refusalOf([] {
                  reflectanceOver(0.5, {1, 1}, -2);
              }),
              "film: the film weight is -2. Give 0 or more.");
    EXPECT_EQ(refusalOf([] {
                  reflectanceOver(1.5, {1, 1}, 1);
              }),
              "film: the reflectance of the backing is 1.5. Give a fraction, 0 to 1.");
    EXPECT_EQ(refusalOf([] {
                  opticsFrom({0.1, 0.5, 0.04, 0.86}, 0);
              }),
              "film: the film weight is 0. Give one above 0.");
    EXPECT_NE(refusalOf([] { bareFilm({unknown, 0}, 1); }), "(nothing was thrown)");
    EXPECT_NE(refusalOf([] { ksRatioOf(unknown); }), "(nothing was thrown)");
}

TEST(KubelkaMunkErrors, RefuseReadingsOutOfRange) {
    EXPECT_EQ(refusalOf({-0.1, 0.5, 0.04, 0.86}),
              "film: the reflectance over the black backing is -0.1. Give a fraction, 0 to 1.");
    EXPECT_EQ(refusalOf({0.1, 1.5, 0.04, 0.86}),
              "film: the reflectance over the white backing is 1.5. Give a fraction, 0 to 1.");
    EXPECT_EQ(refusalOf({0.1, 0.5, -0.04, 0.86}),
              "film: the reflectance of the black backing is -0.04. Give a fraction, 0 to 1.");
    EXPECT_EQ(refusalOf({0.1, 0.5, 0.04, 86}),
              "film: the reflectance of the white backing is 86. Give a fraction, 0 to 1.");
    EXPECT_EQ(refusalOf({0.1, 0.5, 0.04, 0.86}, -1),
              "film: the spread of the readings is -1. Give 0 or more.");
}

TEST(KubelkaMunkErrors, NoticeSwappedBackings) {
    EXPECT_EQ(refusalOf({0.1, 0.5, 0.86, 0.04}),
              "film: the white backing is not lighter than the black one. The backings may be "
              "swapped: give the lighter one as white.");
    EXPECT_EQ(refusalOf({0.5, 0.1, 0.04, 0.86}),
              "film: it is darker over white than over black. The readings may be swapped: check "
              "which backing each was taken over.");
}

TEST(KubelkaMunkErrors, NoticeWhatReadingsCannotTell) {
    EXPECT_EQ(refusalOf({0.3, 0.3, 0.04, 0.86}),
              "film: it hides the backing, it reads the same over white and over black. Use a "
              "thinner film; of this one only K/S can be known.");
    EXPECT_EQ(refusalOf({0.1, 0.95, 0.04, 0.86}),
              "film: the readings over white and over black lie further apart than the backings." +
                  check);
    EXPECT_EQ(refusalOf({0.05, 0.875, 0.04, 0.86}, 0.002),
              "film: the readings over white and over black lie further apart than the backings." +
                  check);
    EXPECT_EQ(refusalOf({0.03, 0.8, 0.04, 0.86}),
              "film: it would scatter less than nothing." + check);
    EXPECT_EQ(refusalOf({0.1, 0.9, 0.04, 0.86}),
              "film: it would send out more light than falls on it." + check);
    EXPECT_EQ(refusalOf({0.9, 0.91, 0.995, 1}, 0.01),
              "film: the backings are too much alike. Use a white and a black one.");
}

TEST(KubelkaMunkErrors, RefuseWhatNoSurfaceSendsBack) {
    EXPECT_EQ(refusalOf([] { measuredOf(1.2, {}); }),
              "surface: the inside reflectance is 1.2. Give a fraction, 0 to 1.");
    EXPECT_EQ(refusalOf([] {
                  insideOf(0.031, {0.04, 0.6, 1});
              }),
              "surface: the measured reflectance 0.031 is less than the surface alone sends back, "
              "0.04. Give the share of the gloss that the instrument sees, or a smaller k1.");
    EXPECT_EQ(
        refusalOf([] {
            insideOf(1.05, {0.04, 0.6, 1});
        }),
        "surface: the measured reflectance 1.05 is more than any film can send back, 1. Where "
        "paper is brightened, measure without ultraviolet (M2).");
    EXPECT_EQ(refusalOf([] {
                  measuredOf(0.5, {1, 0.6, 0});
              }),
              "surface: the surface would reflect 1. Give k1 and k2 as fractions of 0 or more and "
              "below 1, such as 0.04 and 0.6.");
    EXPECT_EQ(refusalOf([] {
                  measuredOf(0.5, {0.04, -0.6, 0});
              }),
              "surface: the surface would reflect -0.6. Give k1 and k2 as fractions of 0 or more "
              "and below 1, such as 0.04 and 0.6.");
    EXPECT_EQ(refusalOf([] {
                  insideOf(0.5, {0.04, 0.6, 2});
              }),
              "surface: the share of the gloss is 2. Give a fraction: 0 for 45°/0°, 1 for a sphere "
              "with gloss included.");
    EXPECT_NE(refusalOf([] { insideOf(unknown, {}); }), "(nothing was thrown)");
}

}  // namespace
}  // namespace rackbook
