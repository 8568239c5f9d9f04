#include <map>
#include <string>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

Findings layerTwice(const AuditContext& context) {
    // By the later pull and the one before it.
    std::map<std::pair<const Pull*, const Pull*>, Numbers> again;
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        std::map<std::string, const Pull*> ofLayer;
        for (const Pull* pull : timeline.pulls) {
            const auto [before, isFirst] = ofLayer.emplace(pull->layer.id, pull);
            if (!isFirst)
                again[{pull, before->second}].add(impression.workingNumber);
        }
    });
    FindingList found;
    for (const auto& [pulls, numbers] : again)
        found.add(
            Severity::warning, *pulls.first, "/impressions",
            numbers.words("has", "have") + " this layer already, from pull " + pulls.second->id,
            pulls.first->start.text(),
            "Leave it if the layer was printed twice; else take one pull's out.");
    return found.take();
}

}  // namespace rackbook::rules
