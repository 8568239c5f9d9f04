#include <optional>
#include <string>

#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

// What a mix or lot is used in, against the dates of the mix or lot.
template <class R>
void compare(const R& user, const char* pointer, const EdtfDate& used, const std::string& name,
             const std::optional<EdtfDate>& date, bool mustComeFirst, const char* verb,
             FindingList& found) {
    if (!date)
        return;
    if (mustComeFirst && certainlyBefore(used, *date))
        found.add(Severity::error, user, pointer,
                  name + " was only " + verb + " later, on " + date->text(), used.text(),
                  "Correct one of the two dates.");
    if (!mustComeFirst && certainlyBefore(*date, used))
        found.add(Severity::error, user, pointer,
                  name + " was " + verb + " before, on " + date->text(), used.text(),
                  "Correct one of the two dates.");
}

template <class R>
void compareWithMix(const R& user, const char* pointer, const EdtfDate& used, const Mix* mix,
                    FindingList& found) {
    if (!mix)
        return;
    const std::string name = "mix " + mix->id;
    compare(user, pointer, used, name, mix->madeOn, true, "made", found);
    compare(user, pointer, used, name, mix->finishedOn, false, "finished", found);
}

}  // namespace

Findings lotDates(const AuditContext& context) {
    FindingList found;
    for (const Weighing& weighing : context.records().of<Weighing>()) {
        const Lot* lot = context.records().find(weighing.lot);
        if (!lot)
            continue;
        const std::string name = "lot " + lot->id;
        const bool opened = lot->openedOn && certainlyBefore(weighing.at, *lot->openedOn);
        if (opened)
            compare(weighing, "/at", weighing.at, name, lot->openedOn, true, "opened", found);
        else
            compare(weighing, "/at", weighing.at, name, lot->boughtOn, true, "bought", found);
        compare(weighing, "/at", weighing.at, name, lot->finishedOn, false, "finished", found);
    }
    for (const StockTake& take : context.records().of<StockTake>()) {
        const Lot* lot = context.records().find(take.lot);
        if (!lot)
            continue;
        const std::string name = "lot " + lot->id;
        compare(take, "/at", take.at, name, lot->boughtOn, true, "bought", found);
        // Of an empty container nothing need be left.
        if (take.mass_g > 0)
            compare(take, "/at", take.at, name, lot->finishedOn, false, "finished", found);
    }
    return found.take();
}

Findings mixDates(const AuditContext& context) {
    FindingList found;
    for (const Weighing& weighing : context.records().of<Weighing>()) {
        compareWithMix(weighing, "/at", weighing.at, context.records().find(weighing.mix), found);
        compareWithMix(weighing, "/at", weighing.at, context.records().find(weighing.fromMix),
                       found);
    }
    for (const Pull& pull : context.records().of<Pull>())
        compareWithMix(pull, "/start", pull.start, context.records().find(pull.portion), found);
    return found.take();
}

}  // namespace rackbook::rules
