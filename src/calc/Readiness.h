// Whether impressions may be put away: the storage-readiness check.
//
// Ink that is mostly base can turn brownish while it dries, comes back in light, and turns again
// when it is put into the dark before that has finished (common practice, no source). So after the
// last extender-rich layer an impression hangs in light, is touched and looked at, and only then
// goes into a drawer. The check works from pulls, moves, looks and the light of places. A day in
// light is 24 hours at a place with daylight, outdoors or metered light, face open; dark and
// artificial light count as dark; light that is not known counts to the high bound only. Where the
// light of the studio can be estimated, the dose since that layer tells whether a look is worth
// making, and looks settle what it leaves open.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "calc/Estimate.h"
#include "calc/Gates.h"
#include "calc/LightForecast.h"
#include "calc/LightModel.h"
#include "calc/PlaceLight.h"
#include "records/EnumText.h"
#include "records/History.h"
#include "records/HouseRules.h"

namespace rackbook {

enum class Verdict : std::uint8_t {
    ready,        // every gate is passed
    lookDue,      // it had its light, or may have; a look is missing, or it was not dry yet
    moreLight,    // days or doses of light are missing, or the last look found it not true
    bringOut,     // it was put away too early, or found not true since, and lies in the dark now
    notAffected,  // no extender-rich layer
    unknown       // what is recorded does not decide it; the gaps say what is missing
};
template <>
struct EnumText<Verdict> {
    static constexpr const char* names[] = {"ready",    "lookDue",     "moreLight",
                                            "bringOut", "notAffected", "unknown"};
};

// What is missing from the record, as far as it mattered for the verdict.
struct ReadinessGaps {
    bool pulls = false;          // no pull at all is recorded
    bool extenderShare = false;  // of doubtfulPull
    bool whereabouts = false;    // for some time since that pull
    bool lightAtPlace = false;   // of unlitPlace
    bool lightAtHolder = false;  // it is out of the studio's hands and its light there is not known
    bool dates = false;          // a pull or a move is known less well than to the day
};

// Positions are those of the history; -1 stands for none.
struct ReadinessRow {
    int impression = -1;
    CivilMinute asOf = 0;  // of the check
    Verdict verdict = Verdict::unknown;
    LightRule lightRule = LightRule::drierNotKnown;
    LightState lightNow = LightState::unstated;  // at place; artificial counts as dark
    bool shareRemembered = false;                // extenderShare is the layer's remembered one
    bool artificialLight = false;  // some of the time since that pull was in artificial light
    bool outOfHands = false;       // at a gallery or at a holder's, or with a holder somewhere
    bool touchDry = false;         // recorded since the last pull of all
    bool putAwayEarly = false;     // into the dark or out of hands before every gate was passed
    bool leftEarly = false;        // putAwayEarly, and by leaving the studio's hands
    bool touchWasOther = false;    // touchLook was at other prints, which it was taken to be like
    bool colourWasOther = false;   // colourLook was
    bool unplacedLooks = false;    // some may have been made before that pull, or after the check
    bool isInterleaved = false;    // at place: no light reaches the face, whatever the place has
    bool mayComeLater = false;     // the move to place is dated too badly to have surely been made
    ReadinessGaps gaps;
    GateResults gates = {};  // as of the check; meaningless where pull is -1
    int pull = -1;           // the last extender-rich one
    int layer = -1;          // of that pull
    int lastPull = -1;       // the last of all
    int doubtfulPull = -1;   // the last one whose share of base is not known
    int unlitPlace = -1;     // the last place whose light is not known
    int touchLook = -1;      // the last that says how it feels, since the last pull of all
    int colourLook = -1;     // the last that says how it looks, since that pull
    int turnedAgain = -1;    // the last that found it turned after the dark, since that pull
    ColourLooks looks;       // since that pull
    CivilMinute lastTrueLook = beginningOfTime;  // the last of looks.foundTrue
    // Up to then a look may have found the colour not true.
    CivilMinute turnedUntil = beginningOfTime;
    int place = -1;           // where the moves leave it
    int putAwayTo = -1;       // place of the first move that was too early
    TimeSpan pulled;          // when the last extender-rich layer came to it
    TimeSpan darkSince;       // where lightNow is dark or artificial
    TimeSpan putAwayEarlyOn;  // where putAwayEarly
    Estimate extenderShare;   // of that pull's ink
    Estimate drierShare;      // of that pull's ink
    // Days in light since that pull, or since turnedAgain, for which it had them all anew to go
    // through (our reading of common practice).
    double daysLow = 0;
    double daysHigh = 0;
    double daysNeeded = 0;
    double daysInAllLow = 0;  // since that pull
    double daysInAllHigh = 0;
    // Where the studio's light can be estimated.
    bool asksDose = false;
    LightDose dose;  // since that pull
    // Up to the last look, where that found the colour not true.
    Estimate notYet_sunnyDays = Estimate::exactly(0);
    // At most, since a look last found it not true, where later ones found it true.
    double lightSinceTurned_sunnyDays = std::numeric_limits<double>::infinity();
    double returnedChance = notKnown;          // by dose and notYet_sunnyDays
    const LightWantedGroup* wanted = nullptr;  // the inks alike; lives as long as the model
    bool hasForecast = false;                  // more light is wanted, and it hangs in light
    // What forecastOf asks, where hasForecast; must be alive then.
    const LightModel* forecastModel = nullptr;
};

struct Readiness {
    CivilMinute asOf = 0;
    std::vector<ReadinessRow> rows;  // in the order of History::impressions
    std::size_t leftOut = 0;         // spoiled or destroyed by then: not assessed
};

// What happened after asOf is left out. Without a model of the light, doses are not asked for.
Readiness readinessOf(const History& history, const HouseRules& rules, CivilMinute asOf,
                      const LightModel* light = nullptr);

// An impression, by its position, as of a minute.
struct JudgedMoment {
    std::size_t impression = 0;
    CivilMinute asOf = 0;
};

// A row for each of the moments, in their order, as readinessOf has it; also of what was spoiled or
// destroyed by then. No doses are asked for.
std::vector<ReadinessRow> readinessAt(const History& history, const HouseRules& rules,
                                      const std::vector<JudgedMoment>& moments);

// Why the row says what it says, in whole sentences; at least one.
std::vector<std::string> reasonsFor(const ReadinessRow& row, const History& history,
                                    const HouseRules& rules);

// Whether the looks say that the colour came back while, by estimate, next to no light was there.
bool cameBackInTheDark(const ReadinessRow& row);

// From which minute on the next look counts as another one that found the colour true: at once
// where none has yet.
CivilMinute nextLookFrom(const ReadinessRow& row, const HouseRules& rules);

// "ready", "a look is due" …, as lists and sheets print it.
const char* verdictWords(Verdict verdict);

// The house rules that decide it, by name, in the order in which reports give them.
const std::vector<std::string>& rulesOfReadiness();

}  // namespace rackbook
