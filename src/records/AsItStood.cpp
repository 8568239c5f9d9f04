#include "records/AsItStood.h"

#include <algorithm>

namespace rackbook {

namespace {

void dropLater(std::optional<EdtfDate>& date, CivilMinute asOf) {
    if (isAfter(date, asOf))
        date.reset();
}

}  // namespace

bool isAfter(const std::optional<EdtfDate>& date, CivilMinute asOf) {
    return date && date->earliest() > asOf;
}

void standAt(Place& place, CivilMinute asOf) {
    place.light.erase(std::remove_if(place.light.begin(), place.light.end(),
                                     [&](const Light& light) { return isAfter(light.from, asOf); }),
                      place.light.end());
}

void standAt(Lot& lot, CivilMinute asOf) {
    dropLater(lot.openedOn, asOf);
    dropLater(lot.finishedOn, asOf);
}

void standAt(Balance& balance, CivilMinute asOf) {
    dropLater(balance.retiredOn, asOf);
}

void standAt(Mix& mix, CivilMinute asOf) {
    dropLater(mix.finishedOn, asOf);
}

// States lie in the order of cutting: none comes before one that was cut later.
void standAt(Block& block, CivilMinute asOf) {
    block.states.erase(
        std::find_if(block.states.begin(), block.states.end(),
                     [&](const BlockState& state) { return isAfter(state.cutOn, asOf); }),
        block.states.end());
    if (!isAfter(block.fateOn, asOf))
        return;
    block.fate = MatrixFate::kept;
    block.fateOn.reset();
}

void standAt(Impression& impression, CivilMinute asOf) {
    if (isAfter(impression.signedOn, asOf)) {
        impression.designation.reset();
        impression.designationKind.reset();
        impression.signedOn.reset();
    }
    if (!isAfter(impression.fateOn, asOf))
        return;
    impression.fate = ImpressionFate::kept;
    impression.fateOn.reset();
}

// What is left on the slab is weighed at the end.
void standAt(Pull& pull, CivilMinute asOf) {
    if (!isAfter(pull.end, asOf))
        return;
    pull.end.reset();
    pull.inkAfter_g.reset();
}

void standAt(Move& move, CivilMinute asOf) {
    dropLater(move.until, asOf);
}

RecordsThen::RecordsThen(const RecordSet& records, CivilMinute asOf)
    : m_records(records), m_asOf(asOf) {
    addUsed();
    addTransfers();
}

void RecordsThen::addUsed() {
    const auto use = [&](const auto& ref) {
        const auto* used = m_records.find(ref);
        if (used && !isThere(*used, m_asOf))
            m_lateButUsed.emplace(used->kind, used->id);
    };
    for (const Weighing& weighing : m_records.of<Weighing>())
        if (isThere(weighing, m_asOf)) {
            use(weighing.mix);
            use(weighing.fromMix);
            use(weighing.lot);
        }
    for (const Pull& pull : m_records.of<Pull>())
        if (isThere(pull, m_asOf))
            use(pull.portion);
    for (const Drawdown& drawdown : m_records.of<Drawdown>())
        if (isThere(drawdown, m_asOf)) {
            use(drawdown.mix);
            use(drawdown.lot);
        }
}

void RecordsThen::addTransfers() {
    for (const Transfer& transfer : m_records.of<Transfer>())
        for (const Ref<Impression>& impression : transfer.impressions) {
            if (isThere(transfer, m_asOf)) {
                m_received.emplace(impression.id, transfer.receiver.id);
                continue;
            }
            const Transfer*& first = m_firstLater[impression.id];
            if (!first || transfer.agreedOn.earliest() < first->agreedOn.earliest())
                first = &transfer;
        }
}

bool RecordsThen::wasUsed(RecordKind kind, const std::string& id) const {
    return !m_lateButUsed.empty() && m_lateButUsed.count({kind, id}) != 0;
}

std::optional<Ref<Party>> RecordsThen::holderOf(const Impression& impression) const {
    const auto later = m_firstLater.find(impression.id);
    if (later == m_firstLater.end())
        return impression.holder;
    const Ref<Party>& giver = later->second->giver;
    const Edition* edition = m_records.find(impression.edition);
    if (!edition)
        return giver;
    const bool hadComeBack = m_received.count({impression.id, giver.id}) != 0;
    const bool needsNoName =
        edition->maker == giver ||
        (!hadComeBack && (edition->printer == giver || edition->publisher == giver));
    return needsNoName ? std::nullopt : std::optional(giver);
}

void RecordsThen::standBeside(Layer& layer) const {
    const auto dropLaterOne = [&](auto& ref) {
        const auto* named = m_records.find(ref);
        if (named && !holds(*named))
            ref.reset();
    };
    dropLaterOne(layer.mix);
    dropLaterOne(layer.reading);
}

void RecordsThen::standBeside(Impression& impression) const {
    impression.holder = holderOf(impression);
}

RecordSet recordsAsOf(const RecordSet& records, CivilMinute asOf) {
    const RecordsThen then(records, asOf);
    RecordSet kept;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (const R& record : records.of<R>())
            if (then.holds(record))
                kept.add(then.copyOf(record));
    });
    return kept;
}

}  // namespace rackbook
