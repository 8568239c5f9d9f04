#include "calc/PlanCandidates.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "calc/PlanSearch.h"
#include "calc/PlanTrial.h"

namespace rackbook {

namespace {

// Parts of base that one part of colour is let down in: the usual round numbers.
constexpr std::array<double, 5> baseParts = {2, 5, 10, 20, 50};
constexpr std::size_t mostTints = 5;

// A part whose own weighing takes less of the limit than this is not worth a tint.
constexpr double worthATint = 0.1;

// The best layout so far.
class LeastWaste {
public:
    explicit LeastWaste(const PlanCase& planCase) : m_case(planCase) {}

    // Sizes the layout; true where it wastes less than the best so far.
    bool offer(const std::optional<Layout>& layout) {
        if (!layout)
            return false;
        const std::optional<Layout> sized = enlargedBefore(*layout, m_case);
        if (!sized)
            return false;
        const double waste_g = PlanTrial(*sized, m_case, Rounding::toReadability).waste_g();
        if (m_best && waste_g >= m_waste_g - m_case.balance.readability_g / 2)
            return false;
        m_best = sized;
        m_waste_g = waste_g;
        return true;
    }

    const std::optional<Layout>& best() const { return m_best; }

private:
    const PlanCase& m_case;
    std::optional<Layout> m_best;
    double m_waste_g = 0;
};

struct WeakPart {
    Tint tint;
    double expanded = 0;  // its own weighing's part of the relative expanded uncertainty
};

double ownPart(const PlanTrial& trial, const PlanCase& planCase, std::size_t stage,
               std::size_t part) {
    double worst = 0;
    for (std::size_t column = 0; column < planCase.isLimited.size(); ++column)
        if (planCase.isLimited[column]) {
            const double change =
                trial.analysis().sensitivity(stage, trial.stages()[stage].parts[part], column);
            worst = std::max(worst, std::fabs(change) / planCase.recipe[column]);
        }
    return coverageFactor * planCase.u_g * worst;
}

bool carriesInk(const PlanTrial& trial, const PlanCase& planCase, const LayoutPart& part) {
    if (part.constituent >= 0)
        return planCase.isInk[static_cast<std::size_t>(part.constituent)];
    return trial.analysis().shareIn(static_cast<std::size_t>(part.stage),
                                    trial.analysis().jointColumn()) > 0;
}

std::vector<Tint> weakParts(const Layout& layout, const PlanCase& planCase) {
    const PlanTrial trial(layout, planCase, Rounding::exact);
    std::vector<WeakPart> found;
    for (std::size_t stage = 0; stage < layout.size(); ++stage) {
        if (!basePartOf(layout[stage], planCase))
            continue;
        for (std::size_t part = 0; part < layout[stage].parts.size(); ++part) {
            const double expanded = ownPart(trial, planCase, stage, part);
            if (carriesInk(trial, planCase, layout[stage].parts[part]) &&
                expanded > worthATint * planCase.limit &&
                withTints(layout, {{stage, part, baseParts.front()}}, planCase))
                found.push_back({{stage, part, 0}, expanded});
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const WeakPart& a, const WeakPart& b) { return a.expanded > b.expanded; });
    std::vector<Tint> tints;
    for (const WeakPart& weak : found)
        if (tints.size() < mostTints)
            tints.push_back(weak.tint);
    return tints;
}

// Tries these parts with all ratios; the ratios are left as they were best.
void offerTints(std::vector<Tint> tints, const Layout& layout, const PlanCase& planCase,
                LeastWaste& least) {
    std::vector<Tint> best;
    for (const double parts : baseParts) {
        for (Tint& tint : tints)
            tint.baseParts = parts;
        if (least.offer(withTints(layout, tints, planCase)))
            best = tints;
    }
    if (best.empty() || best.size() == 1)
        return;
    for (std::size_t i = 0; i < best.size(); ++i)
        for (const double parts : baseParts) {
            std::vector<Tint> changed = best;
            changed[i].baseParts = parts;
            if (least.offer(withTints(layout, changed, planCase)))
                best = changed;
        }
}

std::optional<Layout> leastTints(const Layout& layout, const PlanCase& planCase) {
    const std::vector<Tint> weak = weakParts(layout, planCase);
    LeastWaste least(planCase);
    for (std::size_t count = 1; count <= weak.size(); ++count)
        offerTints({weak.begin(), weak.begin() + static_cast<std::ptrdiff_t>(count)}, layout,
                   planCase, least);
    return least.best();
}

std::optional<Layout> leastTogether(const Layout& layout, std::size_t stage,
                                    const PlanCase& planCase) {
    LeastWaste least(planCase);
    least.offer(withColoursTogether(layout, stage, 0, planCase));
    for (const double parts : baseParts)
        least.offer(withColoursTogether(layout, stage, parts, planCase));
    return least.best();
}

}  // namespace

std::vector<PlanCandidate> candidatesFor(const Layout& asItStands, const PlanCase& planCase) {
    std::vector<PlanCandidate> found;
    const auto keep = [&found](PlanKind kind, const std::optional<Layout>& layout) {
        if (layout)
            found.push_back({kind, *layout});
    };
    keep(PlanKind::largerBatch, enlargedAsAWhole(asItStands, planCase));
    keep(PlanKind::largerEarlierStage, enlargedBefore(asItStands, planCase));
    keep(PlanKind::tint, leastTints(asItStands, planCase));
    for (std::size_t stage = 0; stage < asItStands.size(); ++stage)
        keep(PlanKind::coloursTogether, leastTogether(asItStands, stage, planCase));
    return found;
}

}  // namespace rackbook
