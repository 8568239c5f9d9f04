// The readiness check as text and as JSON.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"
#include "calc/Readiness.h"
#include "cli/Console.h"
#include "store/HistoryQuery.h"

namespace rackbook {

// Everything that a report is made from. Refers to its parts, which must outlive it.
struct ReadyFacts {
    const History& history;
    const std::vector<ImpressionLabel>& labels;
    const HouseRules& rules;
    const Readiness& readiness;
    std::vector<std::size_t> chosen;  // rows to report, sorted by what to do first
    bool explainsAll = false;         // reasons also for what needs no light
};

// One line for impressions that stand alike, then why, then the house rules used.
void printReadiness(Console& console, const ReadyFacts& facts);

// Every chosen impression with its figures and its reasons.
Tree readinessTree(const ReadyFacts& facts);

// Order of verdicts by what to do first: bring out, more light, look due, unknown, ready, not
// affected.
int urgencyOf(Verdict verdict);

// True for every verdict but ready and notAffected.
// In the language in use.
std::string saidVerdict(Verdict verdict);

bool mayNeedLight(Verdict verdict);

}  // namespace rackbook
