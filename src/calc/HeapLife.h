// Whether a heap of ink on the slab still lives.
//
// A heap lives for a number of hours from when its first drier went in, or without drier from when
// it was made: from its first addition since it was last empty. Warmth shortens the life as it does
// that of most reactions, whose speed about doubles with 10 K (the rule of van 't Hoff; that it
// holds for ink is our assumption, without a source):
//
//   life at T = life · 2^((20 °C − T) / 10 K)
//
// Drier that comes with an addition from another mix has been at work since it went in there.
#pragma once

#include <optional>
#include <vector>

#include "calc/Estimate.h"
#include "records/History.h"

namespace rackbook {

// In hours at 20 °C; both above 0.
struct HeapLives {
    double withDrier_h = 0;
    double withoutDrier_h = 0;
};

enum class HeapVerdict {
    lives,
    nearItsEnd,  // more than three quarters of its life are over
    past,
    cannotTell,  // dates are missing, or too badly known to tell
    notThere     // used up, finished, or not made yet
};

// What is recorded of a mix, by its position.
struct HeapFacts {
    std::optional<TimeSpan> made;
    std::optional<TimeSpan> finished;
};

struct HeapLife {
    HeapVerdict verdict = HeapVerdict::cannotTell;
    bool holdsDrier = false;  // drier went in since it was last empty
    std::optional<TimeSpan> since;
    Estimate age_h;            // no best value where `since` is a span
    double life_h = notKnown;  // at the temperature
    // When it is past; its verdict turns at these moments.
    std::optional<TimeSpan> ends;
    Estimate left_g;
};

struct HeapQuestion {
    const History& history;
    const std::vector<HeapFacts>& mixes;  // one for each of the history's mixes
    CivilMinute asOf = 0;                 // later events are left out
    HeapLives lives;
    double temperature_C = notKnown;  // 20 where it is not known
    double tolerance_g = 0;           // as much as this sticks to the knife: nothing
};

// By position of the mix. Throws InputError where a life is not above 0 or the temperature is
// outside −50 … 100 °C.
std::vector<HeapLife> heapLives(const HeapQuestion& question);

// life · 2^((20 − T) / 10); life where the temperature is not known.
double lifeAt(double life_h, double temperature_C);

}  // namespace rackbook
