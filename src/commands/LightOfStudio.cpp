#include "commands/LightOfStudio.h"

#include <algorithm>

#include "calc/ReadingAgreement.h"
#include "store/RecordReader.h"

namespace rackbook {

History judgedHistoryIn(const BookFile& book, const HistoryFilter& filter,
                        const HouseRules& rules) {
    History history = historyIn(book, filter);
    const bool anyReading = std::any_of(history.looks.begin(), history.looks.end(),
                                        [](const HistoryLook& look) { return look.hasReading; });
    if (anyReading)
        markReadingAgreement(history, allOf<Look>(book), allOf<Reading>(book),
                             allOf<Impression>(book), rules);
    return history;
}

StudioLight lightOfStudio(const BookFile& book, const Book& studio, const HouseRules& rules,
                          CivilMinute asOf) {
    return StudioLight(studio, rules, allOf<Place>(book), allOf<Weather>(book),
                       allOf<Metering>(book), asOf);
}

StudioLight learntLightOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                          const History& history, bool isWhole, CivilMinute asOf) {
    StudioLight light = lightOfStudio(book, studio, rules, asOf);
    if (light.isKnown())
        light.learnFrom(isWhole ? history : historyIn(book, {}), rules, asOf);
    return light;
}

}  // namespace rackbook
