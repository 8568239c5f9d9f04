// Loops that many rules share.
#pragma once

#include <cstddef>

#include "checks/AuditContext.h"

namespace rackbook {

// Calls f(edition, folder) for every edition in the order of the record set.
template <class F>
void eachEdition(const AuditContext& context, F&& f) {
    const std::vector<Edition>& editions = context.records().of<Edition>();
    for (std::size_t i = 0; i < editions.size(); ++i)
        f(editions[i], context.folderOf(i));
}

// Calls f(impression, timeline) for every impression of a folder, by working number.
template <class F>
void eachImpression(const AuditContext& context, const EditionFolder& folder, F&& f) {
    for (const std::size_t i : folder.impressions)
        f(context.records().of<Impression>()[i], context.timelineOf(i));
}

// The same for all impressions, edition by edition.
template <class F>
void eachImpression(const AuditContext& context, F&& f) {
    eachEdition(context, [&](const Edition&, const EditionFolder& folder) {
        eachImpression(context, folder, f);
    });
}

}  // namespace rackbook
