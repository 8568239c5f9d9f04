#include "calc/ColourMatch.h"

#include <algorithm>
#include <cmath>

#include "base/Error.h"
#include "base/Numbers.h"
#include "calc/AmountSearch.h"

namespace rackbook {

namespace {

// A colour more has to be worth the weighing (our guess, no source).
constexpr double worthAnotherColour_dE00 = 0.25;
// Parts of a colour to one of base: from a trace to almost none of base.
constexpr double leastParts = 2e-5;
constexpr double greatestParts = 2000;

double sumOf(const std::vector<LotShare>& shares) {
    double sum = 0;
    for (const LotShare& part : shares)
        sum += part.share;
    return sum;
}

void addShare(std::vector<LotShare>& shares, int lot, double share) {
    const auto place =
        std::lower_bound(shares.begin(), shares.end(), lot,
                         [](const LotShare& part, int wanted) { return part.lot < wanted; });
    if (place != shares.end() && place->lot == lot)
        place->share += share;
    else
        shares.insert(place, {lot, share});
}

std::vector<int> eachOnce(std::vector<int> lots) {
    std::sort(lots.begin(), lots.end());
    lots.erase(std::unique(lots.begin(), lots.end()), lots.end());
    return lots;
}

class Match {
public:
    explicit Match(const MatchQuestion& question)
        : m_question(question),
          m_colours(eachOnce(question.colours)),
          m_paper(insideOf(question.paper, question.inks.surface)) {
        requireUsable();
    }

    std::vector<MatchFound> run(std::size_t most) const {
        AmountQuestion search;
        search.things = m_colours.size();
        search.mostAtOnce = m_question.mostColours;
        search.least = leastParts;
        search.greatest = greatestParts;
        search.otherLeast = m_question.filmWeightLeast_gm2;
        search.otherGreatest = m_question.filmWeightGreatest_gm2;
        search.value = [this](const AmountsTried& tried) { return costOf(foundWith(tried).miss); };
        return differing(amountsFor(search), most);
    }

private:
    void requireUsable() const {
        if (m_question.colours.empty() || m_question.mostColours == 0)
            throw InputError("match", "no ink is known that could be taken",
                             "Make and measure drawdowns of the inks that are there.");
        if (m_question.base < 0 && m_question.baseShare)
            throw InputError("match", "a share of base is asked for, and no base",
                             "Name the base.");
        requireRoom();
        if (!(m_question.filmWeightLeast_gm2 > 0) ||
            !(m_question.filmWeightGreatest_gm2 >= m_question.filmWeightLeast_gm2))
            throw InputError("match", "the film weight is not above 0", "Give it in g/m².");
        if (!isNumber(m_question.target))
            throw InputError("match", "the colour to match is not a number", "Measure it again.");
    }

    void requireRoom() const {
        const double taken = sumOf(m_question.held) + m_question.baseShare.value_or(0);
        const bool anyNegative =
            m_question.baseShare.value_or(0) < 0 ||
            std::any_of(m_question.held.begin(), m_question.held.end(),
                        [](const LotShare& part) { return !(part.share >= 0); });
        if (anyNegative)
            throw InputError("match", "a share of base or drier is below 0",
                             "Give shares of 0 or more.");
        if (!(taken < 1))
            throw InputError("match",
                             "base and drier together are to be " + formatShortest(100 * taken) +
                                 " % of the ink",
                             "Leave room for colour.");
    }

    std::vector<LotShare> sharesWith(const AmountsTried& tried) const {
        double parts = 0;
        for (const double amount : tried.amounts)
            parts += amount;
        const double room = 1 - sumOf(m_question.held);
        const bool hasFreeBase = m_question.base >= 0 && !m_question.baseShare;
        const double base = hasFreeBase ? room / (1 + parts) : m_question.baseShare.value_or(0);
        std::vector<LotShare> shares;
        for (std::size_t i = 0; i < tried.things.size(); ++i)
            addShare(shares, m_colours[tried.things[i]], (room - base) * tried.amounts[i] / parts);
        if (m_question.base >= 0)
            addShare(shares, m_question.base, base);
        for (const LotShare& part : m_question.held)
            addShare(shares, part.lot, part.share);
        return shares;
    }

    MatchFound foundWith(const AmountsTried& tried) const {
        MatchFound found;
        found.shares = sharesWith(tried);
        found.filmWeight_gm2 = tried.other;
        found.predicted = measuredOf(
            filmOver(m_paper, mixedOf(found.shares, m_question.inks.optics), tried.other),
            m_question.inks.surface);
        found.miss = missOf(found.predicted, m_question.target);
        return found;
    }

    std::vector<MatchFound> differing(const std::vector<AmountsFound>& found,
                                      std::size_t most) const {
        std::vector<MatchFound> matches;
        for (const AmountsFound& one : found) {
            if (matches.size() == most)
                break;
            if (!isWorthItsColours(one, found))
                continue;
            matches.push_back(foundWith(one.tried));
            matches.back().opacity = opacityOf(matches.back());
        }
        return matches;
    }

    double opacityOf(const MatchFound& found) const {
        const InkOptics ink = mixedOf(found.shares, m_question.inks.optics);
        const auto lightnessOver = [&](double backing) {
            Bands below;
            below.fill(backing);
            return xyzOf(measuredOf(filmOver(below, ink, found.filmWeight_gm2),
                                    m_question.inks.surface),
                         ViewingLight::D50)
                .y;
        };
        const double overWhite = lightnessOver(1);
        return overWhite > 0 ? lightnessOver(0) / overWhite : 1;
    }

    // The squares of what is made least are compared by their roots, which are about ΔE00.
    static bool isWorthItsColours(const AmountsFound& one, const std::vector<AmountsFound>& found) {
        const std::vector<std::size_t>& its = one.tried.things;
        return std::none_of(found.begin(), found.end(), [&](const AmountsFound& other) {
            const std::vector<std::size_t>& fewer = other.tried.things;
            return fewer.size() < its.size() &&
                   std::includes(its.begin(), its.end(), fewer.begin(), fewer.end()) &&
                   std::sqrt(other.value) <= std::sqrt(one.value) + worthAnotherColour_dE00;
        });
    }

    const MatchQuestion& m_question;
    std::vector<int> m_colours;
    Bands m_paper;
};

}  // namespace

std::vector<MatchFound> matchesFor(const MatchQuestion& question, std::size_t most) {
    return Match(question).run(most);
}

Bands predictedOver(const Bands& paper, const std::vector<LotShare>& shares, double filmWeight_gm2,
                    const Characterisation& inks) {
    return measuredOf(
        filmOver(insideOf(paper, inks.surface), mixedOf(shares, inks.optics), filmWeight_gm2),
        inks.surface);
}

}  // namespace rackbook
