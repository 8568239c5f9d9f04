#include "commands/PlaceGiven.h"

#include <optional>
#include <vector>

#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

int placePosition(const History& history, const std::string& id) {
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < history.places.size(); ++i) {
        if (history.places[i].id == id)
            return static_cast<int>(i);
        ids.push_back(history.places[i].id);
    }
    const std::optional<std::string> nearest = nearestName(id, ids);
    throw UsageError(
        "the book has no place \"" + excerpt(id) + "\"",
        nearest ? "Did you mean " + *nearest + "?" : "rackbook list place shows them.");
}

void requireStudioPlace(const Book& studio) {
    if (!studio.latitude_deg || !studio.longitude_deg)
        throw UsageError("it is not recorded where the studio lies",
                         "Record it: rackbook enter book " + studio.id +
                             " latitude_deg=56 longitude_deg=10 --reason \"added\".");
}

}  // namespace rackbook
