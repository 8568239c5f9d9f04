#include <algorithm>
#include <string>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"
#include "records/RefsTo.h"

namespace rackbook::rules {

namespace {

bool saysSpoiled(const Pull& pull, const Impression& impression) {
    return isAmong(pull.spoiled, impression.id);
}

bool anySaysSpoiled(const ImpressionTimeline& timeline, const Impression& impression) {
    return std::any_of(timeline.pulls.begin(), timeline.pulls.end(),
                       [&](const Pull* pull) { return saysSpoiled(*pull, impression); });
}

}  // namespace

Findings spoiledDiffers(const AuditContext& context) {
    FindingList found;
    for (const Pull& pull : context.records().of<Pull>()) {
        Numbers kept;
        for (const Ref<Impression>& ref : pull.spoiled) {
            const Impression* impression = context.records().find(ref);
            if (impression && impression->fate == ImpressionFate::kept)
                kept.add(impression->workingNumber);
        }
        if (!kept.empty())
            found.add(Severity::error, pull, "/spoiled",
                      kept.words("is", "are") + " spoiled here, but recorded as kept", "",
                      "Record the fate spoiled, or correct the pull.");
    }
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        Numbers unsaid;
        eachImpression(context, folder,
                       [&](const Impression& impression, const ImpressionTimeline& timeline) {
                           if (impression.fate == ImpressionFate::spoiled &&
                               !timeline.pulls.empty() && !anySaysSpoiled(timeline, impression))
                               unsaid.add(impression.workingNumber);
                       });
        if (!unsaid.empty())
            found.add(Severity::note, edition, "",
                      unsaid.words("is", "are") + " recorded as spoiled, but no pull says so", "",
                      "Add it to the spoiled sheets of the pull, where it was spoiled in one.");
    });
    return found.take();
}

Findings destroyedDiffers(const AuditContext& context) {
    FindingList found;
    for (const Move& move : context.records().of<Move>()) {
        if (move.why != MoveWhy::destroy)
            continue;
        Numbers left;
        for (const Ref<Impression>& ref : move.impressions) {
            const Impression* impression = context.records().find(ref);
            if (impression && impression->fate != ImpressionFate::destroyed)
                left.add(context.records(), *impression);
        }
        if (!left.empty())
            found.add(Severity::error, move, "/why",
                      left.words("was", "were") + " moved to be destroyed, but not recorded so",
                      move.at.text(), "Record the fate destroyed, or correct the move.");
    }
    return found.take();
}

}  // namespace rackbook::rules
