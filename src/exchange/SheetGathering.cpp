#include "exchange/SheetGathering.h"

#include "records/FieldTraits.h"

namespace rackbook {

namespace {

bool isAboutAll(const SheetAbout& about) {
    return !about.edition && about.impressions.empty() && !about.layer && !about.mix &&
           !about.transfer && !about.place;
}

}  // namespace

// Takes what a record names in the fields that stay on the sheet.
struct SheetGathering::Follower {
    SheetGathering& gathering;
    RecordKind kind;

    template <class T>
    void operator()(const char* field, const T& value) {
        const bool isToday = kind == RecordKind::impression && std::string_view(field) == "holder";
        if (!isToday && !isPrivate(kind, field, gathering.m_depth.privacy) &&
            !isLeftAside(kind, field, gathering.m_depth))
            follow(value);
    }

    template <class R>
    void follow(const Ref<R>& ref) {
        if constexpr (std::is_same_v<R, Party>)
            if (kind == RecordKind::transfer && gathering.m_withheld.areParties())
                return;
        if constexpr (!std::is_same_v<R, Impression>)
            gathering.take<R>(ref.id);
    }
    template <class R>
    void follow(const std::optional<Ref<R>>& ref) {
        if (ref)
            follow(*ref);
    }
    template <class R>
    void follow(const std::vector<Ref<R>>& refs) {
        if constexpr (!std::is_same_v<R, Impression>)
            for (const Ref<R>& ref : refs)
                follow(ref);
    }
    template <class T>
    void follow(const T&) {}
};

SheetGathering::SheetGathering(const SheetIndexes& indexes, const RecordsThen& then,
                               const Withheld& withheld, const SheetDepth& depth, CivilMinute asOf)
    : m_indexes(indexes),
      m_records(indexes.records),
      m_then(then),
      m_withheld(withheld),
      m_depth(depth),
      m_asOf(asOf) {}

template <class R>
void SheetGathering::take(std::size_t position) {
    const R& record = m_records.of<R>()[position];
    if (!m_then.holds(record) || !m_taken[numberOf(R::kind)].insert(position).second)
        return;
    if (R::kind == RecordKind::impression)
        m_impressions.insert(record.id);
    // What is around a withheld place would tell where it is.
    if (R::kind != RecordKind::place || !m_withheld.isPlace(record.id)) {
        Follower follower{*this, R::kind};
        R::fields(record, follower);
    }
    takeWhatIsBehind(record);
}

template <class R>
void SheetGathering::take(const std::string& id) {
    const int position = m_records.indexOf<R>(id);
    if (position >= 0)
        take<R>(static_cast<std::size_t>(position));
}

template <class R>
void SheetGathering::takeAll(const ById& index, const std::string& id) {
    const auto found = index.find(id);
    if (found == index.end())
        return;
    for (const std::size_t position : found->second)
        take<R>(position);
}

template <class R>
void SheetGathering::takeEvery() {
    for (std::size_t i = 0; i < m_records.of<R>().size(); ++i)
        take<R>(i);
}

void SheetGathering::takeWhatIsBehind(const Mix& mix) {
    takeAll<Weighing>(m_indexes.weighingsOfMix, mix.id);
    if (m_depth.swatches)
        takeAll<Drawdown>(m_indexes.drawdownsOfMix, mix.id);
}

void SheetGathering::takeWhatIsBehind(const Drawdown& drawdown) {
    if (m_depth.swatches)
        takeAll<Reading>(m_indexes.readingsOfDrawdown, drawdown.id);
}

// Whoever had it then need not be who has it today.
void SheetGathering::takeWhatIsBehind(const Impression& impression) {
    if (!m_depth.privacy.namesHolders)
        return;
    if (const std::optional<Ref<Party>> holder = m_then.holderOf(impression))
        take<Party>(holder->id);
}

void SheetGathering::takeFor(const SheetAbout& about) {
    m_listsOwnPulls = m_depth.mixes || !about.impressions.empty();
    takeEvery<Book>();
    takeSubject(about);
    if (isAboutAll(about))
        takeWholeBook();
    if (m_depth.storage)
        for (const Place& place : m_records.of<Place>())
            if (isStorage(place))
                take<Place>(place.id);
    if (m_depth.stock) {
        takeEvery<Lot>();
        takeEvery<StockTake>();
        for (const Lot& lot : m_records.of<Lot>())
            takeAll<Weighing>(m_indexes.weighingsOfLot, lot.id);
    }
    takeLight();
}

void SheetGathering::takeSubject(const SheetAbout& about) {
    if (about.edition)
        takeEdition(*about.edition);
    for (const std::string& id : about.impressions) {
        takeImpression(id);
        if (const Impression* impression = m_records.find<Impression>(id))
            takeEdition(impression->edition.id);
    }
    if (about.edition && about.impressions.empty() && !about.layer && !m_depth.mixes)
        takeImpressionsOf(*about.edition);
    if (about.layer) {
        take<Layer>(*about.layer);
        takeAll<Pull>(m_indexes.pullsOfLayer, *about.layer);
    }
    if (about.mix)
        take<Mix>(*about.mix);
    if (about.transfer)
        takeTransfer(*about.transfer);
    if (about.place)
        takePlace(*about.place);
}

void SheetGathering::takeWholeBook() {
    if (m_depth.mixes)
        takeEvery<Mix>();
    if (m_depth.stock || m_depth.storage)
        return;
    for (const Edition& edition : m_records.of<Edition>()) {
        takeEdition(edition.id);
        if (!m_depth.mixes)
            takeImpressionsOf(edition.id);
    }
}

void SheetGathering::takeEdition(const std::string& id) {
    take<Edition>(id);
    if (m_depth.mixes)
        takeMixesOf(id);
    if (m_depth.mixes || !m_depth.making)
        return;
    takeAll<Block>(m_indexes.blocksOfEdition, id);
    takeAll<Layer>(m_indexes.layersOfEdition, id);
    takeAll<Attachment>(m_indexes.picturesOfEdition, id);
}

// Those made for it, and those that it was printed from.
void SheetGathering::takeMixesOf(const std::string& edition) {
    takeAll<Mix>(m_indexes.mixesOfEdition, edition);
    takeAll<Layer>(m_indexes.layersOfEdition, edition);
    const auto found = m_indexes.layersOfEdition.find(edition);
    if (found == m_indexes.layersOfEdition.end())
        return;
    for (const std::size_t position : found->second)
        takeAll<Pull>(m_indexes.pullsOfLayer, m_records.of<Layer>()[position].id);
}

void SheetGathering::takeImpression(const std::string& id) {
    take<Impression>(id);
    if (m_depth.making)
        takeAll<Pull>(m_indexes.pullsOfImpression, id);
    if (m_depth.transfers)
        takeAll<Transfer>(m_indexes.transfersOfImpression, id);
    if (m_depth.photographs)
        takeAll<Attachment>(m_indexes.picturesOfImpression, id);
    if (!m_depth.light)
        return;
    takeAll<Move>(m_indexes.movesOfImpression, id);
    takeAll<Look>(m_indexes.looksOfImpression, id);
    m_judged.insert(id);
}

void SheetGathering::takeImpressionsOf(const std::string& edition) {
    const auto found = m_indexes.impressionsOfEdition.find(edition);
    if (found == m_indexes.impressionsOfEdition.end())
        return;
    for (const std::size_t position : found->second)
        takeImpression(m_records.of<Impression>()[position].id);
}

// What was handed over, but not how it was made: that is not the other party's business.
void SheetGathering::takeTransfer(const std::string& id) {
    take<Transfer>(id);
    if (const Transfer* transfer = m_records.find<Transfer>(id))
        for (const Ref<Impression>& ref : transfer->impressions)
            take<Impression>(ref.id);
}

// With the drawers in it. What came into them says what lies there, whether or not the sheet's
// heading lists it.
void SheetGathering::takePlace(const std::string& id) {
    std::set<std::string> seen;
    std::vector<std::string> open = {id};
    while (!open.empty()) {
        const std::string at = std::move(open.back());
        open.pop_back();
        if (!seen.insert(at).second)
            continue;
        take<Place>(at);
        if (m_depth.light)
            takeLyingAt(at);
        const auto within = m_indexes.placesWithin.find(at);
        if (within == m_indexes.placesWithin.end())
            continue;
        for (const std::size_t position : within->second) {
            const std::string& inner = m_records.of<Place>()[position].id;
            if (!m_withheld.isPlace(inner))
                open.push_back(inner);
        }
    }
}

void SheetGathering::takeLyingAt(const std::string& place) {
    const auto found = m_indexes.movesTo.find(place);
    if (found == m_indexes.movesTo.end())
        return;
    for (const std::size_t position : found->second) {
        const Move& move = m_records.of<Move>()[position];
        if (!m_then.holds(move))
            continue;
        for (const Ref<Impression>& ref : move.impressions) {
            take<Impression>(ref.id);
            takeAll<Move>(m_indexes.movesOfImpression, ref.id);
        }
    }
}

void SheetGathering::takeLight() {
    if (!m_depth.light || m_depth.verdictsOnly)
        return;
    SheetLight light(m_indexes, m_then, m_asOf);
    for (const std::string& id : m_judged)
        if (const Impression* impression = m_records.find<Impression>(id))
            light.add(*impression);
    for (const std::size_t position : light.weather())
        take<Weather>(position);
    for (const std::size_t position : light.meterings())
        take<Metering>(position);
}

}  // namespace rackbook
