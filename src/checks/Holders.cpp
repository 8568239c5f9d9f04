#include <map>
#include <string>

#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

bool madeIt(const Edition& edition, const Ref<Party>& party) {
    return edition.maker == party || edition.printer == party || edition.publisher == party;
}

bool cameBy(const ImpressionTimeline& timeline, const Ref<Party>& holder) {
    for (const Transfer* transfer : timeline.transfers)
        if (transfer->receiver == holder)
            return true;
    return false;
}

// The last transfer, or nothing where the dates leave open which it was.
const Transfer* lastTransfer(const ImpressionTimeline& timeline) {
    if (timeline.transfers.empty())
        return nullptr;
    const Transfer* last = timeline.transfers.back();
    for (const Transfer* other : timeline.transfers)
        if (other != last && !certainlyBefore(other->agreedOn, last->agreedOn))
            return nullptr;
    return last;
}

struct Mismatches {
    std::map<const Transfer*, Numbers> none;
    std::map<const Transfer*, Numbers> another;
    std::map<const Transfer*, Numbers> back;
};

void note(const AuditContext& context, const Impression& impression,
          const ImpressionTimeline& timeline, Mismatches& mismatches) {
    const Transfer* last = lastTransfer(timeline);
    if (!last || impression.fate != ImpressionFate::kept)
        return;
    if (last->transferKind == TransferKind::giveBack) {
        if (impression.holder == last->giver)
            mismatches.back[last].add(context.records(), impression);
    } else if (!impression.holder) {
        mismatches.none[last].add(context.records(), impression);
    } else if (*impression.holder != last->receiver) {
        mismatches.another[last].add(context.records(), impression);
    }
}

}  // namespace

Findings holderWithoutTransfer(const AuditContext& context) {
    FindingList found;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        std::map<Ref<Party>, Numbers> without;
        eachImpression(context, folder,
                       [&](const Impression& impression, const ImpressionTimeline& timeline) {
                           if (impression.holder && !madeIt(edition, *impression.holder) &&
                               !cameBy(timeline, *impression.holder))
                               without[*impression.holder].add(impression.workingNumber);
                       });
        for (const auto& [holder, numbers] : without)
            found.add(Severity::warning, edition, "",
                      numbers.words("has", "have") + " the holder " + holder.id +
                          ", but no transfer to that holder is recorded",
                      "", "Record the transfer, as well as its date is known.");
    });
    return found.take();
}

Findings transferWithoutHolder(const AuditContext& context) {
    Mismatches mismatches;
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        note(context, impression, timeline, mismatches);
    });
    FindingList found;
    const char* remedy = "Record the holder, or the transfer that followed.";
    for (const auto& [transfer, numbers] : mismatches.none)
        found.add(Severity::warning, *transfer, "/receiver",
                  numbers.words("names", "name") + " no holder, though transferred here",
                  transfer->receiver.id, remedy);
    for (const auto& [transfer, numbers] : mismatches.another)
        found.add(Severity::warning, *transfer, "/receiver",
                  numbers.words("names", "name") + " another holder than this transfer",
                  transfer->receiver.id, remedy);
    for (const auto& [transfer, numbers] : mismatches.back)
        found.add(Severity::warning, *transfer, "/giver",
                  numbers.words("was", "were") + " given back here, but still " +
                      "with the giver as holder",
                  transfer->giver.id, "Take the holder off, or record the transfer that followed.");
    return found.take();
}

}  // namespace rackbook::rules
