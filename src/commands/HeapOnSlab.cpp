#include "commands/HeapOnSlab.h"

#include <cmath>

#include "base/Numbers.h"
#include "calc/Wording.h"
#include "commands/InkWords.h"
#include "commands/RecordNamed.h"
#include "records/Mix.h"
#include "store/HistoryPart.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

constexpr double usual_C = 20;
constexpr double coldest_C = -50;
constexpr double warmest_C = 100;

CivilMinute middleOf(const TimeSpan& span) {
    return span.earliest + (span.latest - span.earliest) / 2;
}

enum class Age { young, nearItsEnd, probablyPast, past };

// Of a heap that is gone by the book too: what was printed with must have been there.
Age ageOf(const HeapLife& life, const TimeSpan& start) {
    if (!life.ends)
        return Age::young;
    if (start.earliest > life.ends->latest)
        return Age::past;
    if (middleOf(start) > middleOf(*life.ends))
        return Age::probablyPast;
    return life.verdict == HeapVerdict::nearItsEnd ? Age::nearItsEnd : Age::young;
}

std::string wordsFor(Age age) {
    switch (age) {
        case Age::past:
            return "was past when this run began";
        case Age::probablyPast:
            return "was probably past when this run began, as far as the dates tell";
        default:
            return "was near its end when this run began";
    }
}

std::string sinceWords(const HeapLife& life) {
    if (life.since->earliest == life.since->latest)
        return momentWords(*life.since) + ", " + ageWords(life.age_h.best);
    return momentWords(*life.since);
}

// Where the heap was finished before the run, or held less than the run took.
std::string goneWords(const BookFile& book, const Pull& pull, const HeapLife& life,
                      double tolerance_g) {
    const std::optional<Mix> mix = findIn<Mix>(book, pull.portion->id);
    if (mix && mix->finishedOn && certainlyBefore(*mix->finishedOn, pull.start))
        return "By the book, " + mix->id + " was finished on " + mix->finishedOn->text() +
               ". Name the portion that was printed with, or correct the date.";
    if (!pull.inkBefore_g || life.left_g.high + tolerance_g >= *pull.inkBefore_g)
        return {};
    return "By the book, " + pull.portion->id + " held no more than " +
           formatFixed(life.left_g.high, 2) + " g when this run began, and " +
           formatShortest(*pull.inkBefore_g) +
           " g were on the slab. Record what went in before, or weigh again.";
}

HeapLife lifeOf(const BookFile& book, const Pull& pull, const HouseRules& rules,
                double temperature_C) {
    const PartOfInk part = inkPartOf(book, {{}, {pull.portion->id}, {}});
    std::vector<HeapFacts> facts;
    for (const std::string& id : part.mixes) {
        const Mix mix = *findIn<Mix>(book, id);
        HeapFacts fact;
        if (mix.madeOn)
            fact.made = TimeSpan{mix.madeOn->earliest(), mix.madeOn->latest()};
        facts.push_back(fact);
    }
    const CivilMinute asOf = middleOf({pull.start.earliest(), pull.start.latest()});
    return heapLives(
        {part.history, facts, asOf, heapLivesBy(rules), temperature_C,
         rules.value("overdrawTolerance_g")})[positionIn(part.mixes, pull.portion->id)];
}

}  // namespace

const std::vector<std::string>& rulesOfHeaps() {
    static const std::vector<std::string> names = {"heapLifeWithDrier_h", "heapLifeWithoutDrier_h",
                                                   "heapLeftOut_days"};
    return names;
}

HeapLives heapLivesBy(const HouseRules& rules) {
    return {rules.value("heapLifeWithDrier_h"), rules.value("heapLifeWithoutDrier_h")};
}

bool isRoomTemperature(double temperature_C) {
    return temperature_C >= coldest_C && temperature_C <= warmest_C;
}

std::string lifeWords(double hours) {
    constexpr double hoursPerDay = 24;
    if (hours < 2 * hoursPerDay)
        return formatFixed(hours, 1) + " h";
    return formatFixed(hours / hoursPerDay, 1) + " days";
}

std::string oldHeapWords(const BookFile& book, const Pull& pull) {
    if (!pull.portion || pull.start.isBadlyKnown())
        return {};
    const HouseRules rules(bookRecordOf(book).houseRules);
    const bool isKnown = pull.temperature_C && isRoomTemperature(*pull.temperature_C);
    const double temperature_C = isKnown ? *pull.temperature_C : usual_C;
    const HeapLife life = lifeOf(book, pull, rules, temperature_C);
    const Age age = ageOf(life, {pull.start.earliest(), pull.start.latest()});
    const std::string gone = goneWords(book, pull, life, rules.value("overdrawTolerance_g"));
    if (age == Age::young)
        return gone;
    const RuleInForce& rule =
        rules.rule(life.holdsDrier ? "heapLifeWithDrier_h" : "heapLifeWithoutDrier_h");
    return (gone.empty() ? "" : gone + " ") + "By the book, " + pull.portion->id + " " +
           wordsFor(age) + ": " + (life.holdsDrier ? "it has held drier since " : "it was made ") +
           sinceWords(life) + (life.holdsDrier ? "" : " before") + ". At " +
           formatShortest(temperature_C) + " °C" + (isKnown ? "" : " (assumed)") +
           " such a heap lasts about " + lifeWords(life.life_h) + " (house rule " + rule.rule +
           " " + formatShortest(rule.value) + " h at 20 °C: " + originWords(rule) +
           "). Try the ink on scrap paper, or take a new portion, before going on.";
}

}  // namespace rackbook
