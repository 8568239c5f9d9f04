// Gathers what rackbook predict needs, and computes it.
#pragma once

#include <optional>
#include <string>

#include "commands/PredictReport.h"
#include "store/BookFile.h"

namespace rackbook {

struct PredictWanted {
    const CommandContext& context;  // for --paper and --film
    const BookFile& book;
    const InkBook& ink;
    const ColourModel& model;
    CivilMinute asOf = 0;
};

// `words` names a mix or a layer by id, or an edition by code: with `layer` that layer, without all
// of them. A layer is taken as its pull with most good sheets laid it down, else as its mix is.
// Throws UsageError with the nearest name; InputError where a mix or the one layer asked for cannot
// be predicted. Of an edition, the layers that cannot be are told.
Prediction predictionOf(const PredictWanted& wanted, const std::string& words,
                        const std::optional<std::string>& layer);

}  // namespace rackbook
