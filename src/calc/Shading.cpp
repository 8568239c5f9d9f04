#include "calc/Shading.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/Error.h"
#include "calc/AmountSearch.h"

namespace rackbook {

namespace {

constexpr double worthAnAddition_dE00 = 0.1;
constexpr double leastGrowth = 1e-5;
// So that of two ways to the same colour the one that adds less is found: doubling the batch counts
// as 0.1 in ΔE00 would, squared (our weighting, no source).
constexpr double costOfDoubling = 0.01;

ColourMiss missOfLab(const Lab& lab, const ColourTarget& target) {
    ColourMiss miss;
    miss.underD50_dE00 = deltaE00(target.lab_D50, lab);
    return miss;
}

class Shading {
public:
    explicit Shading(const ShadingQuestion& question) : m_question(question) {
        requireUsable();
        m_paper = insideOf(question.paper, question.inks.surface);
        m_predicted = predictedWith(question.shares);
    }

    Shaded with(const std::vector<Addition>& additions) const {
        Shaded shaded;
        shaded.additions = additions;
        shaded.shares = sharesWith(additions);
        Bands predicted = predictedWith(shaded.shares);
        if (m_question.test.reflectance) {
            for (std::size_t band = 0; band < bandCount; ++band)
                predicted[band] = corrected(predicted[band], m_predicted[band],
                                            (*m_question.test.reflectance)[band]);
            shaded.expected = predicted;
            shaded.expected_D50 = labOf(predicted, ViewingLight::D50);
            shaded.miss = missOf(predicted, m_question.target);
            return shaded;
        }
        const Lab now = labOf(predicted, ViewingLight::D50);
        const Lab before = labOf(m_predicted, ViewingLight::D50);
        const Lab& read = m_question.test.lab_D50;
        shaded.expected_D50 = {now.l + read.l - before.l, now.a + read.a - before.a,
                               now.b + read.b - before.b};
        shaded.miss = missOfLab(shaded.expected_D50, m_question.target);
        return shaded;
    }

    std::vector<Shaded> best(std::size_t most) const {
        if (m_question.mostAdditions == 0 || !std::isfinite(m_question.greatestGrowth) ||
            !(m_question.greatestGrowth > leastGrowth))
            throw InputError("shade", "nothing is allowed to be added",
                             "Allow at least one addition, and some growth of the batch.");
        AmountQuestion search;
        search.things = m_question.additions.size();
        search.mostAtOnce = m_question.mostAdditions;
        search.least = leastGrowth;
        search.greatest = m_question.greatestGrowth;
        search.value = [this](const AmountsTried& tried) {
            double growth = 0;
            for (const double amount : tried.amounts)
                growth += amount;
            return costOf(with(additionsOf(tried)).miss) + costOfDoubling * growth * growth;
        };
        std::vector<Shaded> found;
        if (search.things == 0)
            return found;
        for (const AmountsFound& one : amountsFor(search))
            found.push_back(with(additionsOf(one.tried)));
        return worthIt(found, most);
    }

private:
    void requireUsable() const {
        const bool isMass = m_question.mass_g > 0 && std::isfinite(m_question.mass_g);
        const bool isFilm =
            m_question.filmWeight_gm2 > 0 && std::isfinite(m_question.filmWeight_gm2);
        if (!isMass || !isFilm)
            throw InputError("shade", "the mass of the batch or its film weight is not above 0",
                             "Give both, in g and g/m².");
        double sum = 0;
        for (const LotShare& part : m_question.shares)
            sum += part.share >= 0 ? part.share : std::nan("");
        if (!(std::abs(sum - 1) < 1e-6))
            throw InputError("shade", "the shares of the batch do not add up to 1",
                             "Check its weighings.");
        if (!isNumber(m_question.test) || !isNumber(m_question.target))
            throw InputError("shade", "the colour of the test or of the target is not a number",
                             "Measure it again.");
    }

    Bands predictedWith(const std::vector<LotShare>& shares) const {
        return measuredOf(
            filmOver(m_paper, mixedOf(shares, m_question.inks.optics), m_question.filmWeight_gm2),
            m_question.inks.surface);
    }

    // By the ratio of what was read to what was predicted; in bands so dark that the ratio is
    // noise, by the difference.
    static double corrected(double predicted, double before, double read) {
        constexpr double dark = 1e-3;
        return before > dark ? predicted * read / before : std::max(0.0, predicted + read - before);
    }

    std::vector<Addition> additionsOf(const AmountsTried& tried) const {
        std::vector<Addition> additions;
        for (std::size_t i = 0; i < tried.things.size(); ++i)
            additions.push_back(
                {m_question.additions[tried.things[i]], tried.amounts[i] * m_question.mass_g});
        return additions;
    }

    std::vector<LotShare> sharesWith(const std::vector<Addition>& additions) const {
        std::map<int, double> mass_g;
        double total_g = m_question.mass_g;
        for (const LotShare& part : m_question.shares)
            mass_g[part.lot] += part.share * m_question.mass_g;
        for (const Addition& addition : additions) {
            if (!(addition.mass_g > 0) || !std::isfinite(addition.mass_g))
                throw InputError("shade", "an addition is not above 0 g",
                                 "Only what is added can be computed.");
            mass_g[addition.lot] += addition.mass_g;
            total_g += addition.mass_g;
        }
        std::vector<LotShare> shares;
        for (const auto& [lot, its_g] : mass_g)
            shares.push_back({lot, its_g / total_g});
        return shares;
    }

    static bool needsNoMore(const Shaded& fewer, const Shaded& more) {
        const auto among = [&](const Addition& wanted) {
            return std::any_of(
                more.additions.begin(), more.additions.end(),
                [&](const Addition& addition) { return addition.lot == wanted.lot; });
        };
        return fewer.additions.size() < more.additions.size() &&
               std::all_of(fewer.additions.begin(), fewer.additions.end(), among) &&
               fewer.miss.underD50_dE00 <= more.miss.underD50_dE00 + worthAnAddition_dE00;
    }

    std::vector<Shaded> worthIt(const std::vector<Shaded>& found, std::size_t most) const {
        const Shaded asItIs = with({});
        std::vector<Shaded> kept;
        for (const Shaded& one : found) {
            if (kept.size() == most)
                break;
            const bool isWorthIt =
                !needsNoMore(asItIs, one) &&
                std::none_of(found.begin(), found.end(),
                             [&](const Shaded& other) { return needsNoMore(other, one); });
            if (isWorthIt)
                kept.push_back(one);
        }
        return kept;
    }

    const ShadingQuestion& m_question;
    Bands m_paper{};  // inside the surface
    Bands m_predicted{};
};

}  // namespace

Shaded shadedWith(const ShadingQuestion& question, const std::vector<Addition>& additions) {
    return Shading(question).with(additions);
}

std::vector<Shaded> shadings(const ShadingQuestion& question, std::size_t most) {
    return Shading(question).best(most);
}

}  // namespace rackbook
