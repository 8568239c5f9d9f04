// Finds the records of a book that belong to one sheet. Private to exchange/.
#pragma once

#include <array>
#include <set>
#include <string>
#include <unordered_set>

#include "exchange/SheetLight.h"
#include "exchange/SheetRecords.h"

namespace rackbook {

class SheetGathering {
public:
    // All must outlive it.
    SheetGathering(const SheetIndexes& indexes, const RecordsThen& then, const Withheld& withheld,
                   const SheetDepth& depth, CivilMinute asOf);

    void takeFor(const SheetAbout& about);

    // Positions of the records of a kind.
    const std::set<std::size_t>& taken(RecordKind kind) const { return m_taken[numberOf(kind)]; }

    // Whether that impression's own record belongs to the sheet.
    bool hasImpression(const std::string& id) const { return m_impressions.count(id) != 0; }

    // Whether the sheet speaks of its light.
    bool isJudged(const std::string& id) const { return m_judged.count(id) != 0; }

    // Whether pulls are those of single impressions, or of mixes: not who else was printed.
    bool listsOwnPulls() const { return m_listsOwnPulls; }

private:
    using ById = SheetIndexes::ById;

    static constexpr std::size_t kinds = std::size(EnumText<RecordKind>::names);
    static std::size_t numberOf(RecordKind kind) { return static_cast<std::size_t>(kind); }

    // With all that it names, but for impressions: those named together with a wanted one are not
    // what the sheet is about.
    template <class R>
    void take(std::size_t position);
    template <class R>
    void take(const std::string& id);
    template <class R>
    void takeAll(const ById& index, const std::string& id);
    template <class R>
    void takeEvery();

    // Weighings name their mixes, not the other way round.
    void takeWhatIsBehind(const Mix& mix);
    void takeWhatIsBehind(const Drawdown& drawdown);
    void takeWhatIsBehind(const Impression& impression);
    template <class R>
    void takeWhatIsBehind(const R&) {}

    void takeSubject(const SheetAbout& about);
    void takeWholeBook();
    void takeEdition(const std::string& id);
    void takeMixesOf(const std::string& edition);
    void takeImpression(const std::string& id);
    void takeImpressionsOf(const std::string& edition);
    void takeTransfer(const std::string& id);
    void takePlace(const std::string& id);
    void takeLyingAt(const std::string& place);
    void takeLight();

    struct Follower;

    const SheetIndexes& m_indexes;
    const RecordSet& m_records;
    const RecordsThen& m_then;
    const Withheld& m_withheld;
    const SheetDepth& m_depth;
    CivilMinute m_asOf;
    std::array<std::set<std::size_t>, kinds> m_taken;
    std::unordered_set<std::string> m_impressions;  // taken, by id
    std::set<std::string> m_judged;  // impressions, by id, whose light the sheet speaks of
    bool m_listsOwnPulls = false;
};

}  // namespace rackbook
