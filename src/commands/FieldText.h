// The fields of a record as plain text, for lists and for what a verb is about to write.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "records/Record.h"

namespace rackbook {

// Names as record files have them, or plain words with the unit behind the value.
enum class FieldStyle { names, plain };

// Name and value of each field that is there, id left out. Lists of references are counted or,
// where they are the impressions of one edition, written as ranges.
std::vector<std::pair<std::string, std::string>> fieldTexts(const Record& record,
                                                            FieldStyle style = FieldStyle::names);

// In plain words: "layer TIDE/L3, start 2026-03-04, impressions TIDE:1-18 …"
std::string fieldsInOneLine(const Record& record);

// Ids with a common beginning and a number after the last slash, as "TIDE:1-12,15", the way they
// may be given on the command line; other ids are listed.
std::string idsInShort(const std::vector<std::string>& ids);

}  // namespace rackbook
