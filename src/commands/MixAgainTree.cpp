#include "commands/MixAgainReport.h"

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

Tree lotsTree(const InkBook& ink, const MixAgain& again) {
    static constexpr const char* answers[] = {"serves", "replaced", "tooLittle",
                                              "needsColourMatching", "noneAlike"};
    Tree lots = Tree::array();
    for (const LotService& service : again.services) {
        Tree one = Tree::object();
        one.set("lot", ink.records.of<Lot>()[static_cast<std::size_t>(service.need.lot)].id);
        one.set("needed_g", service.need.mass_g);
        one.set("answer", answers[static_cast<std::size_t>(service.answer)]);
        if (service.answer == LotAnswer::replaced)
            one.set("by", ink.records.of<Lot>()[static_cast<std::size_t>(service.by)].id)
                .set("factor", service.factor);
        if (service.answer == LotAnswer::tooLittle)
            one.set("short_g", service.short_g);
        lots.add(std::move(one));
    }
    return lots;
}

}  // namespace

void addMixAgain(Tree& report, const InkBook& ink, const MixAgain& again) {
    report.set("wanted", again.wanted.words).set("wanted_g", again.request.wanted_g);
    report.set("pull",
               again.fromPull < 0
                   ? Tree(nullptr)
                   : Tree(ink.records.of<Pull>()[static_cast<std::size_t>(again.fromPull)].id));
    report.set("readability_g", again.request.balance.readability_g);
    report.set("repeatability_g", again.request.balance.repeatability_g);
    report.set("limit", again.request.limit);
    report.set("lots", lotsTree(ink, again));
    Tree plans = Tree::array();
    for (const WeighingPlan& plan : again.plans.plans)
        plans.add(treeOf(plan, ink, again.request.recipe));
    report.set("plans", std::move(plans));
    report.set("chosen", again.plans.chosen ? Tree(*again.plans.chosen) : Tree(nullptr));
    report.set("smallestBatch_g", again.plans.smallestBatch_g);
}

}  // namespace rackbook
