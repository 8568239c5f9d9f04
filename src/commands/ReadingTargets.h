// What the samples of a measurement file are readings of.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "commands/Command.h"
#include "exchange/MeasurementFile.h"
#include "store/BookFile.h"

namespace rackbook {

// Exactly one of drawdown, impression and paper.
struct ReadingTarget {
    std::optional<Ref<Drawdown>> drawdown;
    std::optional<Ref<Impression>> impression;
    std::optional<std::string> paper;
};

struct ChosenSample {
    MeasuredSample sample;
    ReadingTarget target;
};

// Whether any sample is to be recorded at all.
bool choosesSamples(const CommandContext& context);

// The samples that --of names, in the order of the file, and with --drawdowns-by-name all others,
// each for the drawdown whose id it has. Throws UsageError naming the samples or records that are
// not there.
std::vector<ChosenSample> chosenSamples(const CommandContext& context, const BookFile& book,
                                        const MeasurementFile& file);

// What of the book goes by the name of a sample: "drawdown", "impression", "paper", "reading";
// empty where nothing does.
std::string nameInBook(const BookFile& book, const std::string& name);

}  // namespace rackbook
