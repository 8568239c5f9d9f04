#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "base/Text.h"
#include "calc/LotUse.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

// What was added to a mix later in the ledger's order, but can have been there before the event,
// because the dates leave it open.
class LaterAdditions {
public:
    explicit LaterAdditions(const AuditContext& context)
        : m_weighings(context.history().weighings),
          m_pulls(context.history().pulls),
          m_order(context.ledgerByKind().order()),
          m_weighingAt(m_weighings.size(), 0),
          m_pullAt(m_pulls.size(), 0) {
        for (std::size_t i = 0; i < m_order.events.size(); ++i) {
            const LedgerEvent event = m_order.events[i];
            (event.isPull ? m_pullAt : m_weighingAt)[event.row] = i;
        }
    }

    // Infinite where one of them has no known mass.
    double possible_g(const Overdraw& overdraw) const {
        const LedgerEvent event = overdraw.event;
        const std::size_t at = (event.isPull ? m_pullAt : m_weighingAt)[event.row];
        const TimeSpan& span = event.isPull ? m_pulls[event.row].start : m_weighings[event.row].at;
        const auto mix = static_cast<std::size_t>(overdraw.mix);
        double sum_g = 0;
        for (std::size_t i = m_order.additionsBegin[mix]; i < m_order.additionsBegin[mix + 1];
             ++i) {
            const HistoryWeighing& addition = m_weighings[m_order.additions[i]];
            // What is done to one mix within one span stands in the order of its sequence.
            const bool inSequence = !event.isPull && m_weighings[event.row].mix == overdraw.mix &&
                                    addition.at.earliest == span.earliest &&
                                    addition.at.latest == span.latest;
            if (m_weighingAt[m_order.additions[i]] > at && addition.at.earliest <= span.latest &&
                !inSequence)
                sum_g += massOf(addition);
        }
        return sum_g;
    }

private:
    static double massOf(const HistoryWeighing& addition) {
        if (!std::isnan(addition.mass_g))
            return std::max(addition.mass_g,
                            std::isnan(addition.massHigh_g) ? 0 : addition.massHigh_g);
        return std::isnan(addition.massHigh_g) ? INFINITY : addition.massHigh_g;
    }

    const std::vector<HistoryWeighing>& m_weighings;
    const std::vector<HistoryPull>& m_pulls;
    const MixOrder& m_order;
    std::vector<std::size_t> m_weighingAt;
    std::vector<std::size_t> m_pullAt;
};

void addOverdraw(const AuditContext& context, const Overdraw& overdraw, double short_g,
                 FindingList& found) {
    const Mix& mix = context.records().of<Mix>()[static_cast<std::size_t>(overdraw.mix)];
    const std::string what = "mix " + mix.id + " is short by " + gramsWords(short_g) + " here";
    const char* remedy = "Record the weighing that is missing, or correct this one.";
    if (overdraw.event.isPull) {
        const Pull& pull = context.records().of<Pull>()[overdraw.event.row];
        found.add(Severity::error, pull, "/inkBefore_g", what,
                  gramsWords(context.history().pulls[overdraw.event.row].inkUsed_g), remedy);
        return;
    }
    const Weighing& weighing = context.records().of<Weighing>()[overdraw.event.row];
    found.add(Severity::error, weighing, "/mass_g", what,
              weighing.mass_g ? gramsWords(*weighing.mass_g) : "", remedy);
}

}  // namespace

// The ledger counts a mix as empty after each shortage, so shortages of one mix add up.
Findings mixOverdrawn(const AuditContext& context) {
    const double tolerance_g = context.rules().value("overdrawTolerance_g");
    FindingList found;
    const std::vector<Overdraw>& overdraws = context.ledgerByKind().overdraws();
    if (overdraws.empty())
        return found.take();
    const LaterAdditions later(context);
    std::vector<double> short_g(context.history().mixCount, 0);
    for (const Overdraw& overdraw : overdraws) {
        double& sum_g = short_g[static_cast<std::size_t>(overdraw.mix)];
        sum_g += std::isnan(overdraw.best_g) ? overdraw.least_g : overdraw.best_g;
        if (sum_g - later.possible_g(overdraw) > tolerance_g)
            addOverdraw(context, overdraw, sum_g, found);
    }
    return found.take();
}

Findings mixRing(const AuditContext& context) {
    FindingList found;
    for (const std::vector<int>& cycle : context.ledgerByKind().order().cycles) {
        std::vector<std::string> ids;
        for (const int mix : cycle)
            ids.push_back(context.records().of<Mix>()[static_cast<std::size_t>(mix)].id);
        const Mix& first = context.records().of<Mix>()[static_cast<std::size_t>(cycle.front())];
        found.add(Severity::warning, first, "",
                  cycle.size() == 1 ? "mix " + ids.front() + " takes from itself"
                                    : "mixes " + joined(ids) + " take from one another in a ring",
                  "",
                  "Where leftovers went back into a jar, begin a new mix for what is in it then; "
                  "else correct the source of a weighing.");
    }
    return found.take();
}

Findings lotOverdrawn(const AuditContext& context) {
    const std::vector<Lot>& lots = context.records().of<Lot>();
    const std::vector<Estimate> taken_g = takenOutOfLots(context.history(), context.asOf());
    const double tolerance_g = context.rules().value("overdrawTolerance_g");
    FindingList found;
    for (std::size_t i = 0; i < lots.size(); ++i)
        if (lots[i].netMass_g && taken_g[i].low > *lots[i].netMass_g + tolerance_g)
            found.add(Severity::error, lots[i], "/netMass_g",
                      gramsWords(taken_g[i].low) + " were weighed out of it, and it held " +
                          gramsWords(*lots[i].netMass_g),
                      "", "Correct a weighing, or the net mass; another tin is another lot.");
    return found.take();
}

}  // namespace rackbook::rules
