#include "checks/MeteringDoubts.h"

#include "base/Clock.h"
#include "base/Numbers.h"
#include "calc/MostDaylight.h"

namespace rackbook {

namespace {

// The last digit of instruments for ultraviolet, 1 µW/cm² (from memory): below, it says nothing.
constexpr double noise_Wm2 = 0.01;

bool isInYearsOfTheSun(CivilMinute minute) {
    constexpr std::int64_t first = 1900;
    constexpr std::int64_t last = 2198;  // a day that begins in it ends before 2200
    const std::int64_t year = civilFromDays(dayOf(minute)).year;
    return year >= first && year <= last;
}

// Enough digits to tell a unit that is wrong from one that is right.
std::string figure(double value) {
    return formatFixed(value, value < 10 ? 1 : 0);
}

std::string spanWords(const Metering& metering) {
    return "place " + metering.place.id + " from " + metering.from.text() + " to " +
           metering.to.text();
}

MeteringDoubt tooMuch(const Metering& metering, const char* field, const std::string& unit,
                      double measured, double most, const std::string& hint) {
    return {std::string("/") + field,
            "a mean of " + figure(measured) + " " + unit + " at " + spanWords(metering) + " is " +
                figure(measured / most) +
                " times the most that the sun over the studio and lamps beside it give in that "
                "time, " +
                figure(most) + " " + unit,
            metering.from.text(),
            "Check the unit, the times and the place" + hint +
                ". Correct what is wrong, or strike the metering out."};
}

}  // namespace

MeteringDoubts::MeteringDoubts(const std::vector<Place>& places,
                               const std::vector<Metering>& meterings, const Book* studio)
    : m_places(places), m_periods(lightPeriodsOf(places)) {
    for (std::size_t i = 0; i < places.size(); ++i)
        m_positions.emplace(places[i].id, static_cast<int>(i));
    for (const Metering& metering : meterings)
        if (metering.exposure_lxh && !metering.nearUltraviolet_Whm2)
            m_exposures_lxh.emplace(spanOf(metering), *metering.exposure_lxh);
    if (studio && studio->latitude_deg && studio->longitude_deg &&
        isKnownTimeZone(studio->timeZone)) {
        m_studio = GeoPoint{*studio->latitude_deg, *studio->longitude_deg};
        m_clocks = zoneShiftsOf(studio->timeZone);
    }
}

MeteringDoubts::Span MeteringDoubts::spanOf(const Metering& metering) {
    return {metering.place.id, metering.from.earliest(), metering.to.latest()};
}

int MeteringDoubts::positionOf(const Ref<Place>& place) const {
    const auto found = m_positions.find(place.id);
    return found == m_positions.end() ? -1 : found->second;
}

// A ring of places within one another ends the climb.
bool MeteringDoubts::isOutOfHands(int place) const {
    for (std::size_t steps = 0; place >= 0 && steps <= m_places.size(); ++steps) {
        const Place& around = m_places[static_cast<std::size_t>(place)];
        if (around.holder || around.placeKind == PlaceKind::gallery ||
            around.placeKind == PlaceKind::holderAddress)
            return true;
        place = around.within ? positionOf(*around.within) : -1;
    }
    return false;
}

bool MeteringDoubts::isUnderStudioSun(const Ref<Place>& place, CivilMinute from,
                                      CivilMinute to) const {
    const int position = positionOf(place);
    return m_studio && position >= 0 && isInYearsOfTheSun(from) &&
           isDaylitThroughout(m_periods[static_cast<std::size_t>(position)], from, to) &&
           !isOutOfHands(position);
}

std::optional<MeteringDoubt> MeteringDoubts::darkPlace(const Metering& metering) const {
    const int position = positionOf(metering.place);
    if (position < 0 || !sawLight(metering) ||
        !isDarkThroughout(m_periods[static_cast<std::size_t>(position)], metering.from.earliest(),
                          metering.to.latest()))
        return std::nullopt;
    return MeteringDoubt{"/place",
                         "place " + metering.place.id +
                             " is declared dark: what was measured counts to the dose, but the "
                             "time counts as no days in light",
                         metering.place.id,
                         "Correct the light of the place, or the place of the metering."};
}

std::optional<MeteringDoubt> MeteringDoubts::beyondSun(const Metering& metering) const {
    const CivilMinute from = metering.from.earliest();
    const CivilMinute to = metering.to.latest();
    const double light_lxh = metering.exposure_lxh.value_or(0);
    const double ultraviolet_Whm2 = metering.nearUltraviolet_Whm2.value_or(0);
    const double written_h = seen_h(metering);
    const bool isOfLamps = light_lxh <= mostLamps.illuminance_lx * written_h &&
                           ultraviolet_Whm2 <= mostLamps.ultravioletA_Wm2 * written_h;
    if (isOfLamps || to <= from || !isUnderStudioSun(metering.place, from, to))
        return std::nullopt;
    // Where a shift stands behind a time, it says which of two the clocks showed twice.
    const auto utcOf = [this](const EdtfDate& date) {
        const std::optional<int> east_min = date.utcOffset_min();
        const CivilMinute minute = date.earliest();
        return east_min ? minute - *east_min : m_clocks.utcOf(minute);
    };
    const CivilMinute begins = utcOf(metering.from);
    const CivilMinute ends = std::max(begins + 1, utcOf(metering.to));
    const double passed_h = static_cast<double>(ends - begins) / 60;
    const double covered_h = metering.covered_h.value_or(passed_h);
    const LightSum most = mostLightBetween(*m_studio, {static_cast<double>(begins)},
                                           {static_cast<double>(ends)}, covered_h);
    if (light_lxh > most.exposure_lxh)
        return tooMuch(metering, "exposure_lxh", "lx", light_lxh / covered_h,
                       most.exposure_lxh / covered_h, "");
    if (ultraviolet_Whm2 > most.nearUltraviolet_Whm2)
        return tooMuch(metering, "nearUltraviolet_Whm2", "W/m²", ultraviolet_Whm2 / covered_h,
                       most.nearUltraviolet_Whm2 / covered_h,
                       "; near ultraviolet is UV-A alone, not all of sunlight");
    return std::nullopt;
}

std::optional<MeteringDoubt> MeteringDoubts::beyondItsLight(const Metering& metering) const {
    if (!metering.nearUltraviolet_Whm2)
        return std::nullopt;
    std::optional<double> light_lxh = metering.exposure_lxh;
    if (!light_lxh)
        if (const auto found = m_exposures_lxh.find(spanOf(metering));
            found != m_exposures_lxh.end())
            light_lxh = found->second;
    const double ultraviolet_mWhm2 = *metering.nearUltraviolet_Whm2 * 1000;
    if (!light_lxh || ultraviolet_mWhm2 <=
                          mostUltraviolet_mWlm * *light_lxh + noise_Wm2 * 1000 * seen_h(metering))
        return std::nullopt;
    const std::string ratio =
        *light_lxh > 0 ? figure(ultraviolet_mWhm2 / *light_lxh) + " mW of UV-A to a lumen of light"
                       : std::string("UV-A and no light");
    return MeteringDoubt{"/nearUltraviolet_Whm2",
                         ratio + " at " + spanWords(metering) +
                             " is more than any; a blue sky has "
                             "about 1 mW/lm, window glass and lamps less, all of sunlight together "
                             "about 9",
                         metering.from.text(),
                         "Check both units; near ultraviolet is UV-A alone, in Wh/m². Correct "
                         "what is wrong, or strike it out."};
}

}  // namespace rackbook
