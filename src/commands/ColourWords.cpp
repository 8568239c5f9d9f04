#include "commands/ColourWords.h"

#include "base/Numbers.h"
#include "base/Text.h"
#include "calc/WeighingPlan.h"
#include "commands/JsonReport.h"

namespace rackbook {

namespace {

// So that a share stays beside its lot where a table wraps.
constexpr const char* noBreak = "\u00a0";

// Two digits that count, down to a thousandth of a per cent.
std::string percentOf(double share) {
    const double percent = share * 100;
    return formatFixed(percent, percent >= 10 ? 1 : percent >= 1 ? 2 : 3) + noBreak + "%";
}

std::vector<std::string> idsOf(const InkBook& ink, const std::vector<int>& lots) {
    std::vector<std::string> ids;
    for (const int lot : lots)
        ids.push_back(lotAt(ink, lot).id);
    return ids;
}

}  // namespace

std::string labWords(const Lab& lab) {
    return "L* " + formatFixed(lab.l, 2) + ", a* " + formatFixed(lab.a, 2) + ", b* " +
           formatFixed(lab.b, 2);
}

std::string shareWords(const InkBook& ink, const std::vector<LotShare>& shares, LotKind kind) {
    std::vector<std::string> words;
    for (const LotShare& part : shares)
        if (lotAt(ink, part.lot).lotKind == kind)
            words.push_back(percentOf(part.share) + noBreak + lotAt(ink, part.lot).id);
    return joined(words, ", ");
}

double shareOfKind(const InkBook& ink, const std::vector<LotShare>& shares, LotKind kind) {
    double sum = 0;
    for (const LotShare& part : shares)
        if (lotAt(ink, part.lot).lotKind == kind)
            sum += part.share;
    return sum;
}

std::string giveOrTakeWords(double standard_dE00) {
    return formatFixed(coverageFactor * standard_dE00, 1);
}

std::string spreadSentence(const InkBook& ink, const PredictionSpread& spread) {
    const bool isOneCause = spread.weighing_dE00 <= 0 && !spread.inks_dE00;
    std::string words = "Give or take ΔE00 " + giveOrTakeWords(spread.together_dE00) +
                        ", an estimate: twice " +
                        (isOneCause ? "" : "the root of the sum of squares of ") +
                        formatFixed(spread.filmWeight_dE00, 2) + " from the film weight";
    if (spread.weighing_dE00 > 0)
        words += ", " + formatFixed(spread.weighing_dE00, 2) + " from weighing";
    if (spread.inks_dE00)
        words += " and " + formatFixed(*spread.inks_dE00, 2) +
                 " from how well its inks are known by their drawdowns";
    words += ".";
    if (!spread.uncheckedLots.empty())
        words += " How well " + joined(idsOf(ink, spread.uncheckedLots)) +
                 (spread.uncheckedLots.size() == 1 ? " is" : " are") +
                 " known could not be checked" +
                 (spread.inks_dE00 ? ": taken as the studio's worst known ink."
                                   : ", nor that of any other ink, and is not in it.");
    if (!spread.takenAsClear.empty())
        words +=
            " Never measured, and taken as clear: " + joined(idsOf(ink, spread.takenAsClear)) + ".";
    return words;
}

Tree treeOf(const Lab& lab) {
    Tree tree = Tree::object();
    tree.set("l", lab.l).set("a", lab.a).set("b", lab.b);
    return tree;
}

Tree treeOf(const Bands& bands) {
    Tree values = Tree::array();
    for (const double value : bands)
        values.add(value);
    Tree tree = Tree::object();
    tree.set("start_nm", bandStart_nm).set("step_nm", bandStep_nm);
    tree.set("reflectance", std::move(values));
    return tree;
}

Tree treeOf(const ColourMiss& miss) {
    const auto orNull = [](const std::optional<double>& value) {
        return value ? Tree(*value) : Tree();
    };
    Tree tree = Tree::object();
    tree.set("D50", miss.underD50_dE00);
    tree.set("A", orNull(miss.underA_dE00)).set("FL11", orNull(miss.underFL11_dE00));
    return tree;
}

Tree treeOf(const InkBook& ink, const PredictionSpread& spread) {
    Tree tree = Tree::object();
    tree.set("filmWeight_dE00", spread.filmWeight_dE00);
    tree.set("weighing_dE00", spread.weighing_dE00);
    tree.set("inks_dE00", spread.inks_dE00 ? Tree(*spread.inks_dE00) : Tree());
    tree.set("uncheckedLots", textsTree(idsOf(ink, spread.uncheckedLots)));
    tree.set("lotsTakenAsClear", textsTree(idsOf(ink, spread.takenAsClear)));
    tree.set("together_dE00", spread.together_dE00);
    return tree;
}

Tree treeOf(const InkBook& ink, const std::vector<LotShare>& shares) {
    Tree parts = Tree::array();
    for (const LotShare& part : shares)
        parts.add(Tree::object().set("lot", lotAt(ink, part.lot).id).set("share", part.share));
    return parts;
}

}  // namespace rackbook
