#include "calc/Substitutes.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/Error.h"
#include "calc/LotLikeness.h"

namespace rackbook {

namespace {

// Less than any balance shows.
constexpr double nothing_g = 1e-6;

struct Candidate {
    int lot = -1;
    LotLikeness likeness;
};

enum class Enough { no, perhaps, yes };

class Shelf {
public:
    Shelf(const std::vector<LotOnShelf>& lots, const TimeSpan& on) : m_lots(lots), m_on(on) {
        for (const LotOnShelf& lot : lots)
            m_left_g.push_back(lot.left_g);
    }

    bool isThere(int lot) const {
        const LotOnShelf& facts = at(lot);
        const bool bought = !facts.bought || facts.bought->latest <= m_on.latest;
        return bought && !(facts.finished && facts.finished->earliest <= m_on.latest);
    }

    Enough hasEnough(int lot, double mass_g) const {
        const Estimate& left = m_left_g[static_cast<std::size_t>(lot)];
        if (left.isKnown())
            return left.best + nothing_g >= mass_g ? Enough::yes : Enough::no;
        if (left.low + nothing_g >= mass_g)
            return Enough::yes;
        return left.high + nothing_g >= mass_g ? Enough::perhaps : Enough::no;
    }

    // The most that can be counted on.
    double left_g(int lot) const {
        const Estimate& left = m_left_g[static_cast<std::size_t>(lot)];
        return std::max(0.0, left.isKnown() ? left.best : left.low);
    }

    void reserve(int lot, double mass_g) {
        Estimate& left = m_left_g[static_cast<std::size_t>(lot)];
        left.low = std::max(0.0, left.low - mass_g);
        left.best -= mass_g;
        left.high = std::max(0.0, left.high - mass_g);
    }

    // Lots like it that are there, the best first: opened, then the longest opened or bought.
    std::vector<Candidate> likeOf(int lot) const {
        std::vector<Candidate> candidates;
        for (int other = 0; other < static_cast<int>(m_lots.size()); ++other) {
            if (other == lot || !isThere(other))
                continue;
            const LotLikeness likeness = likenessOf(at(lot), at(other));
            if (likeness.alike)
                candidates.push_back({other, likeness});
        }
        std::stable_sort(candidates.begin(), candidates.end(),
                         [&](const Candidate& a, const Candidate& b) {
                             return preferenceOf(a.lot) < preferenceOf(b.lot);
                         });
        return candidates;
    }

private:
    const LotOnShelf& at(int lot) const { return m_lots[static_cast<std::size_t>(lot)]; }

    std::tuple<bool, CivilMinute> preferenceOf(int lot) const {
        const LotOnShelf& facts = at(lot);
        if (facts.opened && facts.opened->earliest <= m_on.latest)
            return {false, facts.opened->earliest};
        return {true, facts.bought ? facts.bought->earliest : endOfTime};
    }

    const std::vector<LotOnShelf>& m_lots;
    TimeSpan m_on;
    std::vector<Estimate> m_left_g;
};

void checkNeeds(const std::vector<LotOnShelf>& shelf, const std::vector<LotNeed>& needs) {
    for (std::size_t i = 0; i < needs.size(); ++i) {
        const std::string where = "need " + std::to_string(i + 1);
        if (needs[i].lot < 0 || static_cast<std::size_t>(needs[i].lot) >= shelf.size())
            throw InputError(where, "it names no lot", "Name a lot of the book.");
        if (!(needs[i].mass_g >= 0) || std::isinf(needs[i].mass_g))
            throw InputError(where, "its mass is not a number of 0 or more", "Give it in g.");
    }
}

bool tryOwn(LotService& service, Shelf& shelf) {
    const Enough enough = shelf.hasEnough(service.need.lot, service.need.mass_g);
    if (!shelf.isThere(service.need.lot) || enough == Enough::no)
        return false;
    service.leftNotKnown = enough == Enough::perhaps;
    shelf.reserve(service.need.lot, service.need.mass_g);
    return true;
}

bool tryOthers(LotService& service, const std::vector<Candidate>& candidates, Shelf& shelf) {
    for (const Enough wanted : {Enough::yes, Enough::perhaps})
        for (const Candidate& candidate : candidates) {
            const double mass_g = service.need.mass_g * candidate.likeness.factor;
            if (shelf.hasEnough(candidate.lot, mass_g) != wanted)
                continue;
            service.answer = LotAnswer::replaced;
            service.leftNotKnown = wanted == Enough::perhaps;
            service.by = candidate.lot;
            service.factor = candidate.likeness.factor;
            service.baseDiffers = candidate.likeness.baseDiffers;
            service.contentNotStated = candidate.likeness.contentNotStated;
            service.metalsDiffer = candidate.likeness.metalsDiffer;
            shelf.reserve(candidate.lot, mass_g);
            return true;
        }
    return false;
}

void tellShortage(LotService& service, const std::vector<Candidate>& candidates,
                  const Shelf& shelf) {
    double fullest_g = 0;
    double together_g = 0;
    const auto count = [&](int lot, double left_g) {
        if (left_g <= nothing_g || together_g + nothing_g >= service.need.mass_g)
            return;
        together_g += left_g;
        service.together.push_back(lot);
    };
    if (shelf.isThere(service.need.lot)) {
        fullest_g = shelf.left_g(service.need.lot);
        count(service.need.lot, fullest_g);
    }
    for (const Candidate& candidate : candidates) {
        const double left_g = shelf.left_g(candidate.lot) / candidate.likeness.factor;
        fullest_g = std::max(fullest_g, left_g);
        count(candidate.lot, left_g);
    }
    service.short_g = service.need.mass_g - fullest_g;
    service.shortTogether_g =
        together_g + nothing_g >= service.need.mass_g ? 0 : service.need.mass_g - together_g;
    service.answer = LotAnswer::tooLittle;
}

}  // namespace

std::vector<LotNeed> needsOf(const Recipe& recipe, double mass_g) {
    std::vector<LotNeed> needs;
    for (const LotShare& share : flattened(recipe))
        needs.push_back({share.lot, share.share * mass_g});
    return needs;
}

// First every lot that serves by itself keeps what it gives; replacements share the rest.
std::vector<LotService> servicesOf(const std::vector<LotOnShelf>& shelf,
                                   const std::vector<LotNeed>& needs, const TimeSpan& on) {
    checkNeeds(shelf, needs);
    Shelf rest(shelf, on);
    std::vector<LotService> services;
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < needs.size(); ++i) {
        services.emplace_back();
        services.back().need = needs[i];
        if (!tryOwn(services.back(), rest))
            open.push_back(i);
    }
    for (const std::size_t i : open) {
        LotService& service = services[i];
        const std::vector<Candidate> candidates = rest.likeOf(service.need.lot);
        if (tryOthers(service, candidates, rest))
            continue;
        const bool isThere =
            rest.isThere(service.need.lot) && rest.left_g(service.need.lot) > nothing_g;
        if (isThere || !candidates.empty())
            tellShortage(service, candidates, rest);
        else
            service.answer =
                shelf[static_cast<std::size_t>(service.need.lot)].lotKind == LotKind::ink
                    ? LotAnswer::needsColourMatching
                    : LotAnswer::noneAlike;
    }
    return services;
}

}  // namespace rackbook
