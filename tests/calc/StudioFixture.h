// A studio whose light can be estimated, and prints in it.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

#include "calc/HistoryOf.h"
#include "calc/Readiness.h"
#include "calc/StudioLight.h"
#include "support/Build.h"

namespace rackbook {

// At 56° N, with a yard (out of doors), a rack (2 % daylight), a cellar window (0.02 %) and a
// drawer. Layer 1 is remembered as 97 % extender, layer 2 as 20 %, layer 3 not at all.
class StudioTest : public testing::Test {
protected:
    StudioTest() {
        m_studio.latitude_deg = 56;
        m_studio.longitude_deg = 10;
        m_studio.timeZone = "Europe/Copenhagen";
        book.place("yard", PlaceKind::wall, LightKind::outdoors);
        lit("rack", 2);
        lit("cellar", 0.02);
        book.place("drawer", PlaceKind::drawer, LightKind::dark);
        book.edition("e").layer("e", 1, [](Layer& r) { r.extenderShare = 0.97; });
        book.layer("e", 2, [](Layer& r) { r.extenderShare = 0.2; });
        book.layer("e", 3);
    }

    void lit(const std::string& id, double daylightFactor_pct) {
        book.place(id, PlaceKind::rack, [&](Place& r) {
            r.light.emplace_back();
            r.light.back().lightKind = LightKind::daylight;
            r.light.back().daylightFactor_pct = daylightFactor_pct;
            r.light.back().glass = Glass::clearSingle;
            r.light.back().directSun = false;
        });
    }

    static HouseRule ruleOf(const std::string& name, double value) {
        HouseRule own;
        own.rule = name;
        own.value = value;
        return own;
    }

    // The next print of the edition, pulled and hung up at once. Its id.
    std::string print(const std::string& pulledAt, const std::string& place, int layer = 1) {
        const std::string id = nextPrint();
        book.pull("e-layer" + std::to_string(layer), pulledAt, {id});
        book.move(place, pulledAt, {id});
        return id;
    }
    std::string nextPrint() {
        ++m_prints;
        book.impressions("e", m_prints, m_prints);
        return "e-" + std::to_string(m_prints);
    }
    void lookAt(const std::string& id, const std::string& at, LookColour colour) {
        book.look(at, {id}, Touch::dry, colour);
    }

    // What the studio knows of its light on that day.
    StudioLight& lightAsOf(const std::string& asOf) {
        history = historyOf(book.records);
        m_light =
            std::make_unique<StudioLight>(m_studio, rules, book.records.of<Place>(),
                                          book.records.of<Weather>(), book.records.of<Metering>());
        m_light->learnFrom(history, rules, build::on(asOf).latest());
        return *m_light;
    }
    const LightModel& modelAsOf(const std::string& asOf) { return *lightAsOf(asOf).model(); }

    // Sunny days at a place, by best value.
    double dose_sunnyDays(const std::string& place, const std::string& from,
                          const std::string& to) {
        const int position = book.records.indexOf<Place>(place);
        return modelAsOf(to)
            .ledger.at(position, build::on(from).earliest(), build::on(to).latest())
            .sunnyDays.best;
    }

    // Of the print that was made last.
    ReadinessRow rowAsOf(const std::string& asOf) {
        const LightModel& model = modelAsOf(asOf);
        return readinessOf(history, rules, build::on(asOf).latest(), &model).rows.back();
    }
    Verdict verdictAsOf(const std::string& asOf) { return rowAsOf(asOf).verdict; }

    build::Book book;
    HouseRules rules;
    History history;
    Book m_studio;

private:
    int m_prints = 0;
    std::unique_ptr<StudioLight> m_light;
};

}  // namespace rackbook
