#include "exchange/Selection.h"

#include <array>
#include <stdexcept>
#include <unordered_set>

#include "records/FieldTraits.h"

namespace rackbook {

namespace {

class Selection {
public:
    explicit Selection(const RecordSet& records) : m_records(records) {}

    bool holds(RecordKind kind, const std::string& id) const {
        return m_ids[static_cast<std::size_t>(kind)].count(id) != 0;
    }

    // Takes a record and all that it names, and what those name.
    template <class R>
    void take(const std::string& id);

    // Takes the records for which `belongs` is true.
    template <class R, class F>
    void takeWhere(F&& belongs) {
        for (const R& record : m_records.of<R>())
            if (belongs(record))
                take<R>(record.id);
    }

    template <class R>
    bool holds(const std::optional<Ref<R>>& ref) const {
        return ref && holds(R::kind, ref->id);
    }

    std::vector<Record> inOrder() const {
        std::vector<Record> chosen;
        forEachRecordType([&](auto tag) {
            using R = typename decltype(tag)::Type;
            for (const R& record : m_records.of<R>())
                if (holds(R::kind, record.id))
                    chosen.emplace_back(record);
        });
        return chosen;
    }

private:
    const RecordSet& m_records;
    std::array<std::unordered_set<std::string>, std::size(EnumText<RecordKind>::names)> m_ids;
};

// Takes what the fields of a record name.
class Names {
public:
    explicit Names(Selection& selection) : m_selection(selection) {}

    template <class T>
    void operator()(const char*, const T& value) {
        take(value);
    }

private:
    template <class R>
    void take(const Ref<R>& ref) {
        m_selection.take<R>(ref.id);
    }
    template <class T>
    void take(const std::optional<T>& value) {
        if (value)
            take(*value);
    }
    template <class R>
    void take(const std::vector<Ref<R>>& refs) {
        for (const Ref<R>& ref : refs)
            take(ref);
    }
    template <class T>
    void take(const T&) {}

    Selection& m_selection;
};

template <class R>
void Selection::take(const std::string& id) {
    const R* record = m_records.find<R>(id);
    if (record == nullptr || !m_ids[static_cast<std::size_t>(R::kind)].insert(id).second)
        return;
    Names names(*this);
    R::fields(*record, names);
}

// Weighings name their mixes, not the other way round, and a weighing may bring in one more mix: so
// it goes on until a round brings in nothing.
void takeWeighings(const RecordSet& records, Selection& selection) {
    for (bool more = true; more;) {
        more = false;
        for (const Weighing& weighing : records.of<Weighing>()) {
            const bool wanted = selection.holds(RecordKind::mix, weighing.mix.id) &&
                                !selection.holds(RecordKind::weighing, weighing.id);
            if (!wanted)
                continue;
            selection.take<Weighing>(weighing.id);
            more = true;
        }
    }
}

}  // namespace

std::vector<Record> allRecords(const RecordSet& records) {
    std::vector<Record> all;
    forEachRecordType([&](auto tag) {
        for (const auto& record : records.of<typename decltype(tag)::Type>())
            all.emplace_back(record);
    });
    return all;
}

std::vector<Record> editionWithAll(const RecordSet& records, const std::string& editionId) {
    if (records.find<Edition>(editionId) == nullptr)
        throw std::out_of_range("no edition " + editionId);
    Selection selection(records);
    const auto ofEdition = [&](const auto& record) { return record.edition.id == editionId; };
    std::unordered_set<std::string> impressions;
    for (const Impression& impression : records.of<Impression>())
        if (ofEdition(impression))
            impressions.insert(impression.id);
    const auto concerns = [&](const std::vector<Ref<Impression>>& refs) {
        for (const Ref<Impression>& ref : refs)
            if (impressions.count(ref.id) != 0)
                return true;
        return false;
    };
    selection.takeWhere<Book>([](const Book&) { return true; });
    selection.take<Edition>(editionId);
    selection.takeWhere<Block>(ofEdition);
    selection.takeWhere<Layer>(ofEdition);
    selection.takeWhere<Impression>(ofEdition);
    selection.takeWhere<Pull>([&](const Pull& pull) { return concerns(pull.impressions); });
    selection.takeWhere<Move>([&](const Move& move) { return concerns(move.impressions); });
    selection.takeWhere<Look>(
        [&](const Look& look) { return concerns(look.impressions) || concerns(look.standsFor); });
    selection.takeWhere<Transfer>(
        [&](const Transfer& transfer) { return concerns(transfer.impressions); });
    selection.takeWhere<Issue>([&](const Issue& issue) {
        return concerns(issue.impressions) || (issue.edition && issue.edition->id == editionId) ||
               selection.holds(issue.transfer) || selection.holds(issue.layer);
    });
    takeWeighings(records, selection);
    // A sheet about a mix alone; one about another edition's things is not wanted for the mix's
    // sake.
    selection.takeWhere<Issue>([&](const Issue& issue) {
        return selection.holds(issue.mix) && !issue.edition && issue.impressions.empty();
    });
    takeWeighings(records, selection);
    selection.takeWhere<StockTake>([&](const StockTake& stockTake) {
        return selection.holds(RecordKind::lot, stockTake.lot.id);
    });
    selection.takeWhere<Drawdown>([&](const Drawdown& drawdown) {
        return selection.holds(drawdown.mix) || selection.holds(drawdown.lot);
    });
    selection.takeWhere<Reading>([&](const Reading& reading) {
        return selection.holds(reading.drawdown) ||
               (reading.impression && impressions.count(reading.impression->id) != 0);
    });
    selection.takeWhere<Attachment>([&](const Attachment& attachment) {
        return (attachment.edition && attachment.edition->id == editionId) ||
               (attachment.impression && impressions.count(attachment.impression->id) != 0) ||
               selection.holds(attachment.drawdown);
    });
    return selection.inOrder();
}

}  // namespace rackbook
