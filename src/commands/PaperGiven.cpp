#include "commands/PaperGiven.h"

#include <set>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/Spectrum.h"
#include "commands/OptionRows.h"

namespace rackbook {

namespace {

const Reading* namedReading(const InkBook& ink, const std::string& words) {
    if (const Reading* reading = paperReading(ink, words, Backing::white))
        return reading;
    const Reading* byId = ink.records.find<Reading>(words);
    return byId && byId->paper && spectrumIn(*byId) ? byId : nullptr;
}

[[noreturn]] void refuse(const InkBook& ink, const std::string& what) {
    std::set<std::string> papers;
    for (const Reading& reading : ink.records.of<Reading>())
        if (reading.paper && spectrumIn(reading))
            papers.insert(reading.id);
    throw UsageError(what, papers.empty()
                               ? "Measure the bare paper and record it as a reading with its "
                                 "spectrum."
                               : "Give --paper with its words or the id of its reading: " +
                                     joined({papers.begin(), papers.end()}, " or ") + ".");
}

}  // namespace

OptionSpec paperOption() {
    return valueOption("paper", "PAPER",
                       "The paper it lies on: its words, or the id of its reading.",
                       "that of what is asked for");
}

PaperGiven paperGiven(const CommandContext& context, const InkBook& ink,
                      const std::optional<std::string>& otherwise) {
    const std::optional<std::string> given = context.arguments.value("paper");
    const std::optional<std::string> words = given ? given : otherwise;
    if (!words)
        refuse(ink, "it is not said what paper it lies on");
    const Reading* reading = namedReading(ink, *words);
    if (!reading)
        refuse(ink, "no reading of paper \"" + excerpt(*words) + "\" holds a spectrum");
    return {*reading->paper, reading->id, bandsIn(*reading, surfaceOf(ink.rules))};
}

}  // namespace rackbook
