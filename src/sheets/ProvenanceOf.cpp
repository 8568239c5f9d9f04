#include "sheets/ProvenanceOf.h"
#include "records/TransferMove.h"

#include <algorithm>

namespace rackbook {

namespace {

bool isWithinStudio(MoveWhy why) {
    return why == MoveWhy::hang || why == MoveWhy::store || why == MoveWhy::other;
}

template <class T, class At>
void sortByTime(std::vector<T>& things, At&& at) {
    std::stable_sort(things.begin(), things.end(),
                     [&](const T& a, const T& b) { return at(a).earliest() < at(b).earliest(); });
}

// Takes out the first that carries out what was agreed, from the day of the agreement on.
void dropCarryingOut(std::vector<ProvenanceStep>& moves, const ProvenanceStep& agreed) {
    const auto found = std::find_if(moves.begin(), moves.end(), [&](const ProvenanceStep& move) {
        return move.why == agreed.why && move.on.latest() >= agreed.on.earliest();
    });
    if (found != moves.end())
        moves.erase(found);
}

}  // namespace

ProvenanceOf::ProvenanceOf(const RecordSet& records, CivilMinute asOf, bool namesHolders)
    : m_records(records), m_asOf(asOf), m_namesHolders(namesHolders) {
    for (const Transfer& transfer : records.of<Transfer>())
        for (const Ref<Impression>& impression : transfer.impressions)
            m_rows[impression.id].transfers.push_back(&transfer);
    for (const Move& move : records.of<Move>())
        for (const Ref<Impression>& impression : move.impressions)
            m_rows[impression.id].moves.push_back(&move);
    for (auto& [id, rows] : m_rows) {
        sortByTime(rows.transfers,
                   [](const Transfer* t) -> const EdtfDate& { return t->agreedOn; });
        sortByTime(rows.moves, [](const Move* m) -> const EdtfDate& { return m->at; });
    }
}

bool ProvenanceOf::isOutOfHands(const Ref<Place>& ref) const {
    const Place* place = m_records.find(ref);
    for (std::size_t steps = 0; place && steps <= m_records.of<Place>().size(); ++steps) {
        if (place->holder || place->placeKind == PlaceKind::gallery ||
            place->placeKind == PlaceKind::holderAddress)
            return true;
        place = m_records.find(place->within);
    }
    return false;
}

std::vector<ProvenanceStep> ProvenanceOf::movesOf(const Rows& rows, CivilMinute upTo) const {
    std::vector<ProvenanceStep> steps;
    bool wasOut = false;
    for (const Move* move : rows.moves) {
        if (move->at.earliest() > upTo)
            break;
        const bool isOut = isOutOfHands(move->to);
        const bool crosses = isOut != wasOut;
        wasOut = isOut;
        if (isWithinStudio(move->why) && !crosses)
            continue;
        ProvenanceStep step{move->at, move->why, {}, {}};
        if (isWithinStudio(move->why))
            step.why = isOut ? MoveWhy::other : MoveWhy::giveBack;
        const Place* to = m_records.find(move->to);
        if (m_namesHolders && isOut && to)
            step.to = to->name;
        steps.push_back(std::move(step));
    }
    return steps;
}

std::vector<ProvenanceStep> ProvenanceOf::stepsOf(const std::string& impression) const {
    const auto found = m_rows.find(impression);
    if (found == m_rows.end())
        return {};
    std::vector<ProvenanceStep> moves = movesOf(found->second, m_asOf);
    std::vector<ProvenanceStep> steps;
    for (const Transfer* transfer : found->second.transfers) {
        if (transfer->agreedOn.earliest() > m_asOf)
            break;
        ProvenanceStep step{
            transfer->agreedOn, moveWhyOf(transfer->transferKind), {}, transfer->dueOn};
        const Party* receiver = m_records.find(transfer->receiver);
        if (m_namesHolders && receiver)
            step.to = receiver->name;
        dropCarryingOut(moves, step);
        steps.push_back(std::move(step));
    }
    steps.insert(steps.end(), moves.begin(), moves.end());
    sortByTime(steps, [](const ProvenanceStep& step) -> const EdtfDate& { return step.on; });
    return steps;
}

std::optional<EdtfDate> ProvenanceOf::lastPlacedOn(const std::string& impression) const {
    const auto found = m_rows.find(impression);
    std::optional<EdtfDate> last;
    if (found == m_rows.end())
        return last;
    for (const Move* move : found->second.moves)
        if (move->at.earliest() <= m_asOf)
            last = move->at;
    return last;
}

bool ProvenanceOf::isTold(const std::string& impression) const {
    const auto found = m_rows.find(impression);
    return found != m_rows.end() &&
           (!found->second.transfers.empty() || !movesOf(found->second, endOfTime).empty());
}

}  // namespace rackbook
