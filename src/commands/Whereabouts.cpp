#include "commands/Whereabouts.h"

#include "calc/Stays.h"
#include "store/HistoryPart.h"
#include "store/HistoryQuery.h"

namespace rackbook {

namespace {

// One text of the place of each impression that is somewhere.
template <class Text>
std::map<std::string, std::string> placesBy(const BookFile& book, CivilMinute asOf,
                                            const std::optional<std::set<std::string>>& impressions,
                                            Text&& text) {
    const History history =
        impressions ? historyOfPrints(book, {impressions->begin(), impressions->end()}).history
                    : historyIn(book);
    const std::vector<ImpressionLabel> labels = labelsOf(book, history);
    std::map<std::string, std::string> places;
    std::vector<Stay> stays;
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        staysOf(history, i, asOf, stays);
        if (!stays.empty() && stays.back().place >= 0 && stays.back().to.latest > asOf)
            places[labels[i].id] =
                text(history.places[static_cast<std::size_t>(stays.back().place)]);
    }
    return places;
}

}  // namespace

std::map<std::string, std::string> whereabouts(
    const BookFile& book, CivilMinute asOf,
    const std::optional<std::set<std::string>>& impressions) {
    return placesBy(book, asOf, impressions, [](const HistoryPlace& place) { return place.name; });
}

std::map<std::string, std::string> whereaboutsById(
    const BookFile& book, CivilMinute asOf,
    const std::optional<std::set<std::string>>& impressions) {
    return placesBy(book, asOf, impressions, [](const HistoryPlace& place) { return place.id; });
}

}  // namespace rackbook
