#include "commands/PlannedWeighing.h"

namespace rackbook {

namespace {

Tree treeOf(const PlannedShare& share, const InkBook& ink) {
    Tree tree = Tree::object();
    tree.set("lot", share.lot < 0
                        ? Tree(nullptr)
                        : Tree(ink.records.of<Lot>()[static_cast<std::size_t>(share.lot)].id));
    tree.set("recipeShare", share.recipe).set("weighedShare", share.planned);
    tree.set("standardUncertainty", share.uncertainty).set("isLimited", share.isLimited);
    return tree;
}

Tree treeOf(const WeighingPlan& plan, const InkBook& ink, const Recipe& recipe) {
    Tree tree = Tree::object();
    tree.set("way", textOf(plan.kind)).set("withinLimit", plan.isWithinLimit());
    Tree stages = Tree::array();
    for (const PlanStage& stage : plan.stages) {
        Tree one = Tree::object();
        one.set("role", textOf(stage.role));
        one.set("name", recipe.stages[static_cast<std::size_t>(stage.recipeStage)].name);
        if (stage.role != StageRole::recipe)
            one.set("baseParts", stage.baseParts);
        Tree parts = Tree::array();
        for (const PlanPart& part : stage.parts) {
            Tree weighed = Tree::object();
            if (part.lot >= 0)
                weighed.set("lot", ink.records.of<Lot>()[static_cast<std::size_t>(part.lot)].id);
            else
                weighed.set("step", part.stage + 1);
            weighed.set("mass_g", part.mass_g);
            parts.add(std::move(weighed));
        }
        one.set("parts", std::move(parts));
        one.set("total_g", stage.total_g).set("taken_g", stage.taken_g);
        one.set("leftOver_g", stage.leftOver_g);
        stages.add(std::move(one));
    }
    tree.set("steps", std::move(stages));
    Tree shares = Tree::array();
    for (const PlannedShare& share : plan.lots)
        shares.add(treeOf(share, ink));
    tree.set("shares", std::move(shares)).set("allColour", treeOf(plan.colour, ink));
    tree.set("waste_g", plan.waste.total_g).set("inkWaste_g", plan.waste.ink_g);
    return tree;
}

}  // namespace

void addWeighing(Tree& report, const InkBook& ink, const PlannedWeighing& weighing) {
    report.set("readability_g", weighing.request.balance.readability_g);
    report.set("repeatability_g", weighing.request.balance.repeatability_g);
    report.set("limit", weighing.request.limit);
    Tree plans = Tree::array();
    for (const WeighingPlan& plan : weighing.plans.plans)
        plans.add(treeOf(plan, ink, weighing.request.recipe));
    report.set("plans", std::move(plans));
    report.set("chosen", weighing.plans.chosen ? Tree(*weighing.plans.chosen) : Tree(nullptr));
    report.set("smallestBatch_g", weighing.plans.smallestBatch_g);
}

}  // namespace rackbook
