// The kinds of record a book holds.
#pragma once

#include "records/EnumText.h"

namespace rackbook {

enum class RecordKind {
    book,
    party,
    place,
    edition,
    block,
    lot,
    balance,
    mix,
    weighing,
    layer,
    impression,
    pull,
    drawdown,
    reading,
    transfer,
    issue,
    move,
    look,
    attachment,
    stockTake,
    weather,
    metering
};

template <>
struct EnumText<RecordKind> {
    static constexpr const char* names[] = {
        "book",     "party", "place",      "edition",   "block",    "lot",     "balance",  "mix",
        "weighing", "layer", "impression", "pull",      "drawdown", "reading", "transfer", "issue",
        "move",     "look",  "attachment", "stockTake", "weather",  "metering"};
};

}  // namespace rackbook
