#include "calc/LikeliestThreshold.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "base/Error.h"
#include "calc/Minimum.h"

namespace rackbook {

namespace {

using Group = ThresholdLooks::Group;
using Kind = ThresholdLooks::Kind;

// Of the doses at all looks, in logarithms.
struct Range {
    double middle_log = 0;
    double length_log = 0;
};

void requireFit(bool isThere, const std::string& why, const std::string& remedy) {
    if (!isThere)
        throw InputError("dose at which colour returns", why, remedy);
}

bool any(const std::vector<Group>& groups, std::initializer_list<Kind> kinds) {
    return std::any_of(groups.begin(), groups.end(), [&](const Group& group) {
        return std::find(kinds.begin(), kinds.end(), group.kind) != kinds.end();
    });
}

double lowOf(const Group& group) {
    return group.kind == Kind::returnedBy ? -INFINITY : group.low_log;
}

double highOf(const Group& group) {
    return group.kind == Kind::notReturnedBy ? INFINITY : group.high_log;
}

bool oneDoseAgrees(const std::vector<Group>& groups) {
    double greatestLow = -INFINITY;
    double leastHigh = INFINITY;
    for (const Group& group : groups) {
        greatestLow = std::max(greatestLow, lowOf(group));
        leastHigh = std::min(leastHigh, highOf(group));
    }
    return greatestLow <= leastHigh;
}

// Pre: there are such.
double meanDose_log(const std::vector<Group>& groups, Kind kind) {
    double sum = 0;
    double times = 0;
    for (const Group& group : groups)
        if (group.kind == kind) {
            sum += group.times * (kind == Kind::returnedBy ? group.high_log : group.low_log);
            times += group.times;
        }
    return sum / times;
}

void requireFit(const std::vector<Group>& groups) {
    requireFit(!groups.empty(), "no observation says anything of it", "Look at prints.");
    requireFit(any(groups, {Kind::returnedBy, Kind::between, Kind::exact}),
               "no print's colour has returned yet, so that none is too high",
               "Look again after more light, or state what is likely beforehand.");
    requireFit(any(groups, {Kind::notReturnedBy, Kind::between, Kind::exact}),
               "every print's colour had returned by the first look, so that none is too low",
               "Look earlier at the next prints, or state what is likely beforehand.");
    requireFit(!oneDoseAgrees(groups),
               "one and the same dose agrees with all observations, so that nothing tells how "
               "far prints differ",
               "Look at more prints, or state what is likely beforehand.");
    requireFit(
        any(groups, {Kind::between, Kind::exact}) ||
            meanDose_log(groups, Kind::returnedBy) > meanDose_log(groups, Kind::notReturnedBy),
        "the prints whose colour had returned had no more light than those whose had not",
        "Check the doses, or state what is likely beforehand.");
}

Range rangeOf(const std::vector<Group>& groups) {
    double least = INFINITY;
    double greatest = -INFINITY;
    for (const Group& group : groups)
        for (const double dose_log : {lowOf(group), highOf(group)})
            if (std::isfinite(dose_log)) {
                least = std::min(least, dose_log);
                greatest = std::max(greatest, dose_log);
            }
    return {0.5 * (least + greatest), greatest - least};
}

// In the logarithm of 1/scale, and in how many scales the location lies below the middle: the
// likelihood's ridges run along these, and neither changes with the unit of dose.
class Search {
public:
    Search(const ThresholdLooks& looks, ThresholdModel model)
        : m_looks(looks), m_model(model), m_range(rangeOf(looks.groups())) {}

    ThresholdCurve curveAt(const std::vector<double>& at) const {
        const double scale_log = m_range.length_log * std::exp(-at[1]);
        return {m_model, m_range.middle_log - at[0] * scale_log, scale_log};
    }

    ThresholdCurve likeliest() const {
        MinimumQuestion question;
        question.value = [this](const std::vector<double>& at) { return missAt(at); };
        question.start = roughStart();
        question.least = {-mostOffset, -mostSteepness};
        question.greatest = {mostOffset, mostSteepness};
        question.firstStep = {0.3, 0.3};
        question.closeEnough = 1e-9;
        Minimum found = minimumNear(question);
        for (int again = 0; again < 3; ++again) {
            question.start = found.at;
            question.firstStep = {0.01, 0.01};
            found = minimumNear(question);
        }
        requireFit(std::fabs(found.at[0]) < 0.99 * mostOffset &&
                       std::fabs(found.at[1]) < 0.99 * mostSteepness,
                   "the observations hardly depend on the dose",
                   "Look at more prints, or state what is likely beforehand.");
        return curveAt(found.at);
    }

private:
    static constexpr double mostOffset = 1000;
    static constexpr double mostSteepness = 14;

    double missAt(const std::vector<double>& at) const {
        return -m_looks.logLikelihood(curveAt(at));
    }

    std::vector<double> roughStart() const {
        std::vector<double> best = {0, 0};
        double bestMiss = INFINITY;
        for (double offset = -6; offset <= 6; offset += 0.5)
            for (double steepness = -4; steepness <= 6; steepness += 0.5) {
                // The middle is moved along where the curve is steep.
                const std::vector<double> at = {offset * std::exp(std::max(0.0, steepness - 2)),
                                                steepness};
                const double miss = missAt(at);
                if (miss < bestMiss) {
                    bestMiss = miss;
                    best = at;
                }
            }
        return best;
    }

    const ThresholdLooks& m_looks;
    ThresholdModel m_model;
    Range m_range;
};

}  // namespace

LikeliestThreshold likeliestThreshold(const std::vector<ThresholdObservation>& observations,
                                      ThresholdModel model) {
    const ThresholdLooks looks(observations);
    requireFit(looks.groups());
    const ThresholdCurve curve = Search(looks, model).likeliest();
    return {curve, looks.count(), looks.logLikelihood(curve)};
}

}  // namespace rackbook
