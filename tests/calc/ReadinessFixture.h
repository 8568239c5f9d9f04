// A studio with light and dark places, and one impression in it.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "calc/HistoryOf.h"
#include "calc/Readiness.h"
#include "support/Build.h"

namespace rackbook {

// An impression e-1 of one layer, remembered as 97 % extender, pulled at nine on 4 March and hung
// in daylight an hour later. The studio wants 21 days where drier is not known, and one look; no
// light is estimated.
class ReadinessTest : public testing::Test {
protected:
    ReadinessTest() : rules({ruleOf("colourLooks", 1)}) {
        book.place("rack", PlaceKind::rack, LightKind::daylight);
        book.place("drawer", PlaceKind::drawer, LightKind::dark);
        book.place("lamp wall", PlaceKind::wall, LightKind::artificial);
        book.place("corridor", PlaceKind::wall);
        book.place("gallery", PlaceKind::gallery);
        book.edition("e").layer("e", 1, [](Layer& r) { r.extenderShare = 0.97; });
        book.layer("e", 2, [](Layer& r) { r.extenderShare = 0.2; });
        book.layer("e", 3);
        book.impressions("e", 1, 1);
    }

    static HouseRule ruleOf(const std::string& name, double value) {
        HouseRule own;
        own.rule = name;
        own.value = value;
        return own;
    }

    void pull(int layer, const std::string& at) {
        book.pull("e-layer" + std::to_string(layer), at, {"e-1"});
    }
    void move(const std::string& place, const std::string& at) { book.move(place, at, {"e-1"}); }
    void lookAt(const std::string& at, Touch touch, LookColour colour) {
        book.look(at, {"e-1"}, touch, colour);
    }
    void pulledAndHung() {
        pull(1, "2026-03-04T09:00");
        move("rack", "2026-03-04T10:00");
    }

    ReadinessRow rowAsOf(const std::string& asOf) {
        history = historyOf(book.records);
        const Readiness readiness = readinessOf(history, rules, build::on(asOf).latest());
        EXPECT_EQ(readiness.rows.size(), 1U);
        return readiness.rows.at(0);
    }
    Verdict verdictAsOf(const std::string& asOf) { return rowAsOf(asOf).verdict; }
    std::string reasonsAsOf(const std::string& asOf) {
        const ReadinessRow row = rowAsOf(asOf);
        std::string all;
        for (const std::string& sentence : reasonsFor(row, history, rules))
            all += (all.empty() ? "" : " ") + sentence;
        return all;
    }

    build::Book book;
    HouseRules rules;
    History history;
};

}  // namespace rackbook
