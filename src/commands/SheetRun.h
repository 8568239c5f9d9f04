// The records that a filled bench sheet becomes.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "commands/FilledBoxes.h"
#include "commands/Recording.h"
#include "records/RecordSet.h"

namespace rackbook {

// A record, and which box each of its fields came from, by JSON pointer.
struct RecordFromBoxes {
    MadeRecord made;
    std::map<std::string, std::string> boxes;
};

// A pull with what followed from it; before it, where ink was taken for it, the portion and its
// weighings. What is wrong with the boxes is noted in them; then the records are not to be used.
std::vector<RecordFromBoxes> recordsOfSheet(const BookFile& book, const RecordSet& records,
                                            FilledBoxes& boxes);

}  // namespace rackbook
