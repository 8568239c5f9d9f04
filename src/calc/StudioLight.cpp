#include "calc/StudioLight.h"

#include <algorithm>

#include "base/Clock.h"

namespace rackbook {

namespace {

Oktas coverOf(const Weather& weather) {
    if (weather.sky)
        return oktasOf(*weather.sky);
    // Observers are an okta off now and then.
    const double oktas = *weather.oktas;
    return {std::max(0.0, oktas - 1), oktas, std::min(8.0, oktas + 1)};
}

CivilMinute momentOf(const Weather& weather) {
    return weather.on.earliest();
}

CivilMinute momentOf(const Metering& metering) {
    return metering.from.earliest();
}

template <class R>
std::vector<R> upTo(std::vector<R> records, CivilMinute asOf) {
    records.erase(std::remove_if(records.begin(), records.end(),
                                 [&](const R& record) { return momentOf(record) > asOf; }),
                  records.end());
    return records;
}

}  // namespace

Skies skiesOf(const Book& studio, const HouseRules& rules, const std::vector<Weather>& weather) {
    Skies skies;
    skies.usual = {rules.value("skySunnyShare"), rules.value("skyOvercastShare")};
    for (const MonthlySky& month : studio.monthlySkies)
        skies.ofMonth[static_cast<std::size_t>(month.month - 1)] =
            SkyShares{month.sunnyShare, month.overcastShare};
    for (const Weather& day : weather)
        skies.ofDay[dayOf(day.on.earliest())] = coverOf(day);
    return skies;
}

StudioLight::StudioLight(const Book& studio, const HouseRules& rules,
                         const std::vector<Place>& places, const std::vector<Weather>& weather,
                         const std::vector<Metering>& meterings, CivilMinute asOf) {
    if (!studio.latitude_deg || !studio.longitude_deg)
        return;
    m_ultraviolet =
        std::make_unique<PlaceUltraviolet>(GeoPoint{*studio.latitude_deg, *studio.longitude_deg},
                                           skiesOf(studio, rules, upTo(weather, asOf)));
    m_ledger = std::make_unique<DoseLedger>(
        *m_ultraviolet,
        PlaceRecords{lightPeriodsOf(places), meteredSpansOf(places, upTo(meterings, asOf)),
                     zoneShiftsOf(studio.timeZone)});
}

void StudioLight::learnFrom(const History& whole, const HouseRules& rules, CivilMinute asOf) {
    if (!m_ledger)
        return;
    m_inks = std::make_unique<std::vector<PullInk>>(inkOfPulls(whole, rules));
    m_wanted = std::make_unique<LightWanted>(whole, *m_inks, rules,
                                             returnLooksOf(whole, *m_inks, rules, *m_ledger, asOf));
    m_model = std::make_unique<LightModel>(LightModel{*m_ledger, *m_wanted, *m_inks});
}

}  // namespace rackbook
