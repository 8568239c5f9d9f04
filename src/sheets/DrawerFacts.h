// Everything that the sheet of a drawer is made from.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "calc/Readiness.h"
#include "records/Book.h"
#include "records/History.h"

namespace rackbook {

struct DrawerEdition {
    std::string code;
    std::string title;
};

struct DrawerPrint {
    std::size_t edition = 0;  // position in DrawerFacts::editions
    int workingNumber = 0;
    std::string designation;         // empty where none was given yet
    std::optional<Verdict> verdict;  // nothing where it is spoiled
    bool mayNeedLight = false;
    TimeSpan since;  // in this drawer
    bool isInterleaved = false;
    bool perhapsElsewhere = false;  // dates are known too badly to tell
    TimeSpan darkSince;
    // Since 1970-01-01; nothing where it is to be brought out now, or the dark has no known
    // beginning: it is due then.
    std::optional<std::int64_t> airing_day;
    bool isAiringDue = false;
    std::optional<Touch> touchThen;      // by the last look before it was put there
    std::optional<TimeSpan> foundDryOn;  // since
};

struct DrawerName {
    std::size_t edition = 0;
    int workingNumber = 0;
    bool isInterleaved = false;
};

// Put there alike, without being known to be dry then or since.
struct DrawerSoft {
    std::vector<DrawerName> prints;
    TimeSpan putThere;
    bool isInterleaved = false;
    std::optional<Touch> touch;
    TimeSpan touchOn;  // where touch is known
    std::vector<DrawerName> besideThen;
    std::vector<DrawerName> comeSince;
};

struct DrawerFacts {
    CivilMinute asOf = 0;
    std::string studio;
    std::string name;             // of the drawer
    std::optional<int> capacity;  // impressions
    double airing_days = 0;
    Origin airingOrigin = Origin::commonPractice;
    std::string airingSource;  // empty where only its origin is known
    std::vector<DrawerEdition> editions;
    std::vector<DrawerPrint> prints;  // by edition and working number
    std::vector<DrawerSoft> soft;
};

}  // namespace rackbook
