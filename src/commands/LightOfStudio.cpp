#include "commands/LightOfStudio.h"

#include <algorithm>
#include <set>

#include "calc/PullsLearntFrom.h"
#include "calc/ReadingAgreement.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"

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

History judgedHistoryOfPrints(const BookFile& book, const std::vector<std::string>& impressions,
                              const HouseRules& rules) {
    PrintsPart part = historyOfPrints(book, impressions);
    std::vector<Look> looks;
    std::set<std::string> editions;
    for (const std::string& id : part.looks) {
        looks.push_back(*findIn<Look>(book, id));
        const auto own =
            looks.back().reading ? findIn<Reading>(book, looks.back().reading->id) : std::nullopt;
        if (own && own->impression)
            editions.insert(findIn<Impression>(book, own->impression->id)->edition.id);
    }
    if (editions.empty())
        return std::move(part.history);
    // A reading agrees with one of the same edition.
    std::vector<Impression> prints;
    for (const std::string& edition : editions)
        for (Impression& print : thoseOf<Impression>(book, "edition", edition))
            prints.push_back(std::move(print));
    markReadingAgreement(part.history, looks, allOf<Reading>(book), prints, rules);
    return std::move(part.history);
}

StudioLight lightOfStudio(const BookFile& book, const Book& studio, const HouseRules& rules,
                          CivilMinute asOf) {
    return StudioLight(studio, rules, allOf<Place>(book), allOf<Weather>(book),
                       allOf<Metering>(book), asOf);
}

StudioLight learntLightOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                          const History& whole, CivilMinute asOf) {
    StudioLight light = lightOfStudio(book, studio, rules, asOf);
    if (light.isKnown())
        light.learnFrom(whole, rules, asOf);
    return light;
}

namespace {

std::vector<std::string> joinedIds(const std::vector<std::string>& some,
                                   const std::vector<std::string>& others) {
    std::set<std::string> all(some.begin(), some.end());
    all.insert(others.begin(), others.end());
    return {all.begin(), all.end()};
}

}  // namespace

LitHistory litHistoryOf(const BookFile& book, const Book& studio, const HouseRules& rules,
                        const std::optional<HistoryFilter>& filter, CivilMinute asOf) {
    StudioLight light = lightOfStudio(book, studio, rules, asOf);
    if (filter && !light.isKnown())
        return {judgedHistoryOfPrints(book, *filter->impressions, rules), std::move(light)};
    const std::optional<std::vector<std::string>> learntFrom =
        filter ? printsOfLatestPulls(book, pullsLearntFrom, asOf) : std::nullopt;
    History history = learntFrom ? judgedHistoryOfPrints(
                                       book, joinedIds(*learntFrom, *filter->impressions), rules)
                                 : judgedHistoryIn(book, {}, rules);
    if (light.isKnown())
        light.learnFrom(history, rules, asOf);
    if (filter)
        keepPrints(book, history, *filter->impressions);
    return {std::move(history), std::move(light)};
}

}  // namespace rackbook
