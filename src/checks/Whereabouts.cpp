#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "base/Text.h"
#include "checks/EachEdition.h"
#include "checks/FindingList.h"
#include "checks/Rules.h"

namespace rackbook::rules {

namespace {

using MovePairs = std::map<std::pair<const Move*, const Move*>, Numbers>;

bool mayCoincide(const Move& a, const Move& b) {
    return !certainlyBefore(a.at, b.at) && !certainlyBefore(b.at, a.at);
}

bool leadsTo(const Move& a, const Move& b) {
    return b.from && *b.from == a.to;
}

// Two moves of one time that nothing puts in order. Badly known dates contradict nothing.
bool isUndecided(const AuditContext& context, const Move& a, const Move& b) {
    if (!mayCoincide(a, b) || a.at.isBadlyKnown() || b.at.isBadlyKnown() || a.until || b.until)
        return false;
    return !context.sharePlace(a.to, b.to) && !leadsTo(a, b) && !leadsTo(b, a);
}

bool staysTooLong(const AuditContext& context, const Move& a, const Move& b) {
    return a.until && certainlyBefore(a.at, b.at) && certainlyBefore(b.at, *a.until) &&
           !context.sharePlace(a.to, b.to);
}

// The move before left it somewhere else than where this one takes it from.
bool leavesGap(const AuditContext& context, const std::vector<const Move*>& moves, std::size_t i) {
    const Move& before = *moves[i - 1];
    const Move& move = *moves[i];
    if (!move.from || !certainlyBefore(before.at, move.at) ||
        context.sharePlace(before.to, *move.from))
        return false;
    if (before.until && !certainlyBefore(move.at, *before.until))
        return false;
    return std::none_of(moves.begin(), moves.end(), [&](const Move* other) {
        return other != &move && mayCoincide(*other, move);
    });
}

bool hasLeftForNowhere(const AuditContext& context, const Impression& impression,
                       const ImpressionTimeline& timeline) {
    if (impression.fate != ImpressionFate::kept || impression.holder || timeline.moves.empty())
        return false;
    const Move& last = *timeline.moves.back();
    return last.until && last.until->latest() < context.asOf();
}

void collectAtOnce(const AuditContext& context, MovePairs& undecided, MovePairs& tooLong) {
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        for (std::size_t i = 1; i < timeline.moves.size(); ++i) {
            const Move* before = timeline.moves[i - 1];
            const Move* move = timeline.moves[i];
            if (isUndecided(context, *before, *move))
                undecided[{before, move}].add(context.records(), impression);
            if (staysTooLong(context, *before, *move))
                tooLong[{before, move}].add(context.records(), impression);
        }
    });
}

void addNowhere(const AuditContext& context, FindingList& found) {
    std::map<const Move*, Numbers> left;
    eachEdition(context, [&](const Edition& edition, const EditionFolder& folder) {
        Numbers unplaced;
        eachImpression(context, folder,
                       [&](const Impression& impression, const ImpressionTimeline& timeline) {
                           if (hasLeftForNowhere(context, impression, timeline))
                               left[timeline.moves.back()].add(context.records(), impression);
                           const bool missing = impression.fate == ImpressionFate::kept &&
                                                !impression.holder && !timeline.pulls.empty() &&
                                                timeline.moves.empty();
                           if (missing)
                               unplaced.add(impression.workingNumber);
                       });
        if (!unplaced.empty())
            found.add(Severity::note, edition, "", "no place is recorded for " + unplaced.words(),
                      "", "Record a move that says where they are.");
    });
    for (const auto& [move, numbers] : left)
        found.add(Severity::warning, *move, "/until",
                  numbers.words() + " left here, and nothing says where they went",
                  move->until->text(), "Record the move that followed.");
}

}  // namespace

Findings placesAtOnce(const AuditContext& context) {
    MovePairs undecided;
    MovePairs tooLong;
    collectAtOnce(context, undecided, tooLong);
    FindingList found;
    for (const auto& [moves, numbers] : undecided)
        found.add(Severity::warning, *moves.second, "/at",
                  numbers.words("goes", "go") + " to place " + moves.second->to.id +
                      " and, by move " + moves.first->id + ", to place " + moves.first->to.id +
                      " at the same time",
                  moves.second->at.text(), "Give the times, or say in from which came first.");
    for (const auto& [moves, numbers] : tooLong)
        found.add(Severity::error, *moves.first, "/until",
                  numbers.words("is", "are") + " at place " + moves.first->to.id +
                      " until then, but at place " + moves.second->to.id + " from " +
                      moves.second->at.text() + " by move " + moves.second->id,
                  moves.first->until->text(), "Correct one of the two dates.");
    return found.take();
}

Findings whereaboutsGap(const AuditContext& context) {
    MovePairs gaps;
    eachImpression(context, [&](const Impression& impression, const ImpressionTimeline& timeline) {
        for (std::size_t i = 1; i < timeline.moves.size(); ++i)
            if (leavesGap(context, timeline.moves, i))
                gaps[{timeline.moves[i - 1], timeline.moves[i]}].add(context.records(), impression);
    });
    FindingList found;
    for (const auto& [moves, numbers] : gaps)
        found.add(Severity::warning, *moves.second, "/from",
                  numbers.words("was", "were") + " at place " + moves.first->to.id +
                      " until then, by move " + moves.first->id,
                  moves.second->from->id, "Correct from, or record the move in between.");
    addNowhere(context, found);
    return found.take();
}

Findings placeRing(const AuditContext& context) {
    const std::vector<Place>& places = context.records().of<Place>();
    std::vector<std::size_t> seenFrom(places.size(), places.size());
    FindingList found;
    for (std::size_t start = 0; start < places.size(); ++start) {
        int at = static_cast<int>(start);
        while (at >= 0 && seenFrom[static_cast<std::size_t>(at)] == places.size()) {
            const Place& place = places[static_cast<std::size_t>(at)];
            seenFrom[static_cast<std::size_t>(at)] = start;
            at = place.within ? context.records().indexOf<Place>(place.within->id) : -1;
        }
        if (at < 0 || seenFrom[static_cast<std::size_t>(at)] != start)
            continue;
        std::vector<std::string> ids;
        const int first = at;
        do {
            const Place& place = places[static_cast<std::size_t>(at)];
            ids.push_back(place.id);
            at = context.records().indexOf<Place>(place.within->id);
        } while (at != first);
        const Place& place = places[static_cast<std::size_t>(first)];
        found.add(Severity::error, place, "/within",
                  ids.size() == 1 ? "place " + place.id + " lies within itself"
                                  : "places " + joined(ids) + " lie within one another in a ring",
                  place.within->id, "Name the place that is really around it.");
    }
    return found.take();
}

}  // namespace rackbook::rules
