// Records for eyes outside the studio.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "records/RecordSet.h"

namespace rackbook {

struct PrivacyChoice {
    bool namesHolders = false;    // who holds what, and where that is
    bool tellsTransfers = false;  // their parties, prices and terms
};

// Contacts, notes, what was paid for ink and to whom, the studio's coordinates, and documents that
// were handed out, always; who holds an impression, and the prices and terms of transfers, where
// they are not chosen.
bool isPrivate(RecordKind kind, std::string_view field, const PrivacyChoice& choice);

// Takes the private fields out of a record and of the parts in it.
void withoutPrivate(Record& record, const PrivacyChoice& choice);

// What stands on one sheet instead of names: withheld-1, withheld-2 … in the order asked for.
class WithheldNames {
public:
    const std::string& nameFor(RecordKind kind, const std::string& id);

private:
    std::map<std::pair<RecordKind, std::string>, std::string> m_names;
};

// Places out of the studio's hands, and the parties of transfers, under a choice.
class Withheld {
public:
    Withheld(const RecordSet& records, const PrivacyChoice& choice);

    bool isPlace(const std::string& id) const { return m_places.count(id) != 0; }
    bool areParties() const { return m_areParties; }

    // Puts those names wherever the record names one of them, or is one. Whether it did.
    bool rename(Record& record, WithheldNames& names) const;

private:
    std::set<std::string> m_places;
    bool m_areParties = false;
};

}  // namespace rackbook
