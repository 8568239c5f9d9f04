// Records as they stood on a day: what came, ended, was signed or was cut later had not yet.
#pragma once

#include <set>
#include <string>
#include <unordered_map>
#include <utility>

#include "base/CivilTime.h"
#include "records/HappenedAt.h"
#include "records/RecordSet.h"

namespace rackbook {

// Whether it had not come yet at the end of asOf; what has no date had.
bool isAfter(const std::optional<EdtfDate>& date, CivilMinute asOf);

// Unlike the journal's moment of a record, also the day on which something that lasts came to be.
struct CameOn : HappenedAt {
    using HappenedAt::operator();
    const EdtfDate* operator()(const Lot& r) const { return known(r.boughtOn); }
    const EdtfDate* operator()(const Mix& r) const { return known(r.madeOn); }
    const EdtfDate* operator()(const Attachment& r) const { return known(r.takenOn); }
};

// Whether the record was there at the end of asOf: what it is about had happened, the mix was made,
// the tin bought, the photograph taken. What has no date was there.
template <class R>
bool isThere(const R& record, CivilMinute asOf) {
    const EdtfDate* date = CameOn{}(record);
    return !date || date->earliest() <= asOf;
}

// Takes out of a record what dates in it say came after asOf. What has no date, such as whether an
// edition is closed, is as it is today.
template <class R>
void standAt(R&, CivilMinute) {}

void standAt(Place& place, CivilMinute asOf);
void standAt(Lot& lot, CivilMinute asOf);
void standAt(Balance& balance, CivilMinute asOf);
void standAt(Mix& mix, CivilMinute asOf);
void standAt(Block& block, CivilMinute asOf);
void standAt(Impression& impression, CivilMinute asOf);
void standAt(Pull& pull, CivilMinute asOf);
void standAt(Move& move, CivilMinute asOf);

// The records of a book as they stood at the end of a day, each by itself. The book must outlive
// it.
class RecordsThen {
public:
    RecordsThen(const RecordSet& records, CivilMinute asOf);

    // Whether it was there. A lot or a mix that had been used by then was, whatever day its own
    // record says.
    template <class R>
    bool holds(const R& record) const {
        return isThere(record, m_asOf) || wasUsed(R::kind, record.id);
    }

    // As standAt leaves it, and as other records say: a layer names no mix and no reading that
    // came later, and an impression is with whoever had it then.
    template <class R>
    R copyOf(R record) const {
        standAt(record, m_asOf);
        standBeside(record);
        return record;
    }

    // Who had the impression: until it is first handed over after asOf, that is the giver. Who
    // made, printed or published it has it without being named, unless it had come back to them.
    std::optional<Ref<Party>> holderOf(const Impression& impression) const;

private:
    bool wasUsed(RecordKind kind, const std::string& id) const;
    void addUsed();
    void addTransfers();

    template <class R>
    void standBeside(R&) const {}
    void standBeside(Layer& layer) const;
    void standBeside(Impression& impression) const;

    const RecordSet& m_records;
    CivilMinute m_asOf;
    std::set<std::pair<RecordKind, std::string>> m_lateButUsed;     // lots and mixes
    std::unordered_map<std::string, const Transfer*> m_firstLater;  // by impression
    std::set<std::pair<std::string, std::string>> m_received;       // impression and party, by asOf
};

// Without what came after asOf, the rest as it stood.
RecordSet recordsAsOf(const RecordSet& records, CivilMinute asOf);

}  // namespace rackbook
