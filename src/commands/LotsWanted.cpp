#include "commands/LotsWanted.h"

#include <algorithm>
#include <set>

#include "commands/GivenValues.h"
#include "commands/OptionRows.h"
#include "commands/RecordNamed.h"

namespace rackbook {

namespace {

using Ids = std::set<std::string>;

std::string editionIdOf(const InkBook& ink, const std::string& words) {
    std::vector<std::string> codes;
    for (const Edition& edition : ink.records.of<Edition>()) {
        if (edition.id == words || edition.code == words)
            return edition.id;
        codes.push_back(edition.code);
    }
    refuseUnknownRecord(RecordKind::edition, words, codes);
}

// The mixes of an edition, of its layers and of its runs, and what went into those.
Ids mixesOf(const InkBook& ink, const std::string& edition) {
    Ids layers;
    Ids mixes;
    for (const Layer& layer : ink.records.of<Layer>()) {
        if (layer.edition.id != edition)
            continue;
        layers.insert(layer.id);
        if (layer.mix)
            mixes.insert(layer.mix->id);
    }
    for (const Pull& pull : ink.records.of<Pull>())
        if (pull.portion && layers.count(pull.layer.id) > 0)
            mixes.insert(pull.portion->id);
    for (const Mix& mix : ink.records.of<Mix>())
        if (mix.edition && mix.edition->id == edition)
            mixes.insert(mix.id);
    for (bool grew = true; grew;) {
        grew = false;
        for (const Weighing& weighing : ink.records.of<Weighing>())
            if (weighing.fromMix && mixes.count(weighing.mix.id) > 0)
                grew = mixes.insert(weighing.fromMix->id).second || grew;
    }
    return mixes;
}

Ids lotsOf(const InkBook& ink, const std::string& edition) {
    const Ids mixes = mixesOf(ink, edition);
    Ids lots;
    for (const Weighing& weighing : ink.records.of<Weighing>())
        if (weighing.lot && mixes.count(weighing.mix.id) > 0)
            lots.insert(weighing.lot->id);
    return lots;
}

Ids lotsUsedDuring(const InkBook& ink, const EdtfDate& days) {
    Ids lots;
    for (const Weighing& weighing : ink.records.of<Weighing>())
        if (weighing.lot && weighing.at.earliest() <= days.latest() &&
            weighing.at.latest() >= days.earliest())
            lots.insert(weighing.lot->id);
    return lots;
}

Ids lotsAt(const InkBook& ink, const std::string& place) {
    std::vector<std::string> known;
    for (const Place& one : ink.records.of<Place>())
        known.push_back(one.id);
    if (std::find(known.begin(), known.end(), place) == known.end())
        refuseUnknownRecord(RecordKind::place, place, known);
    Ids places = {place};
    for (bool grew = true; grew;) {
        grew = false;
        for (const Place& one : ink.records.of<Place>())
            if (one.within && places.count(one.within->id) > 0)
                grew = places.insert(one.id).second || grew;
    }
    Ids lots;
    for (const Lot& lot : ink.records.of<Lot>())
        if (lot.place && places.count(lot.place->id) > 0)
            lots.insert(lot.id);
    return lots;
}

}  // namespace

std::vector<OptionSpec> lotFilters() {
    return {valueOption("edition", "CODE",
                        "Only lots of which something went into the ink of this edition."),
            valueOption("place", "PLACE", "Only lots that stand there or at a place within it."),
            valueOption("during", "DATE",
                        "Only lots of which something was weighed then: a day, a month, a year, or "
                        "a first and a last day with a slash between.")};
}

void keepLotsWanted(const CommandContext& context, const InkBook& ink,
                    std::vector<std::size_t>& lots) {
    const Arguments& arguments = context.arguments;
    std::vector<Ids> wanted;
    if (arguments.has("edition"))
        wanted.push_back(lotsOf(ink, editionIdOf(ink, arguments.text("edition"))));
    if (arguments.has("place"))
        wanted.push_back(lotsAt(ink, arguments.text("place")));
    if (arguments.has("during"))
        wanted.push_back(lotsUsedDuring(ink, dateFrom(arguments.text("during"), "during")));
    const std::vector<Lot>& all = ink.records.of<Lot>();
    const auto isOut = [&](std::size_t lot) {
        return std::any_of(wanted.begin(), wanted.end(),
                           [&](const Ids& ids) { return ids.count(all[lot].id) == 0; });
    };
    lots.erase(std::remove_if(lots.begin(), lots.end(), isOut), lots.end());
}

}  // namespace rackbook
