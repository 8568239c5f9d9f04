#include "exchange/CsvWriter.h"

#include <initializer_list>

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

bool takeAny(std::string_view& text, std::initializer_list<std::string_view> beginnings) {
    for (const std::string_view beginning : beginnings)
        if (text.substr(0, beginning.size()) == beginning) {
            text.remove_prefix(beginning.size());
            return true;
        }
    return false;
}

// Whether text begins as a formula does, behind anything that a reader may take away first. The
// wide forms of the four signs count, because some spreadsheets fold them.
bool beginsAsFormula(std::string_view text) {
    while (takeAny(text, {"'", "\"", " ", "\u00A0", byteOrderMark}))
        continue;
    return takeAny(text,
                   {"=", "+", "-", "@", "\t", "\r", "\n", "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"});
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
