#include "calc/MixLedger.h"

#include <algorithm>

#include "calc/LedgerRun.h"

namespace rackbook {

LedgerQuestion ledgerByLot(const History& history, CivilMinute upTo) {
    std::vector<int> constituents(history.lots.size());
    for (std::size_t lot = 0; lot < constituents.size(); ++lot)
        constituents[lot] = static_cast<int>(lot);
    return {history.weighings, history.pulls, history.mixCount, std::move(constituents), upTo};
}

LedgerQuestion ledgerByKind(const History& history, CivilMinute upTo) {
    std::vector<int> constituents(history.lots.size());
    for (std::size_t lot = 0; lot < constituents.size(); ++lot)
        constituents[lot] = static_cast<int>(history.lots[lot]);
    return {history.weighings, history.pulls, history.mixCount, std::move(constituents), upTo};
}

bool MixContents::isKnown() const {
    return unrecorded.best == 0 && std::all_of(parts.begin(), parts.end(), [](const MixPart& part) {
               return part.share.isKnown();
           });
}

MixLedger::MixLedger(const LedgerQuestion& question)
    : m_order(mixOrder(question.weighings, question.pulls, question.mixCount, question.upTo)) {
    LedgerRun(question, *this).run();
}

MixLedger::Row MixLedger::rowAtPull(std::size_t pull) const {
    return {static_cast<std::size_t>(m_portionOfPull[pull]), &m_kept[m_keptBegin[pull] + 1]};
}

MixContents MixLedger::atPull(std::size_t pull) const {
    if (!isKept(pull))
        return {Estimate::anyMass(), {}, Estimate::anyShare()};
    return contentsOf(rowAtPull(pull), m_kept[m_keptBegin[pull]]);
}

Estimate MixLedger::shareAtPull(std::size_t pull, int constituent) const {
    return isKept(pull) ? shareIn(rowAtPull(pull), constituent) : Estimate::anyShare();
}

MixContents MixLedger::atEnd(std::size_t mix) const {
    return contentsOf(rowAtEnd(mix), m_total_g[mix]);
}

Estimate MixLedger::shareAtEnd(std::size_t mix, int constituent) const {
    return shareIn(rowAtEnd(mix), constituent);
}

// What was never recorded could be any of the constituents.
Estimate MixLedger::shareIn(Row row, int constituent) const {
    const Columns columns = m_columnsOf[row.mix];
    const Estimate& unrecorded = row.shares[0];
    const auto first = m_constituents.begin() + static_cast<std::ptrdiff_t>(columns.begin) + 1;
    const auto last = first + static_cast<std::ptrdiff_t>(columns.count) - 1;
    const auto found = std::lower_bound(first, last, constituent);
    Estimate share = Estimate::exactly(0);
    if (found != last && *found == constituent)
        share = row.shares[1 + (found - first)];
    return {share.low, unrecorded.best == 0 ? share.best : notKnown,
            std::min(1.0, share.high + unrecorded.high)};
}

MixContents MixLedger::contentsOf(Row row, const Estimate& total_g) const {
    const Columns columns = m_columnsOf[row.mix];
    MixContents contents{total_g, {}, row.shares[0]};
    contents.parts.reserve(columns.count - 1);
    for (std::size_t c = 1; c < columns.count; ++c) {
        const int constituent = m_constituents[columns.begin + c];
        contents.parts.push_back({constituent, shareIn(row, constituent)});
    }
    return contents;
}

}  // namespace rackbook
