#include "commands/PaperGiven.h"

#include <set>

#include "base/Error.h"
#include "base/Text.h"
#include "calc/Spectrum.h"
#include "commands/OptionRows.h"

namespace rackbook {

namespace {

const Reading* namedReading(const InkBook& ink, const std::string& words,
                            const std::optional<Backing>& backing) {
    if (const Reading* reading = paperReading(ink, words, backing))
        return reading;
    const Reading* byId = ink.records.find<Reading>(words);
    return byId && spectrumIn(*byId) ? byId : nullptr;
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
    return valueOption(
        "paper", "PAPER",
        "What it lies on: the words of a paper, or the id of a reading, of a print too.",
        "that of what is asked for");
}

PaperGiven paperGiven(const CommandContext& context, const InkBook& ink,
                      const PaperWanted& otherwise) {
    const std::optional<std::string> given = context.arguments.value("paper");
    const std::optional<std::string> words = given ? given : otherwise.paper;
    if (!words)
        refuse(ink, "it is not said what paper it lies on");
    const Reading* reading = namedReading(ink, *words, given ? std::nullopt : otherwise.backing);
    if (!reading)
        refuse(ink,
               "no spectrum of paper \"" + excerpt(*words) + "\"" +
                   (!given && otherwise.backing ? std::string(" over ") + textOf(*otherwise.backing)
                                                : "") +
                   " is recorded");
    return {reading->paper.value_or("what was read there"), reading->id,
            bandsIn(*reading, surfaceOf(ink.rules)),
            brightenedWords(*reading, surfaceOf(ink.rules))};
}

}  // namespace rackbook
