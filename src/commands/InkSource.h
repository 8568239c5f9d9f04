// What can go into a dish: a lot or a mix, by the word that names it.
#pragma once

#include <string>
#include <utility>

#include "calc/MixLedger.h"
#include "calc/WeighingOrder.h"
#include "commands/InkBook.h"

namespace rackbook {

// Positions in the book; exactly one is set.
struct InkSource {
    int lot = -1;
    int mix = -1;

    friend bool operator==(const InkSource& a, const InkSource& b) {
        return a.lot == b.lot && a.mix == b.mix;
    }
};

// An id; where a lot and a mix share it, lot:ID or mix:ID. Throws UsageError with the nearest id.
InkSource inkSourceNamed(const InkBook& ink, const std::string& words);

// The two sides of "SOURCE=VALUE". Throws UsageError with `form`, such as "SOURCE=MASS".
std::pair<std::string, std::string> assignmentIn(const std::string& text, const std::string& option,
                                                 const std::string& form);

const std::string& idOf(const InkBook& ink, const InkSource& source);

// With the name of a mix or the colour of a lot: "field-rose-1, Field rose (PV19)".
std::string sourceWords(const InkBook& ink, const InkSource& source);

// By the ledgers of the book's kinds of lot: whether drier can be in it.
bool mayHoldDrier(const InkBook& ink, const MixLedger& byKind, const InkSource& source);

// A mix without any ink in it takes its turn with the base.
WeighingTurn turnOf(const InkBook& ink, const MixLedger& byKind, const InkSource& source);

}  // namespace rackbook
