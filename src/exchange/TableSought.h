// Records that the rows of a table name by what stands in a field of theirs, such as a party by
// its name. Private to exchange/.
#pragma once

#include <map>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "exchange/JsonText.h"
#include "exchange/TableRecords.h"

namespace rackbook {

// What a row makes: a record, or what changes of one.
struct RowObject {
    TableRecord record;
    Json object;
};

struct Sought {
    bool isChange = false;
    std::size_t index = 0;  // of the record or the change that names it
    Json::json_pointer at;
    std::string field;  // of that record, for messages
    RecordKind kind = RecordKind::book;
    std::string by;
    std::string text;
    std::string column;
};

class SoughtRecords {
public:
    SoughtRecords(const StandingRecords& standing, MadeFromTable& made)
        : m_standing(standing), m_made(made) {}

    void add(Sought sought) { m_sought.push_back(std::move(sought)); }
    // Forgets what was sought for records from `record` and changes from `change` on.
    void forgetFrom(std::size_t record, std::size_t change);
    // Puts the ids where they belong; what is not found, or twice, is refused.
    void find(std::vector<RowObject>& records, std::vector<RowObject>& changes);

private:
    using Texts = std::unordered_map<std::string, std::set<std::string>>;
    Texts& textsOf(RecordKind kind, const std::string& field,
                   const std::vector<RowObject>& records);
    void refuse(const Sought& sought, std::size_t row, const std::set<std::string>& ids);

    const StandingRecords& m_standing;
    MadeFromTable& m_made;
    std::vector<Sought> m_sought;
    std::map<std::pair<RecordKind, std::string>, Texts> m_texts;
};

}  // namespace rackbook
