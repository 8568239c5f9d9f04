#include "commands/LightOfStudio.h"

#include "store/HistoryQuery.h"
#include "store/RecordReader.h"

namespace rackbook {

StudioLight lightOfStudio(const BookFile& book, const Book& studio, const HouseRules& rules) {
    return StudioLight(studio, rules, allOf<Place>(book), allOf<Weather>(book),
                       allOf<Metering>(book));
}

StudioLight learntLightOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                          const History& history, bool isWhole, CivilMinute asOf) {
    StudioLight light = lightOfStudio(book, studio, rules);
    if (light.isKnown())
        light.learnFrom(isWhole ? history : historyIn(book, {}), rules, asOf);
    return light;
}

}  // namespace rackbook
