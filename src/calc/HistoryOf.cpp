#include "calc/HistoryOf.h"

#include <algorithm>
#include <optional>

namespace rackbook {

namespace {

TimeSpan spanOf(const EdtfDate& date) {
    return {date.earliest(), date.latest()};
}

template <class R>
int positionOf(const RecordSet& records, const std::optional<Ref<R>>& ref) {
    return ref ? records.indexOf<R>(ref->id) : -1;
}

void fillEditions(const RecordSet& records, History& history) {
    for (const Edition& edition : records.of<Edition>())
        history.editions.push_back({edition.id, edition.code});
    for (const Layer& layer : records.of<Layer>())
        history.layers.push_back({records.indexOf<Edition>(layer.edition.id), layer.ordinal,
                                  layer.extenderShare.value_or(notKnown), layer.colourWords});
}

void fillInk(const RecordSet& records, History& history) {
    for (const Lot& lot : records.of<Lot>())
        history.lots.push_back(lot.lotKind);
    history.mixCount = records.of<Mix>().size();
    for (const Weighing& weighing : records.of<Weighing>()) {
        HistoryWeighing row;
        row.mix = records.indexOf<Mix>(weighing.mix.id);
        row.act = weighing.act;
        row.lot = positionOf(records, weighing.lot);
        row.fromMix = positionOf(records, weighing.fromMix);
        row.at = spanOf(weighing.at);
        row.sequence = weighing.sequence;
        row.mass_g = weighing.mass_g.value_or(notKnown);
        row.massLow_g = weighing.massLow_g.value_or(notKnown);
        row.massHigh_g = weighing.massHigh_g.value_or(notKnown);
        history.weighings.push_back(row);
    }
}

void fillPlaces(const RecordSet& records, History& history) {
    for (const Place& place : records.of<Place>()) {
        HistoryPlace row;
        row.id = place.id;
        row.name = place.name;
        row.placeKind = place.placeKind;
        row.within = positionOf(records, place.within);
        row.atHolder = place.holder.has_value() || place.placeKind == PlaceKind::holderAddress;
        row.lightBegin = history.light.size();
        for (const Light& light : place.light)
            history.light.push_back(
                {light.from ? spanOf(*light.from) : TimeSpan{beginningOfTime, beginningOfTime},
                 light.lightKind});
        row.lightEnd = history.light.size();
        history.places.push_back(std::move(row));
    }
}

void fillHappenings(const RecordSet& records, History& history) {
    for (const Pull& pull : records.of<Pull>()) {
        const bool weighed = pull.inkBefore_g && pull.inkAfter_g;
        history.pulls.push_back({records.indexOf<Layer>(pull.layer.id),
                                 positionOf(records, pull.portion), spanOf(pull.start),
                                 weighed ? *pull.inkBefore_g - *pull.inkAfter_g : notKnown});
    }
    for (const Move& move : records.of<Move>())
        history.moves.push_back({records.indexOf<Place>(move.to.id), positionOf(records, move.from),
                                 spanOf(move.at), move.until.has_value(),
                                 move.until ? spanOf(*move.until) : TimeSpan{}, move.why,
                                 move.interleaved});
    for (const Look& look : records.of<Look>())
        history.looks.push_back({spanOf(look.at), look.touch.has_value(),
                                 look.touch.value_or(Touch::wet), look.colour.has_value(),
                                 look.colour.value_or(LookColour::turned),
                                 look.reading.has_value()});
}

// Positions in the history, by position in the record set.
std::vector<std::uint32_t> fillImpressions(const RecordSet& records, History& history) {
    const std::vector<Impression>& impressions = records.of<Impression>();
    for (std::size_t i = 0; i < impressions.size(); ++i)
        history.impressions.push_back(
            {static_cast<std::int64_t>(i), records.indexOf<Edition>(impressions[i].edition.id),
             impressions[i].workingNumber, impressions[i].fate,
             impressions[i].fateOn ? impressions[i].fateOn->earliest() : beginningOfTime,
             impressions[i].holder.has_value()});
    std::stable_sort(history.impressions.begin(), history.impressions.end(),
                     [](const HistoryImpression& a, const HistoryImpression& b) {
                         return a.edition != b.edition ? a.edition < b.edition
                                                       : a.workingNumber < b.workingNumber;
                     });
    std::vector<std::uint32_t> positions(impressions.size());
    for (std::size_t i = 0; i < history.impressions.size(); ++i)
        positions[static_cast<std::size_t>(history.impressions[i].key)] =
            static_cast<std::uint32_t>(i);
    return positions;
}

class ListMaker {
public:
    ListMaker(const RecordSet& records, const std::vector<std::uint32_t>& positions)
        : m_records(records), m_positions(positions) {}

    void note(const std::vector<Ref<Impression>>& impressions, std::size_t row) {
        for (const Ref<Impression>& ref : impressions) {
            const int found = m_records.indexOf<Impression>(ref.id);
            if (found >= 0)
                m_pairs.emplace_back(m_positions[static_cast<std::size_t>(found)],
                                     static_cast<std::uint32_t>(row));
        }
    }

    RowLists take() {
        RowLists lists;
        lists.offsets.assign(m_positions.size() + 1, 0);
        for (const auto& [impression, row] : m_pairs)
            ++lists.offsets[impression + 1];
        for (std::size_t i = 0; i < m_positions.size(); ++i)
            lists.offsets[i + 1] += lists.offsets[i];
        lists.items.resize(m_pairs.size());
        std::vector<std::uint32_t> next(lists.offsets.begin(), lists.offsets.end() - 1);
        for (const auto& [impression, row] : m_pairs)
            lists.items[next[impression]++] = row;
        return lists;
    }

private:
    const RecordSet& m_records;
    const std::vector<std::uint32_t>& m_positions;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> m_pairs;
};

template <class R>
RowLists listsOf(const RecordSet& records, const std::vector<std::uint32_t>& positions) {
    ListMaker lists(records, positions);
    for (std::size_t row = 0; row < records.of<R>().size(); ++row)
        lists.note(records.of<R>()[row].impressions, row);
    return lists.take();
}

}  // namespace

History historyOf(const RecordSet& records) {
    History history;
    fillEditions(records, history);
    fillInk(records, history);
    fillPlaces(records, history);
    fillHappenings(records, history);
    const std::vector<std::uint32_t> positions = fillImpressions(records, history);
    history.pullsOf = listsOf<Pull>(records, positions);
    history.movesOf = listsOf<Move>(records, positions);
    ListMaker looks(records, positions);
    for (std::size_t row = 0; row < records.of<Look>().size(); ++row) {
        looks.note(records.of<Look>()[row].impressions, row);
        looks.note(records.of<Look>()[row].standsFor, row);
    }
    history.looksOf = looks.take();
    history.ownLooksOf = listsOf<Look>(records, positions);
    return history;
}

}  // namespace rackbook
