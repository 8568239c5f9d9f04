#include "commands/BalanceGiven.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/Numbers.h"
#include "base/Text.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"

namespace rackbook {

namespace {

constexpr int decimalsWithoutBalance = 3;

BalanceGiven usable(const Balance& record) {
    BalanceGiven given;
    given.record = record;
    given.repeatabilityAssumed = !record.repeatability_g;
    given.figures.readability_g = record.readability_g;
    given.figures.repeatability_g = record.repeatability_g.value_or(record.readability_g);
    return given;
}

}  // namespace

OptionSpec balanceOption() {
    return valueOption("balance", "BALANCE", "Id of the balance that it is weighed on.",
                       "the only one in use");
}

std::optional<BalanceGiven> balanceGiven(const CommandContext& context, const RecordSet& records) {
    return balanceGiven(context.arguments, records);
}

std::optional<BalanceGiven> balanceGiven(const Arguments& arguments, const RecordSet& records) {
    const std::vector<Balance>& all = records.of<Balance>();
    if (const std::optional<std::string> id = arguments.value("balance")) {
        if (const Balance* named = records.find<Balance>(*id))
            return usable(*named);
        std::vector<std::string> ids;
        for (const Balance& balance : all)
            ids.push_back(balance.id);
        refuseUnknownRecord(RecordKind::balance, *id, ids);
    }
    std::vector<std::string> inUse;
    const Balance* only = nullptr;
    for (const Balance& balance : all) {
        if (balance.retiredOn)
            continue;
        inUse.push_back(balance.id);
        only = &balance;
    }
    if (inUse.size() > 1)
        throw UsageError(
            "the book has " + std::to_string(inUse.size()) + " balances in use: " + joined(inUse),
            "Name one with --balance.");
    return only ? std::optional(usable(*only)) : std::nullopt;
}

std::string balanceWords(const std::optional<BalanceGiven>& balance) {
    std::string words = balance->record ? balance->record->name + ", " : "";
    words += "in steps of " + formatShortest(balance->figures.readability_g) + " g, ";
    if (balance->repeatabilityAssumed)
        return words + "repeatability not recorded and taken as large as a step (our guess)";
    return words + "repeatable to " + formatShortest(balance->figures.repeatability_g) + " g";
}

std::string balanceSentence(const std::optional<BalanceGiven>& balance) {
    if (balance)
        return "Weighed on: " + balanceWords(balance) + ".";
    return "No balance is recorded, so masses are not rounded to what one can show. Enter yours "
           "with "
           "rackbook enter balance kitchen name=\"Kitchen balance\" readability_g=0.1 "
           "repeatability_g=0.1.";
}

Tree treeOf(const std::optional<BalanceGiven>& balance) {
    if (!balance)
        return nullptr;
    Tree tree = Tree::object();
    if (balance->record)
        tree.set("id", balance->record->id).set("name", balance->record->name);
    tree.set("readability_g", balance->figures.readability_g);
    tree.set("repeatability_g", balance->figures.repeatability_g);
    tree.set("repeatabilityAssumed", balance->repeatabilityAssumed);
    return tree;
}

int decimalsOf(const BalanceFigures& balance) {
    constexpr int most = 6;
    int decimals = 0;
    for (double step = balance.readability_g;
         decimals < most && std::abs(step - std::round(step)) > 1e-9 * std::max(1.0, step);
         step *= 10)
        ++decimals;
    return decimals;
}

std::string gramsShown(double mass_g, const std::optional<BalanceGiven>& balance) {
    return formatFixed(mass_g, balance ? decimalsOf(balance->figures) : decimalsWithoutBalance);
}

}  // namespace rackbook
