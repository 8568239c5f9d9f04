#include "commands/TableReport.h"

#include <algorithm>
#include <set>

#include "base/Text.h"
#include "cli/Table.h"
#include "commands/Contacts.h"
#include "commands/FieldText.h"
#include "commands/Paragraph.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t rowsShown = 3;

std::string separatorWords(char separator) {
    switch (separator) {
        case '\t':
            return "tabs";
        case ';':
            return "semicolons";
        case ',':
            return "commas";
        default:
            break;
    }
    return std::string(1, separator);
}

std::string encodingWords(const TableFile& table) {
    if (table.encodingIsGuess)
        return table.encoding + ", a guess: the bytes are no UTF-8; look at the accents below";
    return table.encoding + (table.hasMark ? ", by its byte order mark" : "");
}

std::size_t widestOf(const TableFile& table) {
    std::size_t most = 0;
    for (const CsvRow& row : table.rows)
        most = std::max(most, row.fields.size());
    return most;
}

std::string shown(const TableFile& table, std::size_t row, std::size_t column) {
    if (row >= table.rows.size() || column >= table.rows[row].fields.size())
        return {};
    std::string text = cellText(table.rows[row].fields[column], false);
    std::replace(text.begin(), text.end(), '\n', ' ');
    return excerpt(text);
}

std::size_t filledCells(const TableFile& table, std::size_t column) {
    return static_cast<std::size_t>(
        std::count_if(table.rows.begin(), table.rows.end(), [&](const CsvRow& row) {
            return column < row.fields.size() && !cellText(row.fields[column], false).empty();
        }));
}

}  // namespace

void printTableFile(Console& console, const TableFile& table) {
    const std::size_t columns = widestOf(table);
    console.out() << printable(table.name) << ": " << table.rows.size()
                  << (table.rows.size() == 1 ? " row, " : " rows, ") << columns
                  << (columns == 1 ? " column\n" : " columns\n");
    Table found({{"what"}, {"found"}});
    found.addRow({"encoding", encodingWords(table)});
    found.addRow({"parted by", separatorWords(table.separator)});
    console.out() << found.text(console.width(), {}) << "\n";
    std::vector<Column> headings = {{"column", Align::right}};
    for (std::size_t row = 0; row <= rowsShown; ++row)
        headings.push_back({"row " + std::to_string(row + 1)});
    headings.push_back({"filled", Align::right});
    Table rows(headings);
    for (std::size_t column = 0; column < columns; ++column) {
        std::vector<std::string> cells = {std::to_string(column + 1)};
        for (std::size_t row = 0; row <= rowsShown; ++row)
            cells.push_back(shown(table, row, column));
        cells.push_back(std::to_string(filledCells(table, column)));
        rows.addRow(cells);
    }
    console.out() << "First rows\n" << rows.text(console.width(), "The table has no columns.");
}

Tree treeOf(const TableFile& table) {
    Tree tree = Tree::object();
    tree.set("file", table.name).set("encoding", table.encoding);
    tree.set("encodingIsGuess", table.encodingIsGuess);
    tree.set("separator", std::string(1, table.separator));
    tree.set("rows", table.rows.size());
    Tree columns = Tree::array();
    for (std::size_t column = 0; column < widestOf(table); ++column) {
        Tree first = Tree::array();
        for (std::size_t row = 0; row <= rowsShown; ++row)
            first.add(shown(table, row, column));
        columns.add(Tree::object()
                        .set("column", column + 1)
                        .set("firstRows", std::move(first))
                        .set("filled", filledCells(table, column)));
    }
    tree.set("columns", std::move(columns));
    return tree;
}

Tree treeOf(const MadeFromTable& made, const std::vector<IncomingRecord>& records) {
    Tree tree = Tree::object();
    tree.set("rowsRead", made.rowsRead).set("rowsLeftOut", made.rowsLeftOut);
    tree.set("changesLeftOut", made.changesLeftOut);
    Tree list = Tree::array();
    for (const IncomingRecord& incoming : records) {
        const TableRecord& from = made.records[incoming.position];
        Record record = incoming.record;
        withholdContact(record);
        list.add(Tree::object().set("row", from.row + 1).set("record", treeOf(record)));
    }
    tree.set("records", std::move(list));
    return tree;
}

