// How the rows of a table become records: what a mapping file says. Its form is
// schema/table-mapping.schema.json; schema/README.md explains it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/Finding.h"
#include "exchange/TableDates.h"
#include "exchange/TableFile.h"
#include "exchange/TableNumbers.h"
#include "records/RecordKind.h"

namespace rackbook {

// Every rule knows its JSON pointer in the file, so that messages can name it.
struct ConditionRule {
    std::string column;
    std::vector<std::string> is;  // both empty: the cell is not
    std::vector<std::string> isNot;
    std::string pointer;
};

struct NumbersRule {
    std::string column;
    bool isCount = false;  // else ranges
    std::string pointer;
};

struct ValueRule {
    enum class Source { column, pattern, fixed };
    Source source = Source::column;
    std::string text;  // the heading, the pattern or the value
    std::vector<std::pair<std::string, std::string>> words;
    std::optional<std::string> otherwise;
    std::optional<std::string> find;
    std::optional<std::size_t> part;  // from 0
    std::string partedBy = "x";
    double times = 1;
    std::vector<std::string> units;
    std::optional<NumbersRule> numbers;
    std::string pointer;
};

struct FieldRule {
    std::string path;  // a field of the kind, see fieldAt()
    ValueRule value;
};

struct RecordRule {
    RecordKind kind = RecordKind::book;
    std::string id;  // a pattern
    bool ifNew = false;
    std::optional<ConditionRule> when;
    std::optional<ValueRule> changedOn;
    std::optional<NumbersRule> numbers;
    std::vector<FieldRule> fields;
    std::string pointer;
};

struct TableMapping {
    std::string file;
    std::string text;  // as it was read, for the lines of messages
    TableForm form;
    std::size_t skipRows = 0;
    bool hasHeadings = true;
    NumberForm numbers;
    DateForm dates;
    std::vector<std::string> missing;
    bool keepSpaces = false;
    std::vector<ConditionRule> leaveOut;
    std::vector<RecordRule> records;
};

// Throws InputError for what is no JSON, and RefusedInput with everything that is wrong with it,
// each with its JSON pointer.
TableMapping mappingFrom(const std::string& text, const std::string& file,
                         const std::string& schemaFolder);

// A finding about the mapping, with its line.
Finding mappingFinding(const TableMapping& mapping, const std::string& pointer,
                       const std::string& what, const std::string& value,
                       const std::string& remedy);

}  // namespace rackbook
