#include "commands/SlabPlan.h"

#include <algorithm>

#include "commands/HeapOnSlab.h"
#include "commands/InkWords.h"

namespace rackbook {

namespace {

// The room as it was when the last run of the day before that moment began.
const Pull* lastMeasured(const InkBook& ink, CivilMinute asOf) {
    const Pull* last = nullptr;
    for (const Pull& pull : ink.records.of<Pull>()) {
        const bool isRecent = pull.start.earliest() <= asOf && !pull.start.isBadlyKnown() &&
                              pull.start.latest() >= asOf - minutesPerDay;
        if (isRecent && pull.temperature_C && isRoomTemperature(*pull.temperature_C) &&
            (last == nullptr || pull.start.earliest() >= last->start.earliest()))
            last = &pull;
    }
    return last;
}

Warmth warmthOf(const InkBook& ink, CivilMinute asOf, const std::optional<double>& given_C) {
    if (given_C)
        return {*given_C, "as given"};
    if (const Pull* pull = lastMeasured(ink, asOf))
        return {*pull->temperature_C,
                "as recorded with the run of " +
                    momentWords({pull->start.earliest(), pull->start.latest()})};
    return {20, "assumed, because no run of the last day recorded it"};
}

}  // namespace

Slab slabOf(const InkBook& ink, CivilMinute asOf, const std::optional<double>& temperature_C) {
    Slab slab{ink, asOf, warmthOf(ink, asOf, temperature_C), {}, {}, {}};
    const std::vector<HeapFacts> facts = heapFactsOf(ink);
    slab.lives = heapLives({ink.history, facts, slab.asOf, heapLivesBy(ink.rules),
                            slab.warmth.temperature_C, ink.rules.value("overdrawTolerance_g")});
    for (std::size_t mix = 0; mix < slab.lives.size(); ++mix) {
        if (slab.lives[mix].verdict == HeapVerdict::notThere)
            continue;
        if (slab.lives[mix].since)
            slab.heaps.push_back(mix);
        else
            slab.unknown.push_back(ink.records.of<Mix>()[mix].id);
    }
    const auto endOf = [&](std::size_t mix) {
        const std::optional<TimeSpan>& ends = slab.lives[mix].ends;
        return ends ? ends->earliest : endOfTime;
    };
    std::stable_sort(slab.heaps.begin(), slab.heaps.end(),
                     [&](std::size_t a, std::size_t b) { return endOf(a) < endOf(b); });
    return slab;
}

}  // namespace rackbook
