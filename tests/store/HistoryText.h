// A flat history as text, so that two of them can be held against each other.
#pragma once

#include <sstream>
#include <string>

#include "records/History.h"

namespace rackbook::test {

// Everything in a history as text, but for the keys, which are row numbers here and positions
// there.
class HistoryText {
public:
    explicit HistoryText(const History& history) {
        for (const HistoryEdition& edition : history.editions)
            line("edition", edition.id, edition.code);
        for (const HistoryLayer& layer : history.layers)
            line("layer", layer.edition, layer.ordinal, layer.extenderShare, layer.colourWords);
        for (const LotKind lot : history.lots)
            line("lot", textOf(lot));
        line("mixes", history.mixCount);
        for (const HistoryWeighing& w : history.weighings)
            line("weighing", w.mix, textOf(w.act), w.lot, w.fromMix, w.at.earliest, w.at.latest,
                 w.sequence, w.mass_g, w.massLow_g, w.massHigh_g);
        for (const HistoryPull& pull : history.pulls)
            line("pull", pull.layer, pull.portion, pull.start.earliest, pull.start.latest,
                 pull.inkUsed_g);
        for (const HistoryPlace& place : history.places)
            line("place", place.id, place.name, textOf(place.placeKind), place.within,
                 place.atHolder, place.lightEnd - place.lightBegin);
        for (const HistoryLight& light : history.light)
            line("light", light.from.earliest, light.from.latest, textOf(light.lightKind));
        for (const HistoryMove& move : history.moves)
            line("move", move.to, move.from, move.at.earliest, move.at.latest, move.hasUntil,
                 move.until.earliest, move.until.latest, textOf(move.why), move.interleaved);
        for (const HistoryLook& look : history.looks)
            line("look", look.at.earliest, look.at.latest, look.hasTouch, textOf(look.touch),
                 look.hasColour, textOf(look.colour));
        for (std::size_t i = 0; i < history.impressions.size(); ++i)
            addImpression(history, i);
    }
    std::string text() const { return m_text.str(); }

private:
    template <class... Values>
    void line(const Values&... values) {
        ((m_text << values << ' '), ...);
        m_text << '\n';
    }

    void addImpression(const History& history, std::size_t i) {
        const HistoryImpression& impression = history.impressions[i];
        line("impression", impression.edition, impression.workingNumber, textOf(impression.fate),
             impression.withHolder);
        for (const RowLists* lists : {&history.pullsOf, &history.movesOf, &history.looksOf}) {
            for (const std::uint32_t* at = lists->begin(i); at != lists->end(i); ++at)
                m_text << " " << *at;
            line(".");
        }
    }

    std::ostringstream m_text;
};

}  // namespace rackbook::test
