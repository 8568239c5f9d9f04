#include "exchange/TableFields.h"

#include <map>

#include "records/Designation.h"

namespace rackbook {

namespace {

void addDesignationKind(Json& object, RecordKind kind) {
    if (kind != RecordKind::impression || object.contains("designationKind") ||
        !object.contains("designation"))
        return;
    if (const auto meant = designationKindOf(object["designation"].get<std::string>()))
        object["designationKind"] = textOf(*meant);
}

// A pattern names one record, also where many may stand.
bool isSplit(const FieldRule& rule, const FoundField& found) {
    return found.field->isList && !(found.field->form == FieldForm::reference &&
                                    rule.value.source == ValueRule::Source::pattern);
}

}  // namespace

void RowFields::fill(const RecordRule& rule, const RowTarget& target, Json& object) {
    std::map<std::string, std::map<std::size_t, Json>> parts;
    for (const FieldRule& one : rule.fields) {
        const FoundField found = *fieldAt(rule.kind, one.path);
        Json value = valueOf(one, found, target);
        if (value.is_null())
            continue;
        if (found.part)
            parts[found.name][*found.part][found.partField] = std::move(value);
        else
            object[found.name] = std::move(value);
    }
    for (auto& [name, items] : parts) {
        Json list = Json::array();
        for (auto& [position, item] : items)
            list.push_back(std::move(item));
        object[name] = std::move(list);
    }
    addDesignationKind(object, rule.kind);
}

// Null where the cell is empty.
Json RowFields::valueOf(const FieldRule& rule, const FoundField& found, const RowTarget& target) {
    const std::vector<std::string> texts = textsOf(rule, found, target);
    if (texts.empty())
        return nullptr;
    const Json::json_pointer at("/" + found.name);
    if (!found.field->isList)
        return itemOf(texts[0], rule, found, target, at);
    Json list = Json::array();
    for (const std::string& text : texts)
        list.push_back(itemOf(text, rule, found, target, at / list.size()));
    return list;
}

std::vector<std::string> RowFields::textsOf(const FieldRule& rule, const FoundField& found,
                                            const RowTarget& target) {
    const bool isId = found.field->form == FieldForm::reference;
    std::vector<std::string> texts;
    if (!rule.value.numbers) {
        const auto text = m_cells.text(rule.value, target.cells, target.number, isId);
        if (text && isSplit(rule, found))
            texts = itemsIn(*text, *found.field);
        else if (text)
            texts.push_back(*text);
        return texts;
    }
    const NumbersRule& counted = *rule.value.numbers;
    const CellValue<std::vector<int>> numbers = m_cells.numbers(counted, target.cells);
    if (!numbers.value) {
        const std::string written = m_cells.cell(target.cells, counted.column);
        refuse(target, found.name, counted.column, written, numbers.what, numbers.remedy);
        return {written};
    }
    for (const int number : *numbers.value)
        if (const auto text = m_cells.text(rule.value, target.cells, number, isId))
            texts.push_back(*text);
    return texts;
}

Json RowFields::itemOf(const std::string& text, const FieldRule& rule, const FoundField& found,
                       const RowTarget& target, const Json::json_pointer& at) {
    if (rule.value.find) {
        m_sought.add({target.isChange, target.index, at, found.name, *found.field->target,
                      *rule.value.find, text, headingsOf(rule.value)});
        return text;
    }
    CellValue<Json> value = m_cells.valueIn(text, *found.field, rule.value);
    if (value.value)
        return std::move(*value.value);
    refuse(target, found.name, headingsOf(rule.value), text, value.what, value.remedy);
    return text;
}

void RowFields::refuse(const RowTarget& target, const std::string& field, const std::string& column,
                       const std::string& value, std::string what, std::string remedy) {
    m_made.findings.push_back({target.row, column, std::move(what), value, std::move(remedy)});
    if (!target.isChange)
        m_made.unread.emplace(target.index, field);
}

}  // namespace rackbook
