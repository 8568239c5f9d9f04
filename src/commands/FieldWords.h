// Fields of a record set from words such as netMass_g=120 or light.2.lightKind=dark.
#pragma once

#include <string>

#include "records/Record.h"
#include "store/BookFile.h"

namespace rackbook {

struct FieldWords {
    std::string path;   // "light.2.lightKind"
    std::string value;  // may be empty

    // The part of the path before its first dot.
    std::string field() const { return path.substr(0, path.find('.')); }
};

// Throws UsageError where there is no = or nothing before it.
FieldWords fieldWordsFrom(const std::string& words);

// A list takes its items with commas between; one of impressions also takes what sheetsNamed()
// does. A part of a list is named by its number, counted from 1, and made where it is the next one;
// without a number it is the only one. An empty value takes out what may be absent. Throws
// UsageError, saying what is wanted or naming the nearest field, and InputError for dates.
void setField(const BookFile& book, Record& record, const FieldWords& words);

}  // namespace rackbook
