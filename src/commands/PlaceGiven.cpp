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

bool liesWithin(const History& history, int place, int wanted) {
    // A ring in the tree ends the climb.
    for (std::size_t steps = 0; place >= 0 && steps <= history.places.size(); ++steps) {
        if (place == wanted)
            return true;
        place = history.places[static_cast<std::size_t>(place)].within;
    }
    return false;
}

std::string placeWords(const History& history, int place) {
    return place < 0 ? "not known" : history.places[static_cast<std::size_t>(place)].name;
}

void requireStudioPlace(const Book& studio) {
    if (!studio.latitude_deg || !studio.longitude_deg)
        throw UsageError("it is not recorded where the studio lies",
                         "Record it: rackbook enter book " + studio.id +
                             " latitude_deg=56 longitude_deg=10 --reason \"added\".");
}

}  // namespace rackbook
