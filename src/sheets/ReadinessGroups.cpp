#include "sheets/ReadinessGroups.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "base/Numbers.h"
#include "sheets/ReadinessWhy.h"
#include "sheets/SpanText.h"

namespace rackbook {

namespace {

std::size_t urgencyOf(Verdict verdict) {
    const std::vector<Verdict>& order = verdictsByUrgency();
    return static_cast<std::size_t>(std::find(order.begin(), order.end(), verdict) - order.begin());
}

std::string layerText(const ReadinessRow& row, const ReadinessFacts& facts,
                      const SheetWords& words) {
    if (row.layer < 0)
        return words(row.verdict == Verdict::unknown ? "notKnown" : "impressions.noLayer");
    const HistoryLayer& layer = facts.history.layers[static_cast<std::size_t>(row.layer)];
    return words.filled("impressions.layerOn",
                        {{"layer", std::to_string(layer.ordinal)}, {"date", spanText(row.pulled)}});
}

std::string daysText(const ReadinessRow& row, const SheetWords& words) {
    if (row.pull < 0)
        return {};
    return words.filled("impressions.daysOf",
                        {{"days", wholeDays(row.daysLow, row.daysHigh, words)},
                         {"needed", words.shortFigure(row.daysNeeded)}});
}

std::string lookText(const ReadinessRow& row, const ReadinessFacts& facts,
                     const SheetWords& words) {
    std::vector<std::string> parts;
    if (row.touchLook >= 0)
        parts.push_back(
            words.of("touch", facts.history.looks[static_cast<std::size_t>(row.touchLook)].touch));
    if (row.colourLook >= 0)
        parts.push_back(words.of(
            "lookColour", facts.history.looks[static_cast<std::size_t>(row.colourLook)].colour));
    if (parts.empty())
        return words("impressions.noLook");
    const int last = std::max(row.touchLook, row.colourLook);
    return words.inRow(parts) + "\n" +
           spanText(facts.history.looks[static_cast<std::size_t>(last)].at);
}

}  // namespace

std::string wholeDays(double daysLow, double daysHigh, const SheetWords& words) {
    constexpr double hair = 1e-6;
    const double low = std::floor(daysLow + hair);
    const double high = std::floor(daysHigh + hair);
    return words.figure(low, 0) + (high > low + 1 ? "–" + words.figure(high, 0) : std::string());
}

const std::vector<Verdict>& verdictsByUrgency() {
    static const std::vector<Verdict> order = {Verdict::bringOut, Verdict::moreLight,
                                               Verdict::lookDue,  Verdict::unknown,
                                               Verdict::ready,    Verdict::notAffected};
    return order;
}

std::vector<ReadinessGroup> readinessGroups(const ReadinessFacts& facts, const SheetWords& words) {
    using Key = std::tuple<std::size_t, std::size_t, std::string, std::string, std::string,
                           std::string, std::vector<std::string>>;
    std::map<Key, ReadinessGroup> groups;
    for (std::size_t i = 0; i < facts.readiness.rows.size(); ++i) {
        const ReadinessRow& row = facts.readiness.rows[i];
        const ReadinessImpression& impression =
            facts.impressions[static_cast<std::size_t>(row.impression)];
        ReadinessGroup made;
        made.sample = i;
        made.edition = facts.history.editions[impression.edition].code;
        made.layer = layerText(row, facts, words);
        made.days = daysText(row, words);
        made.look = lookText(row, facts, words);
        made.place = row.place < 0 ? words("notKnown")
                                   : facts.history.places[static_cast<std::size_t>(row.place)].name;
        made.reasons = whySentences(row, facts, words);
        Key key{urgencyOf(row.verdict),
                impression.edition,
                made.layer,
                made.days,
                made.look,
                made.place,
                made.reasons};
        ReadinessGroup& group = groups.emplace(std::move(key), std::move(made)).first->second;
        group.numbers.push_back(impression.workingNumber);
        if (!impression.designation.empty())
            group.designations.push_back(impression.designation);
    }
    std::vector<ReadinessGroup> ordered;
    for (auto& [key, group] : groups) {
        std::sort(group.numbers.begin(), group.numbers.end());
        ordered.push_back(std::move(group));
    }
    // By what no language changes.
    const auto place = [&](const ReadinessGroup& group) {
        const ReadinessRow& row = facts.readiness.rows[group.sample];
        return std::tuple(urgencyOf(row.verdict),
                          facts.impressions[static_cast<std::size_t>(row.impression)].edition,
                          group.numbers.front());
    };
    std::sort(
        ordered.begin(), ordered.end(),
        [&](const ReadinessGroup& a, const ReadinessGroup& b) { return place(a) < place(b); });
    return ordered;
}

std::string groupName(const ReadinessGroup& group) {
    return group.edition + " " + numberRanges(group.numbers);
}

}  // namespace rackbook
