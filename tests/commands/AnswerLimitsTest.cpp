// What questions refuse, held against the schema of the records.
#include "commands/AnswerLimits.h"

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "base/Edtf.h"

namespace rackbook {
namespace {

// schema/records/*.schema.json is what a record is held to in the end.
TEST(AnswerLimits, AreThoseOfTheSchema) {
    const struct {
        const char* valueName;
        const char* kind;
        const char* field;
    } rows[] = {{"DEGREES", "pull", "temperature_C"},
                {"PERCENT", "pull", "humidity_pct"},
                {"SHARE", "layer", "coverage"},
                {"LUXHOURS", "metering", "exposure_lxh"},
                {"WATTHOURS", "metering", "nearUltraviolet_Whm2"}};
    for (const auto& row : rows) {
        std::ifstream file(std::string(RACKBOOK_SOURCE) + "/schema/records/" + row.kind +
                           ".schema.json");
        const nlohmann::json field = nlohmann::json::parse(file)["properties"][row.field];
        const NumberLimits* limits = limitsOf(row.valueName);
        ASSERT_NE(limits, nullptr) << row.valueName;
        EXPECT_EQ(limits->least, field["minimum"].get<double>()) << row.field;
        EXPECT_EQ(limits->most, field["maximum"].get<double>()) << row.field;
    }
    EXPECT_EQ(limitsOf("WORDS"), nullptr);
}

TEST(AnswerLimits, SayHowFarADayLiesAhead) {
    const CivilMinute now = EdtfDate::parse("2026-03-28T19:00").earliest();
    EXPECT_EQ(aheadWords(EdtfDate::parse("2026-03-31"), now), "in 3 days");
    EXPECT_EQ(aheadWords(EdtfDate::parse("2026-03-29T08:00"), now), "tomorrow");
    EXPECT_EQ(aheadWords(EdtfDate::parse("2026-03-28T19:01"), now), "later today");
    EXPECT_EQ(aheadWords(EdtfDate::parse("2026-03-28T19:00"), now), std::nullopt);
    EXPECT_EQ(aheadWords(EdtfDate::parse("2026-03-28"), now), std::nullopt);
    EXPECT_EQ(aheadWords(EdtfDate::parse("2026"), now), std::nullopt);  // may be past
}

}  // namespace
}  // namespace rackbook
