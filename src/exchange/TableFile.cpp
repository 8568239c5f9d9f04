#include "exchange/TableFile.h"

#include <algorithm>
#include <map>
#include <utility>

#include "base/Error.h"
#include "exchange/CsvWriter.h"

namespace rackbook {

namespace {

constexpr std::size_t rowsLookedAt = 200;
constexpr std::size_t bytesLookedAt = std::size_t{256} << 10;

// How well a separator parts the beginning of a table: without faults of grammar, and then into
// how many rows with the same number of fields, two or more; cells of text with commas in them part
// rows unevenly.
std::pair<bool, std::size_t> evenness(std::string_view beginning, bool isCut, char separator) {
    std::vector<CsvFault> faults;
    std::vector<CsvRow> rows = csvRows(beginning, separator, faults);
    rows.resize(std::min(rows.size(), rowsLookedAt));
    std::map<std::size_t, std::size_t> timesOf;
    for (const CsvRow& row : rows)
        if (row.fields.size() > 1)
            ++timesOf[row.fields.size()];
    std::size_t most = 0;
    for (const auto& [size, times] : timesOf)
        most = std::max(most, times);
    // Where the beginning was cut, a quoted field may be too.
    const bool isSound = faults.size() <= (isCut ? 1u : 0u);
    return {isSound && most > 0, most};
}

// Tabs and semicolons are tried first: a comma may be a decimal mark.
char separatorOf(std::string_view text) {
    const std::string_view beginning = text.substr(0, bytesLookedAt);
    char best = ',';
    std::pair<bool, std::size_t> most{false, 0};
    for (const char separator : {'\t', ';', ','}) {
        const auto even = evenness(beginning, beginning.size() < text.size(), separator);
        if (even > most) {
            most = even;
            best = separator;
        }
    }
    return best;
}

std::string withoutSpaces(std::string_view text) {
    constexpr std::string_view plain = " \t\n";
    constexpr std::string_view noBreak = "\u00A0";
    for (bool shorter = true; shorter;) {
        const std::size_t before = text.size();
        while (!text.empty() && plain.find(text.front()) != std::string_view::npos)
            text.remove_prefix(1);
        while (!text.empty() && plain.find(text.back()) != std::string_view::npos)
            text.remove_suffix(1);
        if (text.substr(0, noBreak.size()) == noBreak)
            text.remove_prefix(noBreak.size());
        if (text.size() >= noBreak.size() && text.substr(text.size() - noBreak.size()) == noBreak)
            text.remove_suffix(noBreak.size());
        shorter = text.size() < before;
    }
    return std::string(text);
}

// A cell's own line breaks are those of the program that wrote it.
void mendLineBreaks(std::string& field) {
    if (field.find('\r') == std::string::npos)
        return;
    std::string mended;
    for (std::size_t i = 0; i < field.size(); ++i)
        if (field[i] != '\r')
            mended += field[i];
        else if (i + 1 == field.size() || field[i + 1] != '\n')
            mended += '\n';
    field = std::move(mended);
}

}  // namespace

TableFile tableFileFrom(std::string_view bytes, const TableForm& form, const std::string& name) {
    const DecodedText decoded = decodedText(bytes, form.encoding, form.guess, name);
    if (decoded.text.front() == '<')
        throw InputError(name, "this is XML or a page of the web, no CSV text",
                         "Open it in the spreadsheet and save its sheet as CSV.");
    TableFile table;
    table.name = name;
    table.encoding = decoded.encoding;
    table.hasMark = decoded.hasMark;
    table.encodingIsGuess = decoded.isGuess;
    table.separator = form.separator.value_or(separatorOf(decoded.text));
    table.rows = csvRows(decoded.text, table.separator, table.faults);
    for (CsvRow& row : table.rows)
        for (std::string& field : row.fields)
            mendLineBreaks(field);
    return table;
}

std::string cellText(const std::string& field, bool keepSpaces) {
    const std::string text = unguarded(field);
    return keepSpaces ? text : withoutSpaces(text);
}

bool isEmptyRow(const CsvRow& row) {
    return std::all_of(row.fields.begin(), row.fields.end(),
                       [](const std::string& field) { return withoutSpaces(field).empty(); });
}

std::string placeInTable(const std::string& file, std::size_t row, int line,
                         const std::string& column) {
    std::string place = file + ", row " + std::to_string(row);
    if (static_cast<std::size_t>(line) != row)
        place += " (line " + std::to_string(line) + ")";
    if (!column.empty())
        place += ", column \"" + excerpt(column) + "\"";
    return place;
}

}  // namespace rackbook
