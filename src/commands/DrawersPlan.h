// What lies in the drawers, boxes and other dark places of the studio, and what of it may still
// turn in the dark, or stick to its neighbours.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "calc/Readiness.h"
#include "calc/Stays.h"
#include "store/HistoryQuery.h"

namespace rackbook {

// Positions of impressions are those of the history.
struct LyingPrint {
    int impression = -1;
    Stay stay;                 // its last
    bool isSpoiled = false;    // then it is not judged
    std::size_t row = 0;       // of the readiness, where it is judged
    bool isAtRisk = false;     // it may still need light
    bool isToComeOut = false;  // by its verdict; it waits for no airing
    TimeSpan darkSince;  // of this stretch of dark; since it lies here where nothing is judged
    bool wasFoundDry = false;  // by the last look at touch before it was put here
    int touchLook = -1;        // that look, made after the last pull before; -1: none
    int drySince = -1;  // the first look after it was put here that found it dry, where it was not
};

struct DrawerNeighbour {
    int impression = -1;
    bool isInterleaved = false;
};

// Prints that came into a drawer by the same day and look without being known to be dry, and have
// not been found dry since.
struct PutAwaySoft {
    std::vector<int> impressions;
    TimeSpan putAway;
    bool isInterleaved = false;
    int touchLook = -1;                       // as in LyingPrint
    std::vector<DrawerNeighbour> besideThen;  // others that lay there then, or came with them
    std::vector<DrawerNeighbour> besideNow;   // others that lie there now
};

struct DrawerContents {
    int place = -1;
    std::optional<int> capacity;     // impressions
    std::vector<LyingPrint> prints;  // by edition and working number
    std::vector<PutAwaySoft> soft;

    std::size_t atRisk() const;
    bool isOverCapacity() const {
        return capacity && prints.size() > static_cast<std::size_t>(*capacity);
    }
};

struct DrawersPlan {
    double airing_days = 0;
    std::vector<DrawerContents> drawers;  // what is to be aired first comes first, then by name
};

// Drawers and boxes, and whatever other place is dark and holds prints, unless out of the studio's
// hands. `within`: -1 for all, else only that place and places within it. `capacities` stand beside
// the history's places. Pre: history and readiness are of the whole book.
DrawersPlan drawersPlanOf(const History& history, const Readiness& readiness,
                          const HouseRules& rules,
                          const std::vector<std::optional<int>>& capacities, int within);

// The day, in days since 1970-01-01, from which on it is to be aired; nothing where it is to be
// brought out anyway, or the beginning of the dark is open.
std::optional<std::int64_t> airingDay(const LyingPrint& print, double airing_days);

// Orders what is to be aired: first what is to be brought out, then by the beginning of the dark.
std::pair<bool, CivilMinute> airingOrder(const LyingPrint& print);

// True from that day on, and where there is none.
bool isAiringDue(const LyingPrint& print, double airing_days, CivilMinute asOf);

}  // namespace rackbook
