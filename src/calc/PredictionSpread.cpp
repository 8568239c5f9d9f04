#include "calc/PredictionSpread.h"

#include <algorithm>
#include <cmath>

#include "calc/ColourMatch.h"

namespace rackbook {

namespace {

class Moved {
public:
    explicit Moved(const SpreadQuestion& question)
        : m_question(question), m_colour(colourOf(question.shares, question.filmWeight_gm2)) {}

    double byFilmWeight() const {
        const double u = m_question.filmWeightUncertainty_gm2;
        return std::max(
            distanceTo(m_question.shares, m_question.filmWeight_gm2 + u),
            distanceTo(m_question.shares, std::max(0.0, m_question.filmWeight_gm2 - u)));
    }

    double byWeighing() const {
        const auto largest = std::max_element(
            m_question.shares.begin(), m_question.shares.end(),
            [](const LotShare& a, const LotShare& b) { return a.share < b.share; });
        const auto filler = static_cast<std::size_t>(largest - m_question.shares.begin());
        double sum = 0;
        for (std::size_t i = 0; i < m_question.shareUncertainties.size(); ++i) {
            if (i == filler)
                continue;
            const double off = std::max(byShare(i, m_question.shareUncertainties[i]),
                                        byShare(i, -m_question.shareUncertainties[i]));
            sum += off * off;
        }
        return std::sqrt(sum);
    }

    // How far the colour is from that of the same film with nothing in the place of one lot.
    double without(int lot) const {
        std::vector<LotShare> shares;
        for (const LotShare& part : m_question.shares)
            if (part.lot != lot)
                shares.push_back(part);
        return distanceTo(shares, m_question.filmWeight_gm2);
    }

    double fromPaper() const { return distanceTo({}, m_question.filmWeight_gm2); }

private:
    Lab colourOf(const std::vector<LotShare>& shares, double filmWeight_gm2) const {
        return labOf(predictedOver(m_question.paper, shares, filmWeight_gm2, m_question.inks),
                     ViewingLight::D50);
    }

    double distanceTo(const std::vector<LotShare>& shares, double filmWeight_gm2) const {
        return deltaE00(m_colour, colourOf(shares, filmWeight_gm2));
    }

    // The others keep their proportions.
    double byShare(std::size_t moved, double by) const {
        std::vector<LotShare> shares = m_question.shares;
        const double before = shares[moved].share;
        if (before >= 1)
            return 0;
        const double after = std::clamp(before + by, 0.0, 1.0);
        for (std::size_t i = 0; i < shares.size(); ++i)
            shares[i].share = i == moved ? after : shares[i].share * (1 - after) / (1 - before);
        return distanceTo(shares, m_question.filmWeight_gm2);
    }

    const SpreadQuestion& m_question;
    Lab m_colour;
};

std::optional<double> worstRelativeError(const Characterisation& inks,
                                         const std::vector<LotKind>& lotKinds) {
    std::optional<double> worst;
    for (const LotOptics& lot : inks.lots)
        if (lotKinds[static_cast<std::size_t>(lot.lot)] == LotKind::ink && lot.relativeError())
            worst = std::max(worst.value_or(0), *lot.relativeError());
    return worst;
}

}  // namespace

std::optional<double> assumedRelativeError(const Characterisation& inks, int lot,
                                           const std::vector<LotKind>& lotKinds) {
    const LotOptics* known = inks.of(lot);
    if (known && known->relativeError())
        return known->relativeError();
    if (known && known->source == OpticsSource::takenAsClear)
        return 0;
    return worstRelativeError(inks, lotKinds);
}

PredictionSpread spreadOf(const SpreadQuestion& question, const std::vector<LotKind>& lotKinds) {
    const Moved moved(question);
    PredictionSpread spread;
    spread.filmWeight_dE00 = moved.byFilmWeight();
    spread.weighing_dE00 = moved.byWeighing();
    const std::optional<double> worst = worstRelativeError(question.inks, lotKinds);
    double variance = 0;
    int inks = 0;
    for (const LotShare& part : question.shares) {
        const LotOptics* known = question.inks.of(part.lot);
        if (part.share > 0 && known && known->source == OpticsSource::takenAsClear)
            spread.takenAsClear.push_back(part.lot);
        if (part.share <= 0)
            continue;
        const bool isInk = lotKinds[static_cast<std::size_t>(part.lot)] == LotKind::ink;
        inks += isInk ? 1 : 0;
        const bool isMeasured = !known || known->source != OpticsSource::takenAsClear;
        if (isMeasured && !(known && known->relativeError()))
            spread.uncheckedLots.push_back(part.lot);
        const double error = assumedRelativeError(question.inks, part.lot, lotKinds).value_or(0);
        variance += std::pow(error * moved.without(part.lot), 2);
    }
    if (inks > 1)
        variance += std::pow(question.inks.mixRelativeError.value_or(0) * moved.fromPaper(), 2);
    if (worst)
        spread.inks_dE00 = std::sqrt(variance);
    spread.together_dE00 =
        std::hypot(spread.filmWeight_dE00, spread.weighing_dE00, spread.inks_dE00.value_or(0));
    return spread;
}

}  // namespace rackbook
