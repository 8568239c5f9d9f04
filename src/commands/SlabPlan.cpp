#include "commands/SlabPlan.h"

#include <algorithm>

#include "commands/HeapOnSlab.h"
#include "commands/InkBookPart.h"
#include "commands/InkWords.h"
#include "store/RecordReader.h"
#include "store/RecordsAround.h"

namespace rackbook {

namespace {

// The room as it was when the last run of the day before that moment began.
const Pull* lastMeasured(const std::vector<Pull>& pulls, CivilMinute asOf) {
    const Pull* last = nullptr;
    for (const Pull& pull : pulls) {
        const bool isRecent = pull.start.earliest() <= asOf && !pull.start.isBadlyKnown() &&
                              pull.start.latest() >= asOf - minutesPerDay;
        if (isRecent && pull.temperature_C && isRoomTemperature(*pull.temperature_C) &&
            (last == nullptr || pull.start.earliest() >= last->start.earliest()))
            last = &pull;
    }
    return last;
}

Warmth warmthOf(const std::vector<Pull>& pulls, const SlabQuestion& question) {
    if (question.temperature_C)
        return {*question.temperature_C, "as given"};
    if (const Pull* pull = lastMeasured(pulls, question.asOf))
        return {*pull->temperature_C,
                "as recorded with the run of " +
                    momentWords({pull->start.earliest(), pull->start.latest()})};
    return {20, "assumed, because no run of the last day recorded it"};
}

// A heap that was past before this minute is left out.
CivilMinute leftOutBefore(const HouseRules& rules, CivilMinute asOf) {
    return asOf - static_cast<CivilMinute>(rules.value("heapLeftOut_days") * minutesPerDay);
}

// A heap that nothing went into or out of since then was past before the other would be left out.
CivilMinute usedSince(const HouseRules& rules, const SlabQuestion& question, const Warmth& warmth) {
    const HeapLives lives = heapLivesBy(rules);
    constexpr double minutesPerHour = 60;
    const double longest_min =
        minutesPerHour *
        lifeAt(std::max(lives.withDrier_h, lives.withoutDrier_h), warmth.temperature_C);
    return leftOutBefore(rules, question.asOf) - static_cast<CivilMinute>(longest_min) - 1;
}

InkBook inkFor(const BookFile& book, const SlabQuestion& question, const Warmth& warmth) {
    if (question.withLeftOut)
        return inkBookWith(book, {RecordKind::book, RecordKind::lot, RecordKind::mix});
    const HouseRules rules(bookRecordOf(book).houseRules);
    return inkBookOfMixes(book, mixesInUse(book, usedSince(rules, question, warmth)));
}

bool isLeftOut(const HeapLife& life, const HouseRules& rules, const SlabQuestion& question) {
    return !question.withLeftOut && life.ends &&
           life.ends->latest < leftOutBefore(rules, question.asOf);
}

}  // namespace

Slab slabOf(const BookFile& book, const SlabQuestion& question) {
    const Warmth warmth = warmthOf(pullsSince(book, question.asOf - minutesPerDay), question);
    Slab slab{
        inkFor(book, question, warmth), question.asOf, question.withLeftOut, warmth, {}, {}, {}};
    const HouseRules& rules = slab.ink.rules;
    const std::vector<HeapFacts> facts = heapFactsOf(slab.ink);
    slab.lives = heapLives({slab.ink.history, facts, slab.asOf, heapLivesBy(rules),
                            warmth.temperature_C, rules.value("overdrawTolerance_g")});
    for (std::size_t mix = 0; mix < slab.lives.size(); ++mix) {
        const HeapLife& life = slab.lives[mix];
        if (life.verdict == HeapVerdict::notThere || isLeftOut(life, rules, question))
            continue;
        if (life.since)
            slab.heaps.push_back(mix);
        else
            slab.unknown.push_back(slab.ink.records.of<Mix>()[mix].id);
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
