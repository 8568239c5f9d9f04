#include "sheets/DesignationNotes.h"

#include <map>
#include <utility>

#include "records/DesignationFit.h"

namespace rackbook {

namespace {

const char* labelOf(DesignationFault fault, bool isDeclared) {
    if (fault == DesignationFault::countedOutOfAnother)
        return "designationFit.otherCount";
    return fault == DesignationFault::belowOne || !isDeclared ? "designationFit.cannotBe"
                                                              : "designationFit.beyond";
}

}  // namespace

void addDesignationNotes(Flow& flow, const Edition& edition,
                         const std::vector<const Impression*>& impressions,
                         const SheetWords& words) {
    std::map<std::pair<DesignationKind, std::string>, std::vector<std::string>> faults;
    for (const Impression* impression : impressions)
        if (const std::optional<DesignationFault> fault = designationFault(edition, *impression)) {
            const DesignationKind kind = *impression->designationKind;
            faults[{kind, labelOf(*fault, declaredCount(edition, kind).has_value())}].push_back(
                *impression->designation);
        }
    for (const auto& [key, designations] : faults) {
        const std::optional<int> declared = declaredCount(edition, key.first);
        flow.note(NoteKind::caution, "",
                  words.filled(key.second, {{"kind", words.of("designation", key.first)},
                                            {"declared", declared ? words.count(*declared) : ""},
                                            {"designations", words.listed(designations)}}));
    }
}

}  // namespace rackbook
