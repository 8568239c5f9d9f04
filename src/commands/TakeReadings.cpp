#include "commands/TakeReadings.h"

#include "commands/BookAccess.h"
#include "commands/OptionRows.h"
#include "commands/ReadingsMade.h"
#include "commands/Recording.h"
#include "commands/SampleList.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

std::optional<SpectralUnit> unitGiven(const CommandContext& context) {
    const std::optional<std::string> word = context.arguments.value("spectra");
    if (!word)
        return std::nullopt;
    return *word == "percent" ? SpectralUnit::percent : SpectralUnit::fraction;
}

// Options that mean something only where samples are recorded.
void refuseIdleOptions(const CommandContext& context) {
    std::vector<OptionSpec> idle = conditionOptions();
    idle.push_back(valueOption("id", "ID", ""));
    idle.push_back(valueOption("reason", "TEXT", ""));
    for (const OptionSpec& option : idle)
        if (context.arguments.has(option.name))
            throw UsageError("--" + option.name + " is given, and no sample is to be recorded",
                             "Say with --of what a sample is of, or give --drawdowns-by-name.");
}

ExitCode list(CommandContext& context, const MeasurementFile& file) {
    refuseIdleOptions(context);
    const BookFile book = bookToRead(context);
    const std::string path = context.arguments.text("file");
    if (context.arguments.has("json"))
        context.console.out() << jsonText(treeOf(book, path, file));
    else
        printSamples(context.console, book, path, file);
    return ExitCode::success;
}

ExitCode record(CommandContext& context, const MeasurementFile& file) {
    if (context.arguments.has("json"))
        throw UsageError("--json is for looking at a file", "Leave out what records samples.");
    BookFile book = bookToWrite(context);
    std::vector<ChosenSample> chosen = chosenSamples(context, book, file);
    fillConditions(context, chosen);
    std::vector<MadeRecord> made;
    for (const Reading& reading : readingsMade(context, book, chosen))
        made.push_back({reading, std::nullopt});
    const ExitCode code = recordMade(context, book, made, context.arguments.value("reason"));
    std::vector<MeasuredSample> samples;
    for (const ChosenSample& one : chosen)
        samples.push_back(one.sample);
    printDoubts(context.console, samples);
    printNotes(context.console, file.notes);
    return code;
}

ExitCode run(CommandContext& context) {
    const MeasurementFile file =
        readMeasurementFile(context.arguments.text("file"), unitGiven(context));
    return choosesSamples(context) ? record(context, file) : list(context, file);
}

}  // namespace

Command takeReadingsCommand() {
    CommandSpec spec;
    spec.name = "take-readings";
    spec.group = toTranslate("group", "Record files");
    spec.summary =
        toTranslate("summary", "Look at a file of colour measurements, and record what it holds");
    spec.details =
        "Reads CGATS.17 text (ISO 28178), CxF/X core (ISO 17972-1), and tables of spectra as CSV: "
        "a row for each sample under headings such as 380 or 380 nm, or a row for each wavelength "
        "with a column for each sample; parted by commas, semicolons or tabs. Spectra are taken "
        "every 5, 10 or 20 nm, within 300 to 830 nm and over 400 to 700 nm at least, as fractions "
        "or per cent. XYZ becomes CIELAB. A file with anything wrong in it is refused as a "
        "whole.\n\n"
        "Without --of and --drawdowns-by-name it only shows what is in the file. With them every "
        "sample so named becomes a reading; all of them are recorded or none. What the options "
        "below say of the conditions fills what the file leaves open, and must not contradict it.";
    spec.positionals = {{"file", "The file of measurements."}};
    spec.options = {
        repeatable(valueOption("of", "SAMPLE=TARGET",
                               "Record this sample, and what it is of: drawdown:ID, "
                               "impression:EEL:2 or paper:WORDS.")),
        flagOption("drawdowns-by-name",
                   "Record all other samples too, each for the drawdown whose id is its name."),
        valueOption("id", "ID", "Id of the reading, where one sample is recorded.",
                    "the id of what was measured and a number"),
        choiceOption("spectra", "UNIT", "What spectra are in, where the file leaves it open.",
                     {"fraction", "percent"})};
    for (OptionSpec& option : conditionOptions())
        spec.options.push_back(std::move(option));
    spec.options.push_back(
        valueOption("reason", "TEXT", "Why the book was wrong, where --id names a reading."));
    spec.writesBook = true;
    spec.reportsJson = true;
    spec.examples = {
        {"rackbook take-readings demo-edition/swatches-measured.txt", "What is in the file?"},
        {"rackbook take-readings demo-edition/swatches-measured.txt --drawdowns-by-name",
         "Record all of it: each sample has the id of a drawdown."},
        {"rackbook take-readings demo-edition/swatches-measured.txt --of "
         "eel-straw-dd=drawdown:eel-straw-dd --condition M1 --backing white",
         "Record one sample, and what the file does not say about it."}};
    return {spec, run};
}

}  // namespace rackbook
