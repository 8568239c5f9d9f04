// What happened to impressions, as flat tables for computing over many of them at once. Rows name
// each other by position; -1 stands for none. Times are minutes on the studio's wall clock, each
// with its earliest and latest reading.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "base/CivilTime.h"
#include "records/Impression.h"
#include "records/Look.h"
#include "records/Lot.h"
#include "records/Mix.h"
#include "records/Move.h"
#include "records/Place.h"
#include "records/Weighing.h"

namespace rackbook {

struct TimeSpan {
    CivilMinute earliest = 0;
    CivilMinute latest = 0;
};

// Known less well than to the day.
constexpr bool isBadlyKnown(const TimeSpan& span) {
    return span.latest - span.earliest >= minutesPerDay;
}

// A mass or share that was not recorded.
constexpr double notKnown = std::numeric_limits<double>::quiet_NaN();

struct HistoryEdition {
    std::string id;
    std::string code;
};

struct HistoryLayer {
    int edition = -1;
    int ordinal = 0;
    double extenderShare = notKnown;  // as remembered
    std::string colourWords;
};

struct HistoryPull {
    int layer = -1;
    int portion = -1;  // mix
    TimeSpan start;
    double inkUsed_g = notKnown;
};

struct HistoryPlace {
    std::string id;
    std::string name;
    PlaceKind placeKind = PlaceKind::other;
    int within = -1;
    bool atHolder = false;       // a holder's place: what hangs there is out of the studio's hands
    std::size_t lightBegin = 0;  // its rows in History::light
    std::size_t lightEnd = 0;
};

struct HistoryLight {
    TimeSpan from;  // beginningOfTime where it was always so
    LightKind lightKind = LightKind::dark;
};

struct HistoryMove {
    int to = -1;    // place
    int from = -1;  // place
    TimeSpan at;
    bool hasUntil = false;
    TimeSpan until;
    MoveWhy why = MoveWhy::other;
    bool interleaved = false;
};

struct HistoryLook {
    TimeSpan at;
    bool hasTouch = false;
    Touch touch = Touch::wet;
    bool hasColour = false;
    LookColour colour = LookColour::turned;
    bool hasReading = false;
    bool readingAgrees = false;  // its reading is, within tolerance, that of the record
};

struct HistoryWeighing {
    int mix = -1;
    WeighingAct act = WeighingAct::add;
    int lot = -1;
    int fromMix = -1;
    TimeSpan at;
    int sequence = 0;
    double mass_g = notKnown;
    double massLow_g = notKnown;
    double massHigh_g = notKnown;
};

struct HistoryImpression {
    std::int64_t key = 0;  // the book's own row number
    int edition = -1;
    int workingNumber = 0;
    ImpressionFate fate = ImpressionFate::kept;
    // From when on the fate can hold; beginningOfTime where no date is recorded.
    CivilMinute fateFrom = beginningOfTime;
    bool withHolder = false;
};

// Lists of rows for each impression: rows of impression i are items[offsets[i]] … before
// items[offsets[i + 1]]. Pre: offsets has one more element than there are impressions.
struct RowLists {
    std::vector<std::uint32_t> offsets;
    std::vector<std::uint32_t> items;

    const std::uint32_t* begin(std::size_t i) const { return items.data() + offsets[i]; }
    const std::uint32_t* end(std::size_t i) const { return items.data() + offsets[i + 1]; }
};

struct History {
    std::vector<HistoryEdition> editions;
    std::vector<HistoryLayer> layers;
    std::vector<LotKind> lots;               // all of the book's lots, by position
    std::size_t mixCount = 0;                // all of the book's mixes, by position
    std::vector<HistoryWeighing> weighings;  // all of the book's, in the order of recording
    std::vector<HistoryPull> pulls;
    std::vector<HistoryPlace> places;
    std::vector<HistoryLight> light;
    std::vector<HistoryMove> moves;
    std::vector<HistoryLook> looks;
    std::vector<HistoryImpression> impressions;  // those asked for, by edition and working number
    RowLists pullsOf;                            // each list in the order of recording, not of time
    RowLists movesOf;
    RowLists looksOf;     // looks at the impression and looks that stand for it
    RowLists ownLooksOf;  // of these, those at the impression itself
};

}  // namespace rackbook
