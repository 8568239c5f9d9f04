// Rows of the tables under tests/calc/facts: lines with # are notes, the first other line names the
// columns, fields with commas stand in quotes.
#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/Numbers.h"
#include "support/Paths.h"

namespace rackbook::test {

class FactRow {
public:
    explicit FactRow(std::map<std::string, std::string> fields) : m_fields(std::move(fields)) {}

    const std::string& text(const std::string& column) const { return m_fields.at(column); }
    double number(const std::string& column) const { return numberIn(text(column)); }

    static double numberIn(const std::string& text) {
        const auto number = parseNumber(text);
        if (!number)
            throw std::runtime_error("not a number: " + text);
        return *number;
    }

private:
    std::map<std::string, std::string> m_fields;
};

inline std::vector<std::string> fieldsOf(const std::string& line) {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (const char c : line)
        if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            fields.emplace_back();
        else
            fields.back() += c;
    return fields;
}

inline std::vector<FactRow> factRows(const std::string& name) {
    std::ifstream in(sourcePath("tests/calc/facts/" + name));
    if (!in)
        throw std::runtime_error("no facts " + name);
    std::vector<std::string> columns;
    std::vector<FactRow> rows;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#')
            continue;
        const std::vector<std::string> fields = fieldsOf(line);
        if (columns.empty()) {
            columns = fields;
            continue;
        }
        std::map<std::string, std::string> named;
        for (std::size_t i = 0; i < columns.size(); ++i)
            named[columns[i]] = fields.at(i);
        rows.emplace_back(std::move(named));
    }
    return rows;
}

// "K=0.2;S=0.5" as names and numbers.
inline std::map<std::string, double> valuesIn(const std::string& text) {
    std::map<std::string, double> values;
    std::istringstream parts(text);
    for (std::string part; std::getline(parts, part, ';');) {
        const std::size_t equals = part.find('=');
        values[part.substr(0, equals)] = FactRow::numberIn(part.substr(equals + 1));
    }
    return values;
}

}  // namespace rackbook::test
