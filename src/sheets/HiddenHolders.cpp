#include "sheets/HiddenHolders.h"

namespace rackbook {

void hideHolders(History& history, const std::string& atGallery, const std::string& atHolder) {
    for (std::size_t i = 0; i < history.places.size(); ++i) {
        int at = static_cast<int>(i);
        bool gallery = false;
        bool holder = false;
        for (std::size_t steps = 0; at >= 0 && steps <= history.places.size(); ++steps) {
            const HistoryPlace& place = history.places[static_cast<std::size_t>(at)];
            gallery = gallery || place.placeKind == PlaceKind::gallery;
            holder = holder || place.atHolder || place.placeKind == PlaceKind::holderAddress;
            at = place.within;
        }
        if (gallery || holder)
            history.places[i].name = gallery ? atGallery : atHolder;
    }
}

}  // namespace rackbook
