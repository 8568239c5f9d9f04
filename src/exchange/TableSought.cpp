#include "exchange/TableSought.h"

#include <algorithm>

#include "base/Text.h"
#include "exchange/FitId.h"

namespace rackbook {

void SoughtRecords::forgetFrom(std::size_t record, std::size_t change) {
    m_sought.erase(std::remove_if(m_sought.begin(), m_sought.end(),
                                  [&](const Sought& sought) {
                                      return sought.index >= (sought.isChange ? change : record);
                                  }),
                   m_sought.end());
}

void SoughtRecords::find(std::vector<RowObject>& records, std::vector<RowObject>& changes) {
    for (const Sought& sought : m_sought) {
        RowObject& object = (sought.isChange ? changes : records)[sought.index];
        const std::set<std::string>& ids =
            textsOf(sought.kind, sought.by, records)[comparedText(sought.text)];
        if (ids.size() == 1)
            object.object[sought.at] = *ids.begin();
        else
            refuse(sought, object.record.row, ids);
    }
}

void SoughtRecords::refuse(const Sought& sought, std::size_t row,
                           const std::set<std::string>& ids) {
    if (!sought.isChange)
        m_made.unread.emplace(sought.index, sought.field);
    const std::string kind = textOf(sought.kind);
    if (ids.empty())
        m_made.findings.push_back(
            {row, sought.column, "no " + kind + " has this " + sought.by, sought.text,
             "Write it as the book has it, or enter the " + kind + " first."});
    else
        m_made.findings.push_back({row, sought.column,
                                   "more than one " + kind + " has this " + sought.by + ": " +
                                       joined({ids.begin(), ids.end()}),
                                   sought.text, "Say which by its id."});
}

// By compared text, out of the book and of what this table makes.
SoughtRecords::Texts& SoughtRecords::textsOf(RecordKind kind, const std::string& field,
                                             const std::vector<RowObject>& records) {
    const auto [found, isFresh] = m_texts.emplace(std::pair(kind, field), Texts{});
    Texts& texts = found->second;
    if (!isFresh)
        return texts;
    for (const auto& [id, text] : m_standing.textsOf(kind, field))
        texts[comparedText(text)].insert(id);
    for (const RowObject& made : records) {
        const Json& object = made.object;
        if (made.record.kind != kind || !object.contains(field) || !object[field].is_string())
            continue;
        std::string text = object[field].get<std::string>();
        if (kind == RecordKind::impression && field == "designation" && object.contains("edition"))
            text = object["edition"].get<std::string>() + " " + text;
        texts[comparedText(text)].insert(made.record.id);
    }
    return texts;
}

}  // namespace rackbook
