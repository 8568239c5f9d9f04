#include "exchange/ProposalColumns.h"

#include <algorithm>
#include <map>

#include "exchange/FieldForms.h"
#include "exchange/FitId.h"
#include "exchange/TableDates.h"
#include "exchange/TableHeadings.h"

namespace rackbook {

namespace {

TableMapping mappingFor(const TableFile& table) {
    constexpr std::size_t looked = 20;
    std::vector<std::size_t> filled;
    for (std::size_t row = 0; row < std::min(looked, table.rows.size()); ++row) {
        const std::vector<std::string>& fields = table.rows[row].fields;
        filled.push_back(static_cast<std::size_t>(std::count_if(
            fields.begin(), fields.end(),
            [](const std::string& field) { return !cellText(field, false).empty(); })));
    }
    TableMapping mapping;
    const std::size_t most = filled.empty() ? 0 : *std::max_element(filled.begin(), filled.end());
    const auto first = std::find_if(filled.begin(), filled.end(), [&](std::size_t count) {
        return 10 * count >= 7 * most;  // our reading: titles fill a cell or two
    });
    mapping.skipRows = static_cast<std::size_t>(first - filled.begin());
    return mapping;
}

// Points and commas in numbers, in this order. A mark is decimal where it stands once and before
// other than three digits, or behind the other mark.
struct MarksSeen {
    bool seen[2] = {false, false};
    bool decimal[2] = {false, false};

    void look(const std::string& cell) {
        const std::size_t last = cell.find_last_of(".,");
        if (last == std::string::npos)
            return;
        const std::size_t mark = cell[last] == ',' ? 1 : 0;
        const auto times = std::count(cell.begin(), cell.end(), cell[last]);
        const bool hasOther = cell.find(mark == 1 ? '.' : ',') != std::string::npos;
        std::size_t digits = last + 1;
        while (digits < cell.size() && cell[digits] >= '0' && cell[digits] <= '9')
            ++digits;
        seen[mark] = true;
        seen[1 - mark] = seen[1 - mark] || hasOther;
        decimal[mark] = decimal[mark] || (times == 1 && (hasOther || digits - last - 1 != 3));
    }
};

}  // namespace

ProposalColumns::ProposalColumns(const TableFile& table, RecordKind kind)
    : m_table(table), m_kind(kind), m_mapping(mappingFor(table)), m_columns(table, m_mapping) {
    m_areOwn = std::all_of(m_columns.names().begin(), m_columns.names().end(),
                           [this](const std::string& name) { return isField(name); });
    for (std::size_t i = 0; i < m_columns.count(); ++i)
        match(i);
}

std::vector<std::string> ProposalColumns::cellsOf(std::size_t column) const {
    std::vector<std::string> cells;
    for (std::size_t row = m_columns.firstRow(); row < m_table.rows.size(); ++row)
        if (column < m_table.rows[row].fields.size() && !isEmptyRow(m_table.rows[row]))
            cells.push_back(cellText(m_table.rows[row].fields[column], false));
    return cells;
}

bool ProposalColumns::isField(const std::string& path) const {
    return fieldAt(m_kind, path).has_value();
}

std::optional<std::string> ProposalColumns::fieldFor(const std::string& heading) const {
    if (isField(heading))
        return heading;
    for (const std::string& field : fieldsHeaded(headingWordsOf(heading).words)) {
        const bool isSize = field == "imageSize" || field == "sheetSize";
        const bool isOfSheets = m_kind == RecordKind::transfer && field == "edition";
        const bool isLeftInLot = m_kind == RecordKind::lot && field == "mass_g";
        const bool fits =
            isSize ? m_kind == RecordKind::edition : isField(field) || isOfSheets || isLeftInLot;
        if (fits && !has(field))
            return field;
    }
    return std::nullopt;
}

void ProposalColumns::match(std::size_t column) {
    const std::string& heading = m_columns.nameOf(column);
    const std::optional<std::string> field =
        heading.empty() || !m_columns.find(heading) ? std::nullopt : fieldFor(heading);
    if (!field) {
        m_passedOver.push_back(heading);
        return;
    }
    m_columnOf[*field] = column;
    m_matched.emplace_back(heading, *field);
}

std::string ProposalColumns::tellingApart(const std::string& beginning) const {
    std::string pattern = beginning;
    std::vector<std::string> keys;
    for (std::size_t column = 0; column < m_columns.count(); ++column) {
        const std::vector<std::string> cells = cellsOf(column);
        const bool isFilled =
            !cells.empty() &&
            std::none_of(cells.begin(), cells.end(), [](const auto& cell) { return cell.empty(); });
        if (!isFilled || !m_columns.find(m_columns.nameOf(column)))
            continue;
        pattern += "-{" + m_columns.nameOf(column) + "}";
        keys.resize(cells.size());
        for (std::size_t i = 0; i < cells.size(); ++i)
            keys[i] += fitForId(cells[i]) + "\n";
        if (std::set<std::string>(keys.begin(), keys.end()).size() == keys.size())
            break;
    }
    return pattern;
}

// A letter behind one number of many is a slip of the hand ("2O"), and no unit: one that is not
// known must stand in most of the cells.
std::set<std::string> ProposalColumns::unitsIn(const std::string& field) const {
    std::map<std::string, std::size_t> counts;
    std::size_t filled = 0;
    for (const std::string& cell : cellsOf(field)) {
        filled += cell.empty() ? 0 : 1;
        const std::size_t digit = cell.find_last_of("0123456789");
        if (digit == std::string::npos)
            continue;
        const std::string unit = cellText(cell.substr(digit + 1), false);
        if (!unit.empty())
            ++counts[unit];
    }
    std::set<std::string> units;
    for (const auto& [unit, count] : counts)
        if (isKnownUnit(comparedText(unit)) || 2 * count > filled)
            units.insert(unit);
    return units;
}

std::string ProposalColumns::unitOf(const std::string& field) const {
    const std::string headed = headingWordsOf(headingOf(field)).unit;
    const std::set<std::string> units = unitsIn(field);
    if (!headed.empty() || units.size() != 1)
        return headed;
    return comparedText(*units.begin());
}

void ProposalColumns::addNumberForm(const std::vector<std::string>& fields, Tree& mapping) const {
    MarksSeen marks;
    for (const std::string& field : fields)
        for (const std::string& cell : cellsOf(field))
            marks.look(cell);
    // Our own tables never part thousands.
    const bool isComma = m_areOwn ? marks.seen[1] : marks.decimal[1] && !marks.decimal[0];
    if (isComma)
        mapping.set("decimal", "comma");
    if (!m_areOwn && marks.seen[isComma ? 0 : 1] && !marks.decimal[isComma ? 0 : 1])
        mapping.set("thousands", isComma ? "." : ",");
}

void ProposalColumns::addDateOrder(const std::vector<std::string>& fields, Tree& mapping) const {
    std::set<DateOrder> certain;
    for (const std::string& field : fields)
        for (const std::string& cell : cellsOf(field))
            if (const std::vector<DateOrder> orders = ordersOf(cell); orders.size() == 1)
                certain.insert(orders[0]);
    if (certain.size() != 1)
        return;
    const DateOrder order = *certain.begin();
    mapping.set("dates", order == DateOrder::dayMonthYear   ? "dmy"
                         : order == DateOrder::monthDayYear ? "mdy"
                                                            : "ymd");
}

}  // namespace rackbook
