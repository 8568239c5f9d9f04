#include "commands/SheetEstimates.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "records/AsItStood.h"
#include "sheets/ReadinessFacts.h"

namespace rackbook {

namespace {

// More than any studio has existed: the count has no upper end.
constexpr double mostDays = 1e6;

double twoDigits(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1e", value);
    return std::strtod(text, nullptr);
}

void setDays(Tree& tree, const char* name, double days) {
    constexpr double hair = 1e-6;  // as the sheets round down
    if (days < mostDays)
        tree.set(name, static_cast<std::int64_t>(std::floor(days + hair)));
}

void setDose(Tree& tree, const char* name, double dose_sunnyDays) {
    if (std::isfinite(dose_sunnyDays))
        tree.set(name, twoDigits(dose_sunnyDays));
}

}  // namespace

struct SheetEstimates::Figures {
    Verdict verdict = Verdict::unknown;
    bool isCounted = false;  // from a layer on
    double daysLow = 0;
    double daysHigh = 0;
    double daysNeeded = 0;
    std::optional<Estimate> dose_sunnyDays;
};

// What came after the day, such as who has the impression now, is taken out first.
void SheetEstimates::reckon() {
    auto figures = std::make_shared<std::unordered_map<std::string, Figures>>();
    const RecordSet then = recordsAsOf(m_records, m_asOf);
    ReadinessQuestion question;
    question.asOf = m_asOf;
    question.namesHolders = true;
    const ReadinessFacts facts = readinessFactsOf(then, question);
    for (const ReadinessRow& row : facts.readiness.rows) {
        const std::int64_t key =
            facts.history.impressions[static_cast<std::size_t>(row.impression)].key;
        Figures one;
        one.verdict = row.verdict;
        one.isCounted = row.pull >= 0;
        one.daysLow = row.daysLow;
        one.daysHigh = row.daysHigh;
        one.daysNeeded = row.daysNeeded;
        if (row.asksDose)
            one.dose_sunnyDays = row.dose.sunnyDays;
        (*figures)[then.of<Impression>()[static_cast<std::size_t>(key)].id] = one;
    }
    m_figures = std::move(figures);
}

std::optional<Tree> SheetEstimates::of(const std::string& impression, bool verdictsOnly) {
    if (!m_figures)
        reckon();
    const auto found = m_figures->find(impression);
    if (found == m_figures->end())
        return std::nullopt;
    const Figures& figures = found->second;
    Tree tree = Tree::object();
    tree.set("impression", impression).set("verdict", textOf(figures.verdict));
    if (verdictsOnly || !figures.isCounted)
        return tree;
    setDays(tree, "inLightLow_days", figures.daysLow);
    setDays(tree, "inLightHigh_days", figures.daysHigh);
    tree.set("needed_days", twoDigits(figures.daysNeeded));
    if (figures.dose_sunnyDays) {
        setDose(tree, "doseLow_sunnyDays", figures.dose_sunnyDays->low);
        if (figures.dose_sunnyDays->isKnown())
            setDose(tree, "dose_sunnyDays", figures.dose_sunnyDays->best);
        setDose(tree, "doseHigh_sunnyDays", figures.dose_sunnyDays->high);
    }
    return tree;
}

}  // namespace rackbook
