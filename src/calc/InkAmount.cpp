#include "calc/InkAmount.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

#include "base/Error.h"
#include "calc/EstimateMath.h"

namespace rackbook {

namespace {

constexpr double commonLeast_gm2 = 3;
constexpr double commonMost_gm2 = 15;

double quantileOf(const std::vector<double>& sorted, double p) {
    const double place = static_cast<double>(sorted.size() - 1) * p;
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    return sorted[below] + (place - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

template <class Wanted>
std::vector<double> weightsOf(const std::vector<PulledFilm>& pulls, const Wanted& wanted) {
    std::vector<double> weights;
    for (const PulledFilm& pull : pulls) {
        const double weight = filmWeightOf(pull);
        if (wanted(pull) && !std::isnan(weight))
            weights.push_back(weight);
    }
    return weights;
}

void check(const InkQuestion& question) {
    if (question.area_m2 <= 0 || std::isinf(question.area_m2))
        throw InputError("image area", "it is not above 0", "Give the image's size in mm.");
    if (question.coverage < 0 || question.coverage > 1)
        throw InputError("coverage", "it is outside 0 … 1", "Give the inked share of the image.");
    if (question.sheets < 0)
        throw InputError("sheets", "their number is below 0", "Give how many are wanted.");
    if (!(question.spoilShare >= 0) || std::isinf(question.spoilShare))
        throw InputError("spoil share", "it is not a number of 0 or more",
                         "Give the spoils for each good sheet: 0.1 for one in ten.");
}

}  // namespace

Quartiles quartilesOf(std::vector<double> values) {
    if (values.empty())
        return {};
    std::sort(values.begin(), values.end());
    return {quantileOf(values, 0.25), quantileOf(values, 0.5), quantileOf(values, 0.75)};
}

double filmWeightOf(const PulledFilm& pull) {
    const double inked_m2 = pull.sheets * pull.area_m2 * pull.coverage;
    const bool possible = pull.sheets > 0 && pull.area_m2 > 0 && pull.coverage > 0 &&
                          pull.coverage <= 1 && pull.inkUsed_g > 0;
    const double weight = possible ? pull.inkUsed_g / inked_m2 : notKnown;
    return std::isfinite(weight) ? weight : notKnown;
}

FilmWeight filmWeightFor(const std::vector<PulledFilm>& pulls, int edition, int layer) {
    const auto learnt = [](const std::vector<double>& weights, FilmWeightFrom from) {
        const Quartiles quartiles = quartilesOf(weights);
        return FilmWeight{
            {quartiles.lower, quartiles.median, quartiles.upper}, from, weights.size()};
    };
    std::vector<double> weights =
        weightsOf(pulls, [&](const PulledFilm& pull) { return layer >= 0 && pull.layer == layer; });
    if (weights.size() >= fewestPullsToLearnFrom)
        return learnt(weights, FilmWeightFrom::layer);
    weights = weightsOf(
        pulls, [&](const PulledFilm& pull) { return edition >= 0 && pull.edition == edition; });
    if (weights.size() >= fewestPullsToLearnFrom)
        return learnt(weights, FilmWeightFrom::edition);
    weights = weightsOf(pulls, [](const PulledFilm&) { return true; });
    if (weights.size() >= fewestPullsToLearnFrom)
        return learnt(weights, FilmWeightFrom::studio);
    return {{commonLeast_gm2, notKnown, commonMost_gm2}, FilmWeightFrom::commonPractice, 0};
}

Estimate inkNeeded(const InkQuestion& question) {
    check(question);
    if (question.sheets == 0 || question.coverage == 0)
        return Estimate::exactly(0);
    const double inked_m2 =
        question.area_m2 * question.coverage * question.sheets * (1 + question.spoilShare);
    if (std::isnan(inked_m2))
        return Estimate::anyMass();
    return productOf(Estimate::exactly(inked_m2), question.weight_gm2);
}

std::vector<MixNeed> inkByMix(const std::vector<LayerInk>& layers) {
    std::map<int, MixNeed> needs;
    for (const LayerInk& layer : layers) {
        if (layer.mixes.size() != layer.shares.size())
            throw std::invalid_argument("inkByMix: a layer has not a share for each mix");
        for (std::size_t i = 0; i < layer.mixes.size(); ++i) {
            const auto place =
                needs.emplace(layer.mixes[i], MixNeed{layer.mixes[i], Estimate::exactly(0), 0});
            MixNeed& need = place.first->second;
            need.mass_g = sumOf(need.mass_g, productOf(layer.ink_g, layer.shares[i]));
            ++need.layers;
        }
    }
    std::vector<MixNeed> byMix;
    for (const auto& entry : needs)
        byMix.push_back(entry.second);
    return byMix;
}

LayerInk inkFromMix(const MixStages& stages, std::size_t mix, const Estimate& ink_g) {
    LayerInk ink{ink_g, {}, {}};
    const MixStagesFound found = stages.atEnd(mix);
    for (const MixShare& share : sharesByMix(found.stages)) {
        ink.mixes.push_back(share.mix);
        ink.shares.push_back(Estimate::exactly(share.share));
    }
    if (ink.mixes.empty())
        ink = {ink_g, {static_cast<int>(mix)}, {Estimate::exactly(1)}};
    return ink;
}

}  // namespace rackbook
