// Colours to match with invented inks, and what every recipe found has to be.
#pragma once

#include <gtest/gtest.h>

#include <vector>

#include "InventedInks.h"
#include "calc/ColourMatch.h"

namespace rackbook::test {

inline const Characterisation& inks() {
    static const Characterisation known = knownInks();
    return known;
}

inline MatchQuestion questionFor(const ColourTarget& target, const std::vector<int>& colours) {
    return {inks(), target, colours, clearBase, {}, std::nullopt, 5, 5, whitePaper()};
}

inline ColourTarget targetMadeOf(const std::vector<LotShare>& shares, double filmWeight_gm2 = 5) {
    return targetOf(readingOver(whitePaper(), shares, filmWeight_gm2));
}

inline double shareOf(const MatchFound& found, int lot) {
    double share = 0;
    for (const LotShare& part : found.shares)
        if (part.lot == lot)
            share += part.share;
    return share;
}

inline std::vector<int> coloursIn(const MatchFound& found) {
    std::vector<int> lots;
    for (const LotShare& part : found.shares)
        if (part.lot >= firstInk)
            lots.push_back(part.lot);
    return lots;
}

// Shares 0 or more that add up to 1, each lot once and ascending; the colour is that of the shares.
inline void expectSound(const MatchFound& found, const MatchQuestion& question) {
    double sum = 0;
    for (std::size_t i = 0; i < found.shares.size(); ++i) {
        EXPECT_GE(found.shares[i].share, 0);
        sum += found.shares[i].share;
        if (i > 0) {
            EXPECT_LT(found.shares[i - 1].lot, found.shares[i].lot);
        }
    }
    EXPECT_NEAR(sum, 1, 1e-12);
    EXPECT_GE(found.filmWeight_gm2, question.filmWeightLeast_gm2);
    EXPECT_LE(found.filmWeight_gm2, question.filmWeightGreatest_gm2);
    const Bands again = readingOver(question.paper, found.shares, found.filmWeight_gm2);
    for (std::size_t band = 0; band < bandCount; ++band)
        EXPECT_NEAR(found.predicted[band], again[band], 1e-12);
    EXPECT_NEAR(found.miss.underD50_dE00,
                deltaE00(question.target.lab_D50, labOf(again, ViewingLight::D50)), 1e-9);
}

const std::vector<LotShare> plantedGrey = {
    {clearBase, 0.86}, {coldYellow, 0.05}, {coldRed, 0.04}, {greenBlue, 0.05}};
const std::vector<int> plantedThree = {coldYellow, coldRed, greenBlue};

}  // namespace rackbook::test
