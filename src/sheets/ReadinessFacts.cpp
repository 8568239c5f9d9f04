#include "sheets/ReadinessFacts.h"

#include <algorithm>

#include "calc/HistoryOf.h"
#include "calc/ReadingAgreement.h"
#include "sheets/HiddenHolders.h"

namespace rackbook {

namespace {

bool isWanted(const History& history, int edition, const ReadinessQuestion& question) {
    return question.edition.empty() ||
           (edition >= 0 &&
            history.editions[static_cast<std::size_t>(edition)].id == question.edition);
}

}  // namespace

ReadinessFacts readinessFactsOf(const RecordSet& records, const ReadinessQuestion& question) {
    ReadinessFacts facts;
    if (!records.of<Book>().empty()) {
        facts.studio = records.of<Book>().front().studio;
        facts.rules = HouseRules(records.of<Book>().front().houseRules);
        facts.skies = records.of<Book>().front().monthlySkies;
    }
    facts.history = historyOf(records);
    markReadingAgreement(facts.history, records.of<Look>(), records.of<Reading>(),
                         records.of<Impression>(), facts.rules);
    if (!question.namesHolders)
        hideHolders(facts.history, question.atGallery, question.atHolder);
    for (const Edition& edition : records.of<Edition>())
        facts.titles.push_back(edition.title);
    for (const HistoryImpression& impression : facts.history.impressions) {
        const Impression& record =
            records.of<Impression>()[static_cast<std::size_t>(impression.key)];
        const bool isSigned =
            record.designation && !(record.signedOn && record.signedOn->earliest() > question.asOf);
        facts.impressions.push_back({static_cast<std::size_t>(std::max(0, impression.edition)),
                                     impression.workingNumber,
                                     isSigned ? *record.designation : std::string()});
    }
    if (!records.of<Book>().empty()) {
        facts.light = std::make_shared<StudioLight>(records.of<Book>().front(), facts.rules,
                                                    records.of<Place>(), records.of<Weather>(),
                                                    records.of<Metering>(), question.asOf);
        facts.light->learnFrom(facts.history, facts.rules, question.asOf);
    }
    facts.readiness = readinessOf(facts.history, facts.rules, question.asOf,
                                  facts.light ? facts.light->model() : nullptr);
    std::vector<ReadinessRow>& rows = facts.readiness.rows;
    rows.erase(std::remove_if(rows.begin(), rows.end(),
                              [&](const ReadinessRow& row) {
                                  const auto at = static_cast<std::size_t>(row.impression);
                                  return !isWanted(facts.history,
                                                   facts.history.impressions[at].edition, question);
                              }),
               rows.end());
    facts.readiness.leftOut = static_cast<std::size_t>(
        std::count_if(facts.history.impressions.begin(), facts.history.impressions.end(),
                      [&](const HistoryImpression& impression) {
                          return impression.fate != ImpressionFate::kept &&
                                 impression.fateFrom <= question.asOf &&
                                 isWanted(facts.history, impression.edition, question);
                      }));
    return facts;
}

}  // namespace rackbook
