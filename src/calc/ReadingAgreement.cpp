#include "calc/ReadingAgreement.h"

#include <unordered_map>

#include "calc/ColourDifference.h"
#include "calc/ReadingColour.h"

namespace rackbook {

namespace {

CivilMinute takenAt(const Reading& reading) {
    return reading.takenOn ? reading.takenOn->earliest() : beginningOfTime;
}

class Marking {
public:
    Marking(const std::vector<Reading>& readings, const std::vector<Impression>& impressions) {
        for (const Impression& impression : impressions) {
            m_editions.emplace(impression.id, impression.edition.id);
            if (impression.designationKind == DesignationKind::bonATirer)
                m_isRecord.emplace(impression.id, true);
        }
        for (const Reading& reading : readings)
            m_readings.emplace(reading.id, &reading);
        for (const Reading& reading : readings)
            if (reading.impression && m_isRecord.count(reading.impression->id))
                m_ofRecord[m_editions[reading.impression->id]].push_back(&reading);
    }

    bool agrees(const Look& look, double tolerance_dE00) const {
        const auto own = look.reading ? m_readings.find(look.reading->id) : m_readings.end();
        if (own == m_readings.end() || !own->second->impression)
            return false;
        const Reading& reading = *own->second;
        const Reading* record = recordFor(reading);
        if (!record || !unlikeConditions(reading, *record).empty())
            return false;
        const auto seen = colourOf(reading, ViewingLight::D50, Observer::deg2);
        const auto wanted = colourOf(*record, ViewingLight::D50, Observer::deg2);
        return seen && wanted && deltaE00(seen->lab, wanted->lab) <= tolerance_dE00;
    }

private:
    const Reading* recordFor(const Reading& reading) const {
        const auto edition = m_editions.find(reading.impression->id);
        if (edition == m_editions.end())
            return nullptr;
        const auto candidates = m_ofRecord.find(edition->second);
        if (candidates == m_ofRecord.end())
            return nullptr;
        const Reading* latest = nullptr;
        for (const Reading* candidate : candidates->second)
            if (candidate->id != reading.id && (!latest || takenAt(*candidate) > takenAt(*latest)))
                latest = candidate;
        return latest;
    }

    std::unordered_map<std::string, std::string> m_editions;  // by impression
    std::unordered_map<std::string, bool> m_isRecord;
    std::unordered_map<std::string, const Reading*> m_readings;
    std::unordered_map<std::string, std::vector<const Reading*>> m_ofRecord;  // by edition
};

}  // namespace

void markReadingAgreement(History& history, const std::vector<Look>& looks,
                          const std::vector<Reading>& readings,
                          const std::vector<Impression>& impressions, const HouseRules& rules) {
    const Marking marking(readings, impressions);
    const double tolerance_dE00 = rules.value("colourTolerance_dE00");
    for (std::size_t i = 0; i < looks.size() && i < history.looks.size(); ++i)
        history.looks[i].readingAgrees = marking.agrees(looks[i], tolerance_dE00);
}

}  // namespace rackbook
