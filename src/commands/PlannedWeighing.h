// How a plan for weighing is told: its steps, what comes of them, and the other ways there are.
#pragma once

#include <optional>
#include <string>

#include "base/Tree.h"
#include "calc/WeighingPlan.h"
#include "cli/Console.h"
#include "commands/InkBook.h"

namespace rackbook {

struct PlannedWeighing {
    PlanRequest request;
    WeighingPlans plans;

    // The chosen plan; where none keeps the limit, the recipe as it stands.
    const WeighingPlan& plan() const { return plans.plans[plans.chosen.value_or(0)]; }
};

// Throws InputError as weighingPlans does.
PlannedWeighing plannedWeighing(PlanRequest request);

// The balance as it is called, and the most it carries, where that is known.
void printBalance(Console& console, const PlannedWeighing& weighing,
                  const std::string& balanceWords, std::optional<double> capacity_g);

// From how it is weighed to what comes of it and what else could be done. Where the balance cannot
// show a part of it at all, only that is said, and the answer is false.
bool printWeighing(Console& console, const InkBook& ink, const PlannedWeighing& weighing);

void addWeighing(Tree& report, const InkBook& ink, const PlannedWeighing& weighing);

}  // namespace rackbook
