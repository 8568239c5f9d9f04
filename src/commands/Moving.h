// Sheets that go from one place to another, for the verbs that say so.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "commands/Recording.h"
#include "commands/SheetSelection.h"
#include "records/Move.h"
#include "store/BookFile.h"

namespace rackbook {

// The place where all of them were at that time by their moves; nothing where one was elsewhere
// or nobody knows.
std::optional<Ref<Place>> placeShared(const BookFile& book, const std::vector<Impression>& sheets,
                                      const EdtfDate& at);

// With an id of its own, and from where they all were, unless that is where they go.
Move moveOf(const BookFile& book, const std::vector<Impression>& sheets, const Ref<Place>& to,
            const EdtfDate& at, MoveWhy why);

// The sheets with that fate from that day on, as changes; those that have it already are left out.
std::vector<MadeRecord> withFate(const std::vector<Impression>& sheets, ImpressionFate fate,
                                 const EdtfDate& day);

}  // namespace rackbook
