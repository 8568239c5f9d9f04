#include "commands/DrawersReport.h"
#include "commands/InkWords.h"
#include "commands/JsonReport.h"

namespace rackbook {

namespace {

const std::string& idOf(const DrawersFacts& facts, int impression) {
    return facts.labels[static_cast<std::size_t>(impression)].id;
}

Tree touchTree(const DrawersFacts& facts, int look) {
    if (look < 0)
        return {};
    return textOf(facts.history.looks[static_cast<std::size_t>(look)].touch);
}

Tree lookTree(const DrawersFacts& facts, int look) {
    if (look < 0)
        return {};
    return formatDay(facts.history.looks[static_cast<std::size_t>(look)].at.earliest);
}

Tree airingTree(const DrawersFacts& facts, const LyingPrint& print) {
    const std::optional<std::int64_t> day = airingDay(print, facts.plan.airing_days);
    return print.isAtRisk && day ? Tree(formatDay(*day * minutesPerDay)) : Tree();
}

bool isDue(const DrawersFacts& facts, const LyingPrint& print) {
    return print.isAtRisk && isAiringDue(print, facts.plan.airing_days, facts.readiness.asOf);
}

Tree printTree(const DrawersFacts& facts, const LyingPrint& print) {
    const ImpressionLabel& label = facts.labels[static_cast<std::size_t>(print.impression)];
    Tree one = Tree::object();
    one.set("impression", label.id).set("edition", label.edition);
    one.set("workingNumber", label.workingNumber).set("spoiled", print.isSpoiled);
    one.set("verdict",
            print.isSpoiled ? Tree() : Tree(textOf(facts.readiness.rows[print.row].verdict)));
    one.set("atRisk", print.isAtRisk).set("since", treeOf(print.stay.from));
    one.set("darkSince", treeOf(print.darkSince)).set("airing", airingTree(facts, print));
    one.set("airingDue", isDue(facts, print)).set("interleaved", print.stay.interleaved);
    one.set("perhapsElsewhere", print.stay.undecided);
    one.set("touch", touchTree(facts, print.touchLook));
    one.set("touchLookOn", lookTree(facts, print.touchLook));
    one.set("foundDrySinceOn", lookTree(facts, print.drySince));
    return one;
}

Tree neighboursTree(const DrawersFacts& facts, const std::vector<DrawerNeighbour>& neighbours) {
    Tree list = Tree::array();
    for (const DrawerNeighbour& one : neighbours)
        list.add(Tree::object()
                     .set("impression", idOf(facts, one.impression))
                     .set("interleaved", one.isInterleaved));
    return list;
}

Tree softTree(const DrawersFacts& facts, const PutAwaySoft& soft) {
    Tree ids = Tree::array();
    for (const int impression : soft.impressions)
        ids.add(idOf(facts, impression));
    Tree one = Tree::object();
    one.set("impressions", std::move(ids)).set("putAway", treeOf(soft.putAway));
    one.set("interleaved", soft.isInterleaved).set("touch", touchTree(facts, soft.touchLook));
    one.set("besideThen", neighboursTree(facts, soft.besideThen));
    one.set("besideNow", neighboursTree(facts, soft.besideNow));
    return one;
}

// What is at risk and to be aired first.
const LyingPrint* firstToAir(const DrawerContents& drawer) {
    const LyingPrint* first = nullptr;
    for (const LyingPrint& print : drawer.prints)
        if (print.isAtRisk && (!first || airingOrder(print) < airingOrder(*first)))
            first = &print;
    return first;
}

Tree drawerTree(const DrawersFacts& facts, const DrawerContents& drawer) {
    const HistoryPlace& place = facts.history.places[static_cast<std::size_t>(drawer.place)];
    Tree one = Tree::object();
    one.set("place", place.id).set("name", place.name);
    one.set("capacity", drawer.capacity ? Tree(*drawer.capacity) : Tree());
    one.set("lying", drawer.prints.size()).set("overCapacity", drawer.isOverCapacity());
    one.set("atRisk", drawer.atRisk());
    const LyingPrint* first = firstToAir(drawer);
    one.set("nextAiring", first ? airingTree(facts, *first) : Tree());
    one.set("airingDue", first && isDue(facts, *first));
    Tree prints = Tree::array();
    for (const LyingPrint& print : drawer.prints)
        prints.add(printTree(facts, print));
    Tree soft = Tree::array();
    for (const PutAwaySoft& group : drawer.soft)
        soft.add(softTree(facts, group));
    one.set("impressions", std::move(prints)).set("notKnownDry", std::move(soft));
    return one;
}

}  // namespace

Tree drawersTree(const DrawersFacts& facts) {
    std::size_t atRisk = 0;
    Tree drawers = Tree::array();
    for (const DrawerContents& drawer : facts.plan.drawers) {
        atRisk += drawer.atRisk();
        drawers.add(drawerTree(facts, drawer));
    }
    Tree report = newReport("drawers");
    report.set("on", formatDay(facts.readiness.asOf));
    report.set("airing_days", facts.plan.airing_days).set("atRisk", atRisk);
    report.set("drawers", std::move(drawers));
    report.set("houseRules", treeOf(facts.rules, {"airing_days"}));
    return report;
}

}  // namespace rackbook
