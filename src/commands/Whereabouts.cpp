#include "commands/Whereabouts.h"

#include "calc/Stays.h"
#include "store/HistoryQuery.h"

namespace rackbook {

std::map<std::string, std::string> whereabouts(const BookFile& book, CivilMinute asOf) {
    const History history = historyIn(book);
    const std::vector<ImpressionLabel> labels = labelsOf(book, history);
    std::map<std::string, std::string> places;
    std::vector<Stay> stays;
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        staysOf(history, i, asOf, stays);
        if (!stays.empty() && stays.back().place >= 0 && stays.back().to.latest > asOf)
            places[labels[i].id] =
                history.places[static_cast<std::size_t>(stays.back().place)].name;
    }
    return places;
}

}  // namespace rackbook
