// The book's own record: the studio, its place on the earth, its units and its house rules.
// A book holds exactly one.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/EnumText.h"
#include "records/RecordKind.h"

namespace rackbook {

enum class LengthUnit { mm, in };
template <>
struct EnumText<LengthUnit> {
    static constexpr const char* names[] = {"mm", "in"};
};

// Where a number comes from; printed beside it.
enum class Origin { studioRule, commonPractice, fitted, publishedSource };
template <>
struct EnumText<Origin> {
    static constexpr const char* names[] = {"studioRule", "commonPractice", "fitted",
                                            "publishedSource"};
};

// A number of the studio's own that replaces a default; names, units and ranges in HouseRules.h.
struct HouseRule {
    std::string rule;
    double value = 0;
    Origin origin = Origin::studioRule;
    std::optional<std::string> source;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("rule", r.rule);
        v("value", r.value);
        v("origin", r.origin);
        v("source", r.source);
    }
};

// How often the sky of a month is clear or grey, where nobody wrote down the weather of its days;
// from a station near the studio.
struct MonthlySky {
    int month = 1;             // 1 … 12
    double sunnyShare = 0;     // of its days, 0 … 1
    double overcastShare = 0;  // 0 … 1, with sunnyShare at most 1; the rest is broken cloud
    std::optional<std::string> source;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("month", r.month);
        v("sunnyShare", r.sunnyShare);
        v("overcastShare", r.overcastShare);
        v("source", r.source);
    }
};

struct Book {
    static constexpr RecordKind kind = RecordKind::book;
    std::string id;
    std::string studio;                      // the studio's name as it stands on sheets
    std::optional<double> latitude_deg;      // −90 … 90, north positive
    std::optional<double> longitude_deg;     // −180 … 180, east positive
    std::string timeZone;                    // IANA name
    LengthUnit lengthUnit = LengthUnit::mm;  // for display; records hold mm
    std::optional<std::string> currency;     // ISO 4217 code
    std::vector<HouseRule> houseRules;
    std::vector<MonthlySky> monthlySkies;  // each month at most once
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("studio", r.studio);
        v("latitude_deg", r.latitude_deg);
        v("longitude_deg", r.longitude_deg);
        v("timeZone", r.timeZone);
        v("lengthUnit", r.lengthUnit);
        v("currency", r.currency);
        v("houseRules", r.houseRules);
        v("monthlySkies", r.monthlySkies);
        v("note", r.note);
    }
};

}  // namespace rackbook
