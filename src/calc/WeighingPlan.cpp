#include "calc/WeighingPlan.h"

#include <algorithm>
#include <cmath>

#include "calc/PlanCandidates.h"
#include "calc/PlanTrial.h"
#include "calc/WeighingOrder.h"

namespace rackbook {

namespace {

// Turns a layout into the plan that is handed out.
class PlanWriter {
public:
    PlanWriter(const PlanCandidate& candidate, const PlanCase& planCase)
        : m_candidate(candidate),
          m_case(planCase),
          m_trial(candidate.layout, planCase, Rounding::toReadability),
          m_exact(candidate.layout, planCase, Rounding::exact) {}

    WeighingPlan write() {
        m_plan.kind = m_candidate.kind;
        for (std::size_t i = 0; i < m_candidate.layout.size(); ++i)
            addStage(i);
        for (std::size_t i = 0; i < m_case.lots.size(); ++i)
            m_plan.lots.push_back(shareOf(i, m_case.lots[i]));
        m_plan.colour = shareOf(m_case.lots.size(), -1);
        return std::move(m_plan);
    }

private:
    WeighingTurn turnOfPart(const WeighedPart& part) const {
        if (part.constituent >= 0)
            return turnOf(m_case.kinds[static_cast<std::size_t>(part.constituent)]);
        const double ink = m_exact.analysis().shareIn(static_cast<std::size_t>(part.stage),
                                                      m_exact.analysis().jointColumn());
        return ink > 0 ? WeighingTurn::colour : WeighingTurn::base;
    }

    std::vector<std::size_t> orderOf(const std::vector<WeighedPart>& parts) const {
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < parts.size(); ++i)
            order.push_back(i);
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return isWeighedBefore({turnOfPart(parts[a]), parts[a].mass_g},
                                   {turnOfPart(parts[b]), parts[b].mass_g});
        });
        return order;
    }

    void addStage(std::size_t number) {
        const LayoutStage& layout = m_candidate.layout[number];
        const WeighedStage& weighed = m_trial.stages()[number];
        PlanStage stage;
        stage.role = layout.role;
        stage.recipeStage = layout.recipeStage;
        stage.baseParts = layout.baseParts;
        stage.total_g = weighed.total_g;
        stage.leftOver_g = roundedToReadability_g(m_trial.leftOver_g(number), m_case.balance);
        const bool isLast = number + 1 == m_candidate.layout.size();
        // What is wanted need not be a mass that the balance can show.
        if (isLast)
            stage.leftOver_g = m_trial.leftOver_g(number);
        stage.taken_g =
            isLast ? weighed.taken_g : roundedToReadability_g(weighed.taken_g, m_case.balance);
        for (const std::size_t i : orderOf(weighed.parts)) {
            const WeighedPart& part = weighed.parts[i];
            const int lot =
                part.constituent < 0 ? -1 : m_case.lots[static_cast<std::size_t>(part.constituent)];
            if (m_trial.showsAsZero(number, i))
                m_plan.complaints.push_back({PlanFault::massShowsAsZero, static_cast<int>(number),
                                             static_cast<int>(stage.parts.size()), lot});
            stage.parts.push_back({lot, part.stage, layout.parts[i].share, part.mass_g});
        }
        addWaste(number, stage.leftOver_g);
        m_plan.stages.push_back(std::move(stage));
    }

    void addWaste(std::size_t stage, double leftOver_g) {
        m_plan.waste.total_g += leftOver_g;
        for (std::size_t i = 0; i < m_case.kinds.size(); ++i) {
            const double mass_g = leftOver_g * m_trial.analysis().shareIn(stage, i);
            double& sum_g = m_case.kinds[i] == LotKind::ink    ? m_plan.waste.ink_g
                            : m_case.kinds[i] == LotKind::base ? m_plan.waste.base_g
                                                               : m_plan.waste.other_g;
            sum_g += mass_g;
        }
    }

    PlannedShare shareOf(std::size_t column, int lot) {
        PlannedShare share;
        share.lot = lot;
        share.recipe = m_case.recipe[column];
        share.planned = m_trial.analysis().share(column);
        share.uncertainty = m_trial.uncertainty(column);
        share.isLimited = m_case.isLimited[column];
        if (share.isLimited && !m_trial.keepsLimit(column)) {
            const bool byRounding = std::fabs(share.deviation()) > m_case.limit;
            m_plan.complaints.push_back(
                {byRounding ? PlanFault::roundedTooFar : PlanFault::uncertaintyTooLarge, -1, -1,
                 lot});
        }
        return share;
    }

    const PlanCandidate& m_candidate;
    const PlanCase& m_case;
    PlanTrial m_trial;
    PlanTrial m_exact;  // for what rounding can hide: that a stage carries ink
    WeighingPlan m_plan;
};

bool isBefore(const WeighingPlan& a, const WeighingPlan& b) {
    if (std::fabs(a.waste.total_g - b.waste.total_g) > 1e-9)
        return a.waste.total_g < b.waste.total_g;
    return a.stages.size() < b.stages.size();
}

double smallestBatchOf_g(const Layout& asItStands, const PlanCase& planCase) {
    const PlanTrial trial(asItStands, planCase, Rounding::exact);
    double times = 0;
    for (std::size_t column = 0; column < planCase.isLimited.size(); ++column)
        if (planCase.isLimited[column])
            times = std::max(times, coverageFactor * trial.uncertainty(column) /
                                        (planCase.limit * planCase.recipe[column]));
    return times * planCase.wanted_g;
}

}  // namespace

WeighingPlans weighingPlans(const PlanRequest& request) {
    const PlanCase planCase(request);
    const PlanCandidate asItStands{PlanKind::asItStands, layoutOf(request.recipe, planCase)};
    WeighingPlans result;
    result.smallestBatch_g = smallestBatchOf_g(asItStands.layout, planCase);
    result.plans.push_back(PlanWriter(asItStands, planCase).write());
    if (!result.plans.front().isWithinLimit())
        for (const PlanCandidate& candidate : candidatesFor(asItStands.layout, planCase))
            result.plans.push_back(PlanWriter(candidate, planCase).write());
    std::stable_sort(result.plans.begin(), result.plans.end(), isBefore);
    for (std::size_t i = 0; i < result.plans.size() && !result.chosen; ++i)
        if (result.plans[i].isWithinLimit())
            result.chosen = i;
    return result;
}

double smallestBatch_g(const PlanRequest& request) {
    const PlanCase planCase(request);
    return smallestBatchOf_g(layoutOf(request.recipe, planCase), planCase);
}

}  // namespace rackbook
