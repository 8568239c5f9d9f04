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
        double sum = 0;
        for (std::size_t i = 0; i < m_question.shareUncertainties.size(); ++i) {
            const double off = std::max(byShare(i, m_question.shareUncertainties[i]),
                                        byShare(i, -m_question.shareUncertainties[i]));
            sum += off * off;
        }
        return std::sqrt(sum);
    }

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

// The error of the left-out drawdown that is most like it, by the ratio of what they lay down.
double errorAt(const LotOptics& known, double laid_gm2) {
    const auto farness = [&](const LeftOutDrawdown& one) {
        return std::abs(std::log(one.laid_gm2 / laid_gm2));
    };
    return std::min_element(known.leftOutOf.begin(), known.leftOutOf.end(),
                            [&](const LeftOutDrawdown& a, const LeftOutDrawdown& b) {
                                return farness(a) < farness(b);
                            })
        ->overLightest_dE00;
}

}  // namespace

PredictionSpread spreadOf(const SpreadQuestion& question, const std::vector<LotKind>& lotKinds) {
    const Moved moved(question);
    PredictionSpread spread;
    spread.filmWeight_dE00 = moved.byFilmWeight();
    spread.weighing_dE00 = moved.byWeighing();
    for (const LotShare& part : question.shares) {
        const LotOptics* known = question.inks.of(part.lot);
        if (part.share > 0 && known && known->source == OpticsSource::takenAsClear)
            spread.takenAsClear.push_back(part.lot);
        if (lotKinds[static_cast<std::size_t>(part.lot)] != LotKind::ink || part.share <= 0)
            continue;
        if (known && known->leftOut)
            spread.inks_dE00 = std::max(spread.inks_dE00.value_or(0),
                                        errorAt(*known, part.share * question.filmWeight_gm2));
        else
            spread.uncheckedInks.push_back(part.lot);
    }
    spread.together_dE00 =
        std::hypot(spread.filmWeight_dE00, spread.weighing_dE00, spread.inks_dE00.value_or(0));
    return spread;
}

}  // namespace rackbook
