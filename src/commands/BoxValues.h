// What stands in the boxes of a bench sheet, read as what it means. What cannot be read is noted
// in the boxes, and gives nothing.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "commands/FilledBoxes.h"
#include "records/RecordSet.h"
#include "records/Ref.h"
#include "sheets/NamesInBoxes.h"

namespace rackbook {

// A number with a decimal point or comma; the unit that the label names may stand behind it.
std::optional<double> numberIn(FilledBoxes& boxes, const std::string& name);

// A mass of 0 or more.
std::optional<double> massIn(FilledBoxes& boxes, const std::string& name);

std::optional<std::string> wordsIn(const FilledBoxes& boxes, const std::string& name);

// The day of pull.day, as "2026-03-28".
std::optional<std::string> dayIn(FilledBoxes& boxes);

// A clock time of that day; a box may name another day before it.
std::optional<EdtfDate> momentIn(FilledBoxes& boxes, const std::string& name,
                                 const std::string& day);

void refuseUnknown(FilledBoxes& boxes, const std::string& name, RecordKind kind, bool isOneOfMany);

// The record that the box names by id or name.
template <class R>
const R* recordIn(FilledBoxes& boxes, const std::string& name, const RecordSet& records) {
    const std::string words = boxes.text(name);
    if (words.empty())
        return nullptr;
    const std::vector<const R*> found = namedInBox<R>(records, words);
    if (found.size() == 1)
        return found.front();
    refuseUnknown(boxes, name, R::kind, !found.empty());
    return nullptr;
}

}  // namespace rackbook
