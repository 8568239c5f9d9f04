#include "cli/Help.h"

#include <algorithm>
#include <utility>

#include "base/Text.h"
#include "base/Translated.h"
#include "cli/SpecText.h"
#include "cli/Wrap.h"

namespace rackbook {

namespace {

constexpr int margin = 2;
constexpr int gap = 3;
// Labels wider than this push their text to the next line instead of squeezing all the others.
constexpr int widestLabel = 26;

using Entries = std::vector<std::pair<std::string, std::string>>;

std::string spaces(int count) {
    return std::string(static_cast<std::size_t>(std::max(0, count)), ' ');
}

int labelWidth(const Entries& entries) {
    int width = 0;
    for (const auto& entry : entries)
        if (displayWidth(entry.first) <= widestLabel)
            width = std::max(width, displayWidth(entry.first));
    return width;
}

// Labels in one column, their texts wrapped in another.
std::string entryList(const Entries& entries, int labelColumns, int width) {
    const int textColumn = margin + labelColumns + gap;
    std::string result;
    for (const auto& [label, text] : entries) {
        std::string line = spaces(margin) + label;
        if (displayWidth(label) > labelColumns) {
            result += line + "\n";
            line.clear();
        }
        for (const std::string& part : wrapped(text, width - textColumn)) {
            line += spaces(textColumn - displayWidth(line)) + part;
            line.erase(line.find_last_not_of(' ') + 1);
            result += line + "\n";
            line.clear();
        }
    }
    return result;
}

std::string section(const std::string& heading, const std::string& body) {
    return body.empty() ? std::string() : "\n" + heading + "\n" + body;
}

// Breaks only between parts, so that an option keeps its value.
std::string usage(const std::string& start, const std::vector<std::string>& parts, int width) {
    std::string result = start;
    int used = displayWidth(start);
    const int indent = std::min(used + 1, 12);
    for (const std::string& part : parts) {
        if (used + 1 + displayWidth(part) > width) {
            result += "\n" + spaces(indent) + part;
            used = indent + displayWidth(part);
            continue;
        }
        result += " " + part;
        used += 1 + displayWidth(part);
    }
    return result + "\n";
}

std::string exampleList(const std::vector<Example>& examples, int width) {
    std::string result;
    for (const Example& example : examples) {
        result += spaces(margin) + example.command + "\n";
        result += wrappedParagraphs(sentence(example.what), width, margin + 4);
    }
    return result;
}

Entries argumentEntries(const CommandSpec& spec) {
    Entries entries;
    for (const PositionalSpec& positional : spec.positionals) {
        std::string text = sentence(positional.help);
        if (positional.repeatable)
            text += " May be given more than once.";
        entries.emplace_back(positionalLabel(positional), text);
    }
    return entries;
}

Entries exitCodes() {
    Entries entries;
    for (const auto& [code, meaning] : exitCodeMeanings())
        entries.emplace_back(code, translated("help", meaning));
    return entries;
}

}  // namespace

std::string helpText(const CommandSpec& spec, int width) {
    const Entries arguments = argumentEntries(spec);
    Entries options;
    for (const OptionSpec& option : optionsOf(spec))
        options.emplace_back(optionLabel(option), optionSentences(option));
    const int labels = std::max(labelWidth(arguments), labelWidth(options));

    std::string text =
        usage(translated("help", "Usage:") + " rackbook " + spec.name, usageParts(spec), width);
    text += "\n" + wrappedParagraphs(sentence(translated("summary", spec.summary)), width);
    if (!spec.details.empty())
        text += "\n" + wrappedParagraphs(spec.details, width);
    if (const std::string note = translated("help", questionsNote(spec)); !note.empty())
        text += "\n" + wrappedParagraphs(note, width);
    text += section(translated("help", "Arguments"), entryList(arguments, labels, width));
    text += section(translated("help", "Options"), entryList(options, labels, width));
    text += section(translated("help", "Caution"),
                    wrappedParagraphs(translated("caution", spec.caution), width, margin));
    text += section(translated("help", "Examples"), exampleList(spec.examples, width));
    return text;
}

std::string programHelp(const std::vector<CommandSpec>& specs, const std::string& version,
                        int width) {
    Entries all;
    for (const CommandSpec& spec : specs)
        all.emplace_back(spec.name, sentence(translated("summary", spec.summary)));
    const int labels = labelWidth(all);

    std::string text = usage(translated("help", "Usage:") + " rackbook",
                             {translated("help", "VERB"), translated("help", "[arguments]"),
                              translated("help", "[options]")},
                             width);
    text += "\n" + wrappedParagraphs(
                       filledIn(translated("help",
                                           "Rackbook %1 keeps a relief printmaker's records and "
                                           "makes sheets from them."),
                                {version}),
                       width);
    for (const auto& [group, verbs] : groupsOf(specs)) {
        Entries entries;
        for (const CommandSpec* spec : verbs)
            entries.emplace_back(spec->name, sentence(translated("summary", spec->summary)));
        text += section(translated("group", group), entryList(entries, labels, width));
    }
    text += section(translated("help", "Exit status"), entryList(exitCodes(), 1, width));
    text +=
        "\n" + wrappedParagraphs(
                   translated("help",
                              "\"rackbook VERB --help\" says more about a verb. The book is the "
                              "one that --book names, else the environment variable "
                              "RACKBOOK_BOOK, else studio.rackbook in the current folder."),
                   width);
    return text;
}

}  // namespace rackbook
