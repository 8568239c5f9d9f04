// A table as a spreadsheet writes it: CSV text in any usual encoding, with any usual separator.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/CsvText.h"
#include "exchange/TextEncoding.h"

namespace rackbook {

struct TableFile {
    std::string name;  // for messages
    std::string encoding;
    bool hasMark = false;
    bool encodingIsGuess = false;
    char separator = ',';
    std::vector<CsvRow> rows;      // all of them, as a spreadsheet numbers them from 1
    std::vector<CsvFault> faults;  // against the grammar of RFC 4180
};

// What is known of a file beforehand.
struct TableForm {
    std::optional<std::string> encoding;  // one of knownEncodings()
    std::optional<char> separator;
    EncodingGuess guess = EncodingGuess::none;
};

// Line breaks inside cells become LF. Throws InputError as decodedText() does.
TableFile tableFileFrom(std::string_view bytes, const TableForm& form, const std::string& name);

// Cells without what a spreadsheet's guard put before them (see CsvWriter.h) and, unless
// `keepSpaces`, without spaces around them.
std::string cellText(const std::string& field, bool keepSpaces);

bool isEmptyRow(const CsvRow& row);

// "old.csv, row 7 (line 9), column "Titel"". Row and line count from 1; the line is left out where
// it is that of the row, the column where it is empty.
std::string placeInTable(const std::string& file, std::size_t row, int line,
                         const std::string& column);

}  // namespace rackbook
