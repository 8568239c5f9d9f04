#include <functional>
#include <map>
#include <string>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

using ByPull = std::map<const Pull*, Numbers>;

ByPull collect(const AuditContext& context,
               const std::function<bool(const Impression&, const ImpressionTimeline&, const Pull&)>&
                   isTooLate) {
    ByPull tooLate;
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        for (const Pull* pull : timeline.pulls)
            if (isTooLate(impression, timeline, *pull))
                tooLate[pull].add(impression.workingNumber);
    });
    return tooLate;
}

bool isSpoiledIn(const Pull& pull, const Impression& impression) {
    for (const Ref<Impression>& ref : pull.spoiled)
        if (ref.id == impression.id)
            return true;
    return false;
}

bool isOut(const AuditContext& context, const Move& move) {
    const int place = context.records().indexOf<Place>(move.to.id);
    return place >= 0 && context.isOutOfHands(static_cast<std::size_t>(place));
}

bool mayComeBetween(const Move& move, const Move& before, const Pull& pull) {
    return !certainlyBefore(pull.start, move.at) && !certainlyBefore(move.at, before.at);
}

// True where the last move before the pull took it out of the studio's hands and nothing recorded
// can have brought it back.
bool hasLeftBefore(const AuditContext& context, const ImpressionTimeline& timeline,
                   const Pull& pull) {
    const Move* last = nullptr;
    for (const Move* move : timeline.moves)
        if (certainlyBefore(move->at, pull.start))
            last = move;
    if (!last || !isOut(context, *last))
        return false;
    if (last->until && !certainlyBefore(pull.start, *last->until))
        return false;
    for (const Move* move : timeline.moves)
        if (move != last && mayComeBetween(*move, *last, pull) && !isOut(context, *move))
            return false;
    return true;
}

const Transfer* soldBefore(const ImpressionTimeline& timeline, const Pull& pull) {
    const Transfer* last = nullptr;
    for (const Transfer* transfer : timeline.transfers)
        if (!certainlyBefore(pull.start, transfer->agreedOn))
            last = transfer;
    const bool forGood = last && (last->transferKind == TransferKind::sale ||
                                  last->transferKind == TransferKind::gift);
    return forGood && certainlyBefore(last->agreedOn, pull.start) ? last : nullptr;
}

}  // namespace

Findings pulledAfterSigning(const AuditContext& context) {
    const ByPull tooLate = collect(
        context, [](const Impression& impression, const ImpressionTimeline&, const Pull& pull) {
            return impression.signedOn && certainlyBefore(*impression.signedOn, pull.start);
        });
    FindingList found;
    for (const auto& [pull, numbers] : tooLate)
        found.add(Severity::error, *pull, "/start",
                  numbers.words("was", "were") + " signed before this pull", pull->start.text(),
                  "Correct the date of the pull or of the signing.");
    return found.take();
}

Findings pulledAfterFate(const AuditContext& context) {
    const ByPull tooLate = collect(context, [](const Impression& impression,
                                               const ImpressionTimeline& timeline,
                                               const Pull& pull) {
        if (impression.fate != ImpressionFate::kept && impression.fateOn &&
            certainlyBefore(*impression.fateOn, pull.start))
            return true;
        for (const Pull* earlier : timeline.pulls)
            if (certainlyBefore(earlier->start, pull.start) && isSpoiledIn(*earlier, impression))
                return true;
        return false;
    });
    FindingList found;
    for (const auto& [pull, numbers] : tooLate)
        found.add(Severity::error, *pull, "/impressions",
                  numbers.words("was", "were") + " spoiled or destroyed before this pull",
                  pull->start.text(), "Correct the date, or take it out of the later pull.");
    return found.take();
}

Findings pulledAfterLeaving(const AuditContext& context) {
    FindingList found;
    const ByPull left =
        collect(context, [&](const Impression&, const ImpressionTimeline& timeline,
                             const Pull& pull) { return hasLeftBefore(context, timeline, pull); });
    for (const auto& [pull, numbers] : left)
        found.add(Severity::error, *pull, "/impressions",
                  numbers.words("had", "had") + " left the studio before this pull",
                  pull->start.text(),
                  "Correct one of the dates, or record the move that brought it back.");
    const ByPull sold = collect(
        context, [&](const Impression&, const ImpressionTimeline& timeline, const Pull& pull) {
            return soldBefore(timeline, pull) && !hasLeftBefore(context, timeline, pull);
        });
    for (const auto& [pull, numbers] : sold)
        found.add(Severity::warning, *pull, "/impressions",
                  numbers.words("was", "were") + " sold or given away before this pull",
                  pull->start.text(), "Leave it if it was sold ahead; else correct one date.");
    return found.take();
}

}  // namespace rackbook::rules
