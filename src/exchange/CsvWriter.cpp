#include "exchange/CsvWriter.h"

#include "base/Numbers.h"
#include "base/Utf8.h"

namespace rackbook {

namespace {

bool wantsQuotes(const std::string& field, char separator) {
    if (field.empty())
        return false;
    // At the beginning of a file it would be taken for the file's own.
    return field.compare(0, byteOrderMark.size(), byteOrderMark) == 0 ||
           field.find_first_of("\"\r\n") != std::string::npos ||
           field.find(separator) != std::string::npos || field.front() == ' ' ||
           field.back() == ' ' || field.front() == '\t' || field.back() == '\t';
}

void append(std::string& text, const std::string& field, char separator) {
    if (!wantsQuotes(field, separator)) {
        text += field;
        return;
    }
    text += '"';
    for (const char c : field) {
        if (c == '"')
            text += '"';
        text += c;
    }
    text += '"';
}

// Whether text begins as a formula does, behind any apostrophes.
bool beginsAsFormula(const std::string& text) {
    const std::size_t at = text.find_first_not_of('\'');
    return at != std::string::npos &&
           std::string_view("=+-@\t\r\n").find(text[at]) != std::string_view::npos;
}

}  // namespace

std::string csvText(const std::vector<std::vector<std::string>>& rows, const CsvWriting& writing) {
    std::string text = writing.withMark ? std::string(byteOrderMark) : std::string();
    for (const std::vector<std::string>& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0)
                text += writing.separator;
            append(text, row[i], writing.separator);
        }
        text += "\r\n";
    }
    return text;
}

std::string guarded(const std::string& text) {
    return beginsAsFormula(text) && !parseNumber(text) ? "'" + text : text;
}

std::string unguarded(const std::string& text) {
    return !text.empty() && text.front() == '\'' && beginsAsFormula(text) ? text.substr(1) : text;
}

}  // namespace rackbook
