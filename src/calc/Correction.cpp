#include "calc/Correction.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/PercentText.h"

namespace rackbook {

namespace {

constexpr double tolerance = 1e-9;

void requireCount(std::size_t count, std::size_t parts, const char* ofWhat) {
    if (count != parts)
        throw InputError("correction",
                         "there are " + std::to_string(parts) + " shares, but " +
                             std::to_string(count) + " masses " + ofWhat,
                         "Give one for each share.");
}

void requireShares(const std::vector<double>& shares) {
    double sum = 0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        if (!(shares[i] >= 0 && shares[i] <= 1))
            throw InputError("correction, part " + std::to_string(i + 1),
                             "its share is " + percentText(shares[i]),
                             "Give a share between 0 % and 100 %.");
        sum += shares[i];
    }
    if (std::fabs(sum - 1) > tolerance)
        throw InputError("correction", "the shares add up to " + percentText(sum),
                         "Make them add up to 100 %.");
}

void requireMasses(const std::vector<double>& masses_g, const char* which, bool canBeInfinite) {
    for (std::size_t i = 0; i < masses_g.size(); ++i) {
        const bool isRight = masses_g[i] >= 0 && (canBeInfinite || std::isfinite(masses_g[i]));
        if (!isRight)
            throw InputError(
                "correction, part " + std::to_string(i + 1),
                "its mass " + std::string(which) + " is " + formatShortest(masses_g[i]) + " g",
                "Give a mass of 0 g or more.");
    }
}

void requireSound(const CorrectionQuestion& question) {
    const std::size_t parts = question.shares.size();
    requireShares(question.shares);
    requireCount(question.inDish_g.size(), parts, "in the dish");
    requireMasses(question.inDish_g, "in the dish", false);
    if (!question.inStock_g.empty())
        requireCount(question.inStock_g.size(), parts, "in stock");
    requireMasses(question.inStock_g, "in stock", true);
    if (!question.atLeast_g)
        return;
    if (!std::isfinite(*question.atLeast_g) || *question.atLeast_g <= 0)
        throw InputError("correction",
                         "the mass wanted is " + formatShortest(*question.atLeast_g) + " g",
                         "Give a mass above 0 g, or none.");
}

void findShortfalls(const CorrectionQuestion& question, Correction& correction) {
    for (std::size_t i = 0; i < question.inStock_g.size(); ++i) {
        const double missing_g = correction.add_g[i] - question.inStock_g[i];
        if (missing_g > tolerance * std::max(1.0, correction.total_g))
            correction.shortfalls.push_back({i, missing_g});
    }
}

}  // namespace

Correction correctionFor(const CorrectionQuestion& question) {
    requireSound(question);
    Correction correction;
    correction.fresh_g = question.atLeast_g;
    double total_g = question.atLeast_g.value_or(0);
    for (std::size_t i = 0; i < question.shares.size(); ++i) {
        if (question.inDish_g[i] == 0)
            continue;
        if (question.shares[i] == 0)
            correction.notInRecipe.push_back(i);
        else
            total_g = std::max(total_g, question.inDish_g[i] / question.shares[i]);
    }
    if (!correction.notInRecipe.empty())
        return correction;
    correction.total_g = total_g;
    for (std::size_t i = 0; i < question.shares.size(); ++i) {
        const double add_g = std::max(0.0, question.shares[i] * total_g - question.inDish_g[i]);
        correction.add_g.push_back(add_g);
        correction.added_g += add_g;
    }
    findShortfalls(question, correction);
    if (correction.fresh_g) {
        correction.beyondWanted_g = total_g - *correction.fresh_g;
        correction.startAgain = correction.added_g >= *correction.fresh_g * (1 - tolerance);
    }
    return correction;
}

WeighedCorrection weighedOn(const BalanceFigures& balance, const CorrectionQuestion& question,
                            const Correction& correction) {
    requireUsable(balance);
    WeighedCorrection weighed;
    for (std::size_t i = 0; i < correction.add_g.size(); ++i) {
        weighed.add_g.push_back(roundedToReadability_g(correction.add_g[i], balance));
        weighed.total_g += question.inDish_g[i] + weighed.add_g[i];
    }
    for (std::size_t i = 0; i < weighed.add_g.size(); ++i) {
        const double mass_g = question.inDish_g[i] + weighed.add_g[i];
        weighed.shares.push_back(weighed.total_g > 0 ? mass_g / weighed.total_g : 0);
    }
    return weighed;
}

}  // namespace rackbook
