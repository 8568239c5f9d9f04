#include "commands/SampleList.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"
#include "cli/Table.h"
#include "commands/JsonReport.h"
#include "commands/Paragraph.h"
#include "commands/ReadingTargets.h"
#include "commands/SampleColour.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

// Values that are further apart than this were rounded or belong to another light. Rounding to a
// tenth makes no more than about 0.1.
constexpr double worthAWord_dE00 = 0.5;

// Pre: the reading holds a spectrum.
Spectrum spectrumOf(const MeasuredSample& sample) {
    return *spectrumIn(sample.reading);
}

std::string holdingWords(const MeasuredSample& sample) {
    std::vector<std::string> parts;
    if (sample.reading.labL)
        parts.push_back("CIELAB");
    if (sample.xyz)
        parts.push_back("XYZ");
    if (!sample.reading.spectrum.empty()) {
        const Spectrum spectrum = spectrumOf(sample);
        parts.push_back("spectrum " + formatShortest(spectrum.start_nm) + " to " +
                        formatShortest(spectrum.end_nm()) + " every " +
                        formatShortest(spectrum.step_nm) + " nm");
    }
    return joined(parts);
}

std::string conditionWords(const Reading& reading) {
    std::vector<std::string> parts;
    if (reading.illuminant)
        parts.push_back(textOf(*reading.illuminant));
    if (reading.observer)
        parts.push_back(textOf(*reading.observer));
    if (reading.condition)
        parts.push_back(textOf(*reading.condition));
    if (reading.geometry)
        parts.push_back(*reading.geometry);
    if (reading.backing)
        parts.push_back(std::string(textOf(*reading.backing)) + " backing");
    if (reading.takenOn)
        parts.push_back(reading.takenOn->text());
    return parts.empty() ? "not stated" : joined(parts, ", ");
}

std::string bookWords(const std::string& kind) {
    if (kind.empty())
        return "nothing: needs --of";
    return kind == "drawdown" ? "drawdown" : kind + ": needs --of";
}

void addRow(Table& table, const BookFile& book, const MeasuredSample& sample) {
    const std::optional<ReadingColour> colour = underD50(sample);
    const auto figure = [&](double Lab::*part) {
        return colour ? formatFixed(colour->lab.*part, 2) : std::string();
    };
    table.addRow({sample.name, holdingWords(sample), conditionWords(sample.reading),
                  figure(&Lab::l), figure(&Lab::a), figure(&Lab::b),
                  bookWords(nameInBook(book, sample.name))});
}

// What a record file would hold of it, without the id that it does not have yet.
Tree fieldsOf(const Reading& reading) {
    const Tree whole = treeOf(Record(reading));
    Tree fields = Tree::object();
    for (const auto& [name, value] : *whole.asObject())
        if (name != "id")
            fields.set(name, value);
    return fields;
}

void doubt(Console& console, const MeasuredSample& sample, std::optional<double> off_dE00,
           const char* other) {
    if (off_dE00 && *off_dE00 > worthAWord_dE00)
        printParagraph(console, "Sample " + sample.name + ": its CIELAB values are ΔE00 " +
                                    formatFixed(*off_dE00, 2) + " from what its " + other +
                                    " gives; see whether they belong to another light.");
}

}  // namespace

void printNotes(Console& console, const std::vector<Finding>& notes) {
    for (const Finding& note : notes)
        printParagraph(console, describe(note));
}

void printDoubts(Console& console, const std::vector<MeasuredSample>& samples) {
    for (const MeasuredSample& sample : samples) {
        const Reading& reading = sample.reading;
        doubt(console, sample, typedAgainstSpectrum(readingWithLab(sample)), "spectrum");
        if (const std::optional<Lab> lab = labOfXyz(sample); lab && reading.labL)
            doubt(console, sample, deltaE00(Lab{*reading.labL, *reading.labA, *reading.labB}, *lab),
                  "XYZ");
    }
    if (std::any_of(samples.begin(), samples.end(), isLightAssumed))
        printParagraph(console,
                       "The file does not say which light and observer its CIELAB or XYZ stands "
                       "for: D50 and 2 degrees are assumed. Say so with --illuminant and "
                       "--observer.");
}

void printSamples(Console& console, const BookFile& book, const std::string& path,
                  const MeasurementFile& file) {
    console.out() << console.emphasis(printable(path)) << ": " << nameOf(file.form) << ", "
                  << file.samples.size() << (file.samples.size() == 1 ? " sample" : " samples")
                  << (file.wasPercent ? ", spectra in per cent" : "") << "\n";
    Table table({{"sample"},
                 {"holds"},
                 {"stated"},
                 {"L*", Align::decimal},
                 {"a*", Align::decimal},
                 {"b*", Align::decimal},
                 {"in the book"}});
    for (const MeasuredSample& sample : file.samples)
        addRow(table, book, sample);
    console.out() << table.text(console.width(), "It holds nothing.");
    printParagraph(console, "CIELAB is under D50 for the 2° observer. Nothing was recorded.");
    printDoubts(console, file.samples);
    printNotes(console, file.notes);
}

Tree treeOf(const BookFile& book, const std::string& path, const MeasurementFile& file) {
    Tree report = newReport("take-readings");
    report.set("file", path).set("form", nameOf(file.form)).set("wasPercent", file.wasPercent);
    Tree samples = Tree::array();
    for (const MeasuredSample& sample : file.samples) {
        Tree tree = Tree::object();
        tree.set("sample", sample.name).set("line", sample.line);
        tree.set("reading", fieldsOf(sample.reading));
        Tree xyz;
        if (sample.xyz)
            xyz.set("x", sample.xyz->x).set("y", sample.xyz->y).set("z", sample.xyz->z);
        tree.set("xyz", std::move(xyz));
        Tree lab;
        if (const std::optional<ReadingColour> colour = underD50(sample))
            lab.set("l", colour->lab.l).set("a", colour->lab.a).set("b", colour->lab.b);
        tree.set("underD50", std::move(lab));
        const std::optional<double> off = typedAgainstSpectrum(readingWithLab(sample));
        tree.set("typedOff_dE00", off ? Tree(*off) : Tree());
        tree.set("isLightAssumed", isLightAssumed(sample));
        tree.set("inTheBook", nameInBook(book, sample.name));
        samples.add(std::move(tree));
    }
    report.set("samples", std::move(samples));
    report.set("notes", treeOf(file.notes));
    return report;
}

}  // namespace rackbook
