// A book's records for those who are to learn nothing about people from them.
#pragma once

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "records/RecordSet.h"

namespace rackbook {

// Parties, places out of the studio's hands, transfers, issues, moves and attachments are called by
// their kind and their number in the book, wherever they are named, so that parts of a book written
// out one by one fit together. Contacts, the studio's name and coordinates, prices, and every free
// text are left out, or replaced by the word withheld where a record must have one.
class WithoutPeople {
public:
    // Of the whole book, whatever part of it is written.
    explicit WithoutPeople(const RecordSet& all);

    // Valid by the schemas, as the records were.
    Record of(const Record& record);
    std::vector<Record> of(const std::vector<Record>& records);
    RecordSet of(const RecordSet& records);

    // The names that records are called by instead; those not renamed keep their id.
    const std::string& nameFor(RecordKind kind, const std::string& id) const;

    // "party.contact" and how many were left out so far.
    const std::map<std::string, std::size_t>& leftOut() const { return m_leftOut; }
    // How many records of a kind were called otherwise so far.
    const std::map<RecordKind, std::size_t>& renamed() const { return m_renamed; }

private:
    class Cleaner;

    std::map<std::pair<RecordKind, std::string>, std::string> m_names;
    std::map<std::string, std::size_t> m_leftOut;
    std::map<RecordKind, std::size_t> m_renamed;
};

// What stands where a text must stand.
constexpr const char* withheldText = "withheld";

}  // namespace rackbook