namespace {

const std::string& textAt(const Tree& tree, const char* name) {
    static const std::string none;
    const Tree* member = tree.find(name);
    return member && member->asText() ? *member->asText() : none;
}

std::string unitsTakenOff(const Tree& mapping, const std::string& heading) {
    std::set<std::string> units;
    for (const Tree& record : *mapping.find("records")->asArray())
        for (const auto& [field, rule] : *record.find("fields")->asObject())
            if (const Tree* taken = rule.find("units"); taken && textAt(rule, "column") == heading)
                for (const Tree& unit : *taken->asArray())
                    units.insert(*unit.asText());
    return joined({units.begin(), units.end()});
}

// "party {Maker} where it is new, edition {Code}, impression {Code}/{#2} for each of "Size"".
std::string madeOfRow(const Tree& mapping) {
    std::vector<std::string> made;
    for (const Tree& record : *mapping.find("records")->asArray()) {
        std::string words = textAt(record, "record") + " " + textAt(record, "id");
        if (record.find("ifNew"))
            words += " where it is new";
        if (const Tree* numbers = record.find("numbers"))
            words += " for each of column \"" + textAt(*numbers, "column") + "\"";
        if (record.find("changedOn"))
            words += ", changed";
        made.push_back(printable(words));
    }
    return joined(made, "; and ");
}

}  // namespace

void printProposal(Console& console, const TableProposal& proposal, const std::string& file) {
    std::vector<std::vector<std::string>> rows;
    for (const auto& [heading, field] : proposal.matched)
        rows.push_back({heading, field, unitsTakenOff(proposal.mapping, heading)});
    for (const std::string& heading : proposal.passedOver)
        rows.push_back({heading, "not taken", ""});
    std::vector<Column> columns = {{"column"}, {"field"}};
    if (std::any_of(rows.begin(), rows.end(), [](const auto& row) { return !row[2].empty(); }))
        columns.push_back({"unit taken off"});
    Table table(columns);
    for (std::vector<std::string>& row : rows) {
        row.resize(columns.size());
        table.addRow(row);
    }
    console.out() << table.text(console.width(), "No column was understood.");
    printParagraph(console, "Each row becomes " + madeOfRow(proposal.mapping) +
                                ". What is not wanted is taken out of \"records\".");
    console.out() << "\nWritten: " << printable(file) << ".\n";
    if (!proposal.toFillIn.empty())
        console.out() << "Still to be filled in where it says \"?\": "
                      << printable(joined(proposal.toFillIn)) << ".\n";
}

void printPreview(Console& console, const MadeFromTable& made,
                  const std::vector<IncomingRecord>& records) {
    Table table({{"row", Align::right}, {"record"}, {"what it says"}});
    std::set<std::size_t> rows;
    for (std::size_t i = 0; i < records.size();) {
        const TableRecord& from = made.records[records[i].position];
        rows.insert(from.row);
        if (rows.size() > rowsShown)
            break;
        std::size_t alike = i + 1;
        while (alike < records.size() && made.records[records[alike].position].row == from.row &&
               made.records[records[alike].position].rule == from.rule)
            ++alike;
        Record record = records[i].record;
        withholdContact(record);
        const std::string row = std::to_string(from.row + 1);
        table.addRow({row, nameOf(from.kind, from.id), fieldsInOneLine(record)});
        if (alike - i > 1)
            table.addRow({row,
                          "… " + nameOf(from.kind, made.records[records[alike - 1].position].id),
                          std::to_string(alike - i - 1) + " more like it"});
        i = alike;
    }
    console.out() << "What the first rows become\n"
                  << table.text(console.width(), "They become nothing.") << "\n";
}

void printRowTally(Console& console, const MadeFromTable& made) {
    console.out() << made.rowsRead << (made.rowsRead == 1 ? " row was read" : " rows were read");
    if (made.rowsLeftOut > 0)
        console.out() << ", " << made.rowsLeftOut << " left out as the mapping says";
    console.out() << ".\n";
    if (made.changesLeftOut > 0)
        console.out()
            << made.changesLeftOut << (made.changesLeftOut == 1 ? " change was" : " changes were")
            << " left out, because the records of the same rows are in the book already.\n";
}

}  // namespace rackbook
