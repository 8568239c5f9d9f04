#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

struct OrderedPull {
    int ordinal;
    const Pull* pull;
};

// By ordinal, then by time, as the timeline has them.
std::vector<OrderedPull> pullsByOrdinal(const AuditContext& context,
                                        const ImpressionTimeline& timeline) {
    std::vector<OrderedPull> pulls;
    for (const Pull* pull : timeline.pulls)
        if (const Layer* layer = context.records().find(pull->layer))
            pulls.push_back({layer->ordinal, pull});
    std::stable_sort(pulls.begin(), pulls.end(), [](const OrderedPull& a, const OrderedPull& b) {
        return a.ordinal < b.ordinal;
    });
    return pulls;
}

// (pull, pull of the layer before it) where the first came certainly before every one of the
// layer before.
using PullPairs = std::map<std::pair<const Pull*, const Pull*>, Numbers>;

void noteReversed(const std::vector<OrderedPull>& pulls, int workingNumber, PullPairs& reversed) {
    for (std::size_t begin = 0; begin < pulls.size();) {
        std::size_t next = begin;
        while (next < pulls.size() && pulls[next].ordinal == pulls[begin].ordinal)
            ++next;
        if (next == pulls.size())
            return;
        const Pull* later = pulls[next].pull;
        const bool reversedHere = std::all_of(
            pulls.begin() + static_cast<std::ptrdiff_t>(begin),
            pulls.begin() + static_cast<std::ptrdiff_t>(next), [&](const OrderedPull& earlier) {
                return certainlyBefore(later->start, earlier.pull->start);
            });
        if (reversedHere)
            reversed[{later, pulls[begin].pull}].add(workingNumber);
        begin = next;
    }
}

int ordinalOf(const AuditContext& context, const Pull& pull) {
    return context.records().find(pull.layer)->ordinal;
}

// Proofs that show some layers only, by their nature.
bool mayLackLayers(const Impression& impression) {
    if (!impression.designationKind)
        return false;
    switch (*impression.designationKind) {
        case DesignationKind::trialProof:
        case DesignationKind::workingProof:
        case DesignationKind::stateProof:
        case DesignationKind::separationProof:
        case DesignationKind::colourProof:
        case DesignationKind::progressiveProof:
        case DesignationKind::cancellationProof:
            return true;
        default:
            return false;
    }
}

// The sheets of the first layer, or nothing where its pulls do not list them all.
std::set<std::string> sheetsOfFirstLayer(const EditionFolder& folder) {
    std::set<std::string> sheets;
    for (const Pull* pull : folder.pulls.front()) {
        if (pull->impressions.empty())
            return {};
        for (const Ref<Impression>& ref : pull->impressions)
            sheets.insert(ref.id);
    }
    return sheets;
}

// Once a later layer is printed, the state that the first one came from is cut away.
bool isReduction(const AuditContext& context, const EditionFolder& folder) {
    const Block* block = context.records().find(folder.layers.front()->block);
    const bool laterPulled =
        std::any_of(folder.pulls.begin() + 1, folder.pulls.end(),
                    [](const std::vector<const Pull*>& pulls) { return !pulls.empty(); });
    return block && block->states.size() > 1 && laterPulled;
}

}  // namespace

Findings layerOrder(const AuditContext& context) {
    PullPairs reversed;
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        noteReversed(pullsByOrdinal(context, timeline), impression.workingNumber, reversed);
    });
    FindingList found;
    for (const auto& [pulls, numbers] : reversed) {
        const auto& [later, earlier] = pulls;
        found.add(Severity::error, *later, "/start",
                  "layer " + std::to_string(ordinalOf(context, *later)) + " was pulled on " +
                      numbers.words() + " before layer " +
                      std::to_string(ordinalOf(context, *earlier)) + " was, in pull " +
                      earlier->id + " of " + earlier->start.text(),
                  later->start.text(), "Correct one of the dates, or the order of the layers.");
    }
    return found.take();
}

Findings firstLayerMissing(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        if (folder.layers.empty())
            return;
        const std::set<std::string> sheets = sheetsOfFirstLayer(folder);
        if (sheets.empty())
            return;
        Numbers without;
        eachImpression(context, folder,
                       [&](const Impression& impression, const ImpressionTimeline& timeline) {
                           if (!timeline.pulls.empty() && sheets.count(impression.id) == 0 &&
                               !mayLackLayers(impression))
                               without.add(impression.workingNumber);
                       });
        const bool reduction = isReduction(context, folder);
        const Severity severity = reduction ? Severity::error : Severity::warning;
        const std::string first = "layer " + std::to_string(folder.layers.front()->ordinal);
        if (!without.empty())
            found.add(
                severity, edition, "",
                without.words("has", "have") + " later layers, but never saw " + first, "",
                "Add what is missing to a pull of " + first + ", or correct the other pulls.");
        const auto printed = static_cast<int>(sheets.size());
        const bool final = edition.status == EditionStatus::closed || reduction;
        if (final && edition.declaredNumbered.value_or(0) > printed)
            found.add(severity, edition, "/declaredNumbered",
                      std::to_string(*edition.declaredNumbered) + " are declared, but only " +
                          std::to_string(printed) + (printed == 1 ? " sheet was" : " sheets were") +
                          " printed at " + first,
                      std::to_string(*edition.declaredNumbered),
                      "Correct the declaration, or add the sheets that are missing from the pull.");
    });
    return found.take();
}

}  // namespace rackbook::rules
