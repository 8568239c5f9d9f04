#include "records/LightInvariants.h"

#include <cmath>
#include <set>
#include <string>
#include <utility>

#include "base/Numbers.h"
#include "records/HouseRules.h"

namespace rackbook {

namespace {

constexpr CivilMinute longestMetering_min = 25 * 60;
// Shares that were rounded to add up to 1, as 0.35 and 0.65 do, may miss it by a hair.
constexpr double hair = 1e-9;

std::string at(const char* list, std::size_t i) {
    return std::string(list) + "/" + std::to_string(i);
}

bool isMinute(const EdtfDate& date) {
    return date.hasTime() && !date.isInterval() && date.earliest() == date.latest();
}

bool isAmount(const std::optional<double>& value) {
    return !value || (std::isfinite(*value) && *value >= 0);
}

void checkAmounts(const Metering& r, std::vector<Complaint>& found) {
    if (!r.exposure_lxh && !r.nearUltraviolet_Whm2)
        found.push_back({"/exposure_lxh", "a metering says how much light there was",
                         "Add exposure_lxh, nearUltraviolet_Whm2 or both."});
    if (!isAmount(r.exposure_lxh))
        found.push_back(
            {"/exposure_lxh", "it is no amount of light", "Give lux hours, 0 or more."});
    if (!isAmount(r.nearUltraviolet_Whm2))
        found.push_back({"/nearUltraviolet_Whm2", "it is no amount of ultraviolet",
                         "Give watt hours per square metre, 0 or more."});
}

// A wrong unit makes more light than there is. Of days that were logged, amounts and hours are
// rounded.
void checkLevels(const Metering& r, std::vector<Complaint>& found) {
    const double most_h = seen_h(r) * (1 + hair);
    if (r.exposure_lxh && *r.exposure_lxh > highestPossible_lx * most_h)
        found.push_back({"/exposure_lxh",
                         "that is a mean of " + formatFixed(*r.exposure_lxh / seen_h(r), 0) +
                             " lx; full sun stays below " + formatFixed(highestPossible_lx, 0) +
                             " lx",
                         "Give lux hours: lux seconds are divided by 3600."});
    if (r.nearUltraviolet_Whm2 &&
        *r.nearUltraviolet_Whm2 > highestPossibleUltravioletA_Wm2 * most_h)
        found.push_back({"/nearUltraviolet_Whm2",
                         "that is a mean of " +
                             formatFixed(*r.nearUltraviolet_Whm2 / seen_h(r), 0) +
                             " W/m²; the UV-A of full sun stays below " +
                             formatFixed(highestPossibleUltravioletA_Wm2, 0) + " W/m²",
                         "Give Wh/m²: mWh/m² are divided by 1000, µWh/cm² by 100, J/m² by 3600."});
}

// Where both ends are known to the minute.
void checkLength(const Metering& r, std::vector<Complaint>& found) {
    const CivilMinute length_min = r.to.earliest() - r.from.earliest();
    if (length_min <= 0) {
        found.push_back({"/to", "it ends before it starts", "Correct one of the two."});
        return;
    }
    if (length_min > longestMetering_min)
        found.push_back({"/to", "it is longer than a day", "Make a record for each day."});
    if (r.covered_h &&
        !(*r.covered_h > 0 && *r.covered_h <= static_cast<double>(length_min) / 60 + hair))
        found.push_back({"/covered_h", "it is not a part of the time from start to end",
                         "Give hours above 0, and no more than the whole time."});
    else if (isAmount(r.exposure_lxh) && isAmount(r.nearUltraviolet_Whm2))
        checkLevels(r, found);
}

}  // namespace

std::vector<Complaint> lightRuleComplaints(const std::vector<HouseRule>& ofTheStudio) {
    const HouseRules rules(ofTheStudio);
    std::vector<Complaint> found;
    const auto add = [&](const std::string& what, const std::string& remedy) {
        found.push_back({"/houseRules", what, remedy});
    };
    const double sunny = rules.value("skySunnyShare");
    const double overcast = rules.value("skyOvercastShare");
    if (sunny + overcast > 1 + hair)
        add("skySunnyShare " + formatShortest(sunny) + " and skyOvercastShare " +
                formatShortest(overcast) + " come to more than 1",
            "Set both: what is left of 1 is broken cloud.");
    if (rules.value("lookChance") > rules.value("returnedChance"))
        add("lookChance is above returnedChance",
            "A look is worth making before the light counts as enough.");
    for (const char* name : {"colourLooks", "looksToLearn"})
        if (rules.value(name) != std::floor(rules.value(name)))
            add(std::string(name) + " is " + formatShortest(rules.value(name)),
                "Looks are counted in whole numbers.");
    return found;
}

std::vector<Complaint> monthlySkyComplaints(const std::vector<MonthlySky>& skies) {
    std::vector<Complaint> found;
    std::set<int> seen;
    for (std::size_t i = 0; i < skies.size(); ++i) {
        const MonthlySky& sky = skies[i];
        const std::string pointer = at("/monthlySkies", i);
        if (!seen.insert(sky.month).second)
            found.push_back({pointer + "/month", "the month stands twice", "Keep one of the two."});
        if (sky.sunnyShare + sky.overcastShare > 1 + hair)
            found.push_back({pointer + "/overcastShare",
                             "sunny and overcast days together are more than all days",
                             "Give each as a share of the month's days, 0 to 1."});
    }
    return found;
}

std::vector<Complaint> lightComplaints(const std::vector<Light>& light) {
    std::vector<Complaint> found;
    for (std::size_t i = 0; i < light.size(); ++i) {
        if (light[i].glass != Glass::open)
            continue;
        const auto refuse = [&](const char* field) {
            found.push_back({at("/light", i) + field,
                             "glass is open, so nothing lets light through",
                             "Leave it out, or say which glass it is."});
        };
        if (light[i].glassTransmittance)
            refuse("/glassTransmittance");
        if (light[i].glassUltravioletTransmittance)
            refuse("/glassUltravioletTransmittance");
    }
    return found;
}

std::vector<Complaint> weatherComplaints(const Weather& r) {
    std::vector<Complaint> found;
    if (r.on.isInterval() || dayOf(r.on.earliest()) != dayOf(r.on.latest()))
        found.push_back({"/on", "the sky is recorded day by day",
                         "Give a single day, as 2026-03-18, and a record for each."});
    if (r.sky.has_value() == r.oktas.has_value())
        found.push_back(
            {"/sky", "exactly one of sky and oktas is wanted", "Give one, leave out the rest."});
    if (r.oktas && !(*r.oktas >= 0 && *r.oktas <= 8))
        found.push_back({"/oktas", "cloud is counted in eighths of the sky", "Give 0 to 8."});
    return found;
}

std::vector<Complaint> meteringComplaints(const Metering& r) {
    std::vector<Complaint> found;
    for (const auto& [pointer, date] : {std::pair("/from", &r.from), std::pair("/to", &r.to)})
        if (!isMinute(*date))
            found.push_back({pointer, "what was measured has its time to the minute",
                             "Write it as 2026-03-18T09:30."});
    if (found.empty())
        checkLength(r, found);
    checkAmounts(r, found);
    return found;
}

}  // namespace rackbook
