#include "calc/Readiness.h"

#include <cmath>

#include "calc/Assessment.h"

namespace rackbook {

Readiness readinessOf(const History& history, const HouseRules& rules, CivilMinute asOf,
                      const LightModel* light) {
    Readiness readiness;
    readiness.asOf = asOf;
    readiness.rows.reserve(history.impressions.size());
    Assessment assessment(history, rules, asOf, light);
    for (std::size_t i = 0; i < history.impressions.size(); ++i) {
        const HistoryImpression& impression = history.impressions[i];
        if (impression.fate != ImpressionFate::kept && impression.fateFrom <= asOf)
            ++readiness.leftOut;
        else
            readiness.rows.push_back(assessment.assess(i));
    }
    return readiness;
}

std::vector<ReadinessRow> readinessAt(const History& history, const HouseRules& rules,
                                      const std::vector<JudgedMoment>& moments) {
    std::vector<ReadinessRow> rows;
    rows.reserve(moments.size());
    Assessment assessment(history, rules, 0, nullptr);
    for (const JudgedMoment& moment : moments)
        rows.push_back(assessment.assessAt(moment.impression, moment.asOf));
    return rows;
}

bool cameBackInTheDark(const ReadinessRow& row) {
    return row.looks.any && row.looks.last == LookColour::trueColour && row.looks.sawTurned &&
           row.lightSinceTurned_sunnyDays < nextToNoLight_sunnyDays;
}

CivilMinute nextLookFrom(const ReadinessRow& row, const HouseRules& rules) {
    if (row.looks.foundTrue == 0)
        return beginningOfTime;
    // Looks are held against each other by days.
    const auto apart_days =
        static_cast<CivilMinute>(std::ceil(rules.value("colourLooksApart_days")));
    return (dayOf(row.lastTrueLook) + apart_days) * minutesPerDay;
}

const std::vector<std::string>& rulesOfReadiness() {
    static const std::vector<std::string> names = {"extenderRichShare",
                                                   "lightDays",
                                                   "lightDaysCareful",
                                                   "drierLeastShare",
                                                   "lightDose_sunnyDays",
                                                   "lightDoseFactor",
                                                   "lookChance",
                                                   "returnedChance",
                                                   "looksToLearn",
                                                   "colourLooks",
                                                   "colourLooksApart_days",
                                                   "skySunnyShare",
                                                   "skyOvercastShare"};
    return names;
}

}  // namespace rackbook
