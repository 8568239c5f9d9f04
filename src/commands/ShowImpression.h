// The life of one impression, for rackbook show.
#pragma once

#include "base/Tree.h"
#include "cli/Console.h"
#include "records/Impression.h"
#include "store/BookFile.h"

namespace rackbook {

struct ImpressionEvent {
    EdtfDate at = EdtfDate::ofMinute(0);
    std::string what;  // "pulled", "moved", "looked at", "transferred"
    std::string detail;
    std::string record;  // "pull pull-2026-03-04-abc"
    std::string place;   // where it was moved to
};

// In the order of their earliest dates.
std::vector<ImpressionEvent> eventsOf(const BookFile& book, const Impression& impression);

// Where it was moved to last, and everything.
void printEvents(Console& console, const std::vector<ImpressionEvent>& events);
Tree treeOf(const std::vector<ImpressionEvent>& events);

}  // namespace rackbook
