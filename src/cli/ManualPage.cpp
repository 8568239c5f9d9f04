#include <algorithm>

#include "base/Text.h"
#include "cli/Help.h"
#include "cli/SpecText.h"

namespace rackbook {

namespace {

std::string hexadecimal(char32_t c) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string text;
    for (; c != 0; c >>= 4)
        text.insert(text.begin(), digits[c & 0xF]);
    return text.insert(0, text.size() < 4 ? 4 - text.size() : 0, '0');
}

// Text that troff shows as it stands: the marks it would change are named (groff_char(7)), and
// code points outside ASCII are written as \[uXXXX].
std::string escaped(const std::string& text) {
    std::string result;
    for (const char32_t c : codePoints(text)) {
        switch (c) {
            case U'\\':
                result += "\\(rs";
                break;
            case U'-':
                result += "\\-";
                break;
            case U'\'':
                result += "\\(aq";
                break;
            case U'`':
                result += "\\(ga";
                break;
            case U'^':
                result += "\\(ha";
                break;
            case U'~':
                result += "\\(ti";
                break;
            case U'"':
                result += "\\(dq";
                break;
            default:
                result +=
                    c < 0x80 ? std::string(1, static_cast<char>(c)) : "\\[u" + hexadecimal(c) + "]";
        }
    }
    return result;
}

// A line of text; a full stop at its start would be read as a request.
std::string textLine(const std::string& text) {
    const std::string line = escaped(text);
    return (!line.empty() && line.front() == '.' ? "\\&" + line : line) + "\n";
}

std::string requestLine(const std::string& request, const std::string& argument) {
    return "." + request + " \"" + escaped(argument) + "\"\n";
}

// Paragraphs as in wrappedParagraphs(): lines that begin with a space keep their breaks.
std::string paragraphs(const std::string& text) {
    std::string result;
    bool kept = false;
    bool gapDue = false;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string line = text.substr(at, end - at);
        at = end + 1;
        if (line.find_first_not_of(" \t\r") == std::string::npos) {
            gapDue = !result.empty();
            continue;
        }
        const bool keep = line.front() == ' ';
        if (kept && !keep)
            result += ".EE\n";
        if (gapDue)
            result += ".PP\n";
        if (keep && !kept)
            result += ".EX\n";
        kept = keep;
        gapDue = false;
        result += textLine(line);
    }
    return kept ? result + ".EE\n" : result;
}

std::string tagged(const std::string& label, const std::string& text) {
    return ".TP\n" + requestLine("B", label) + textLine(text);
}

std::string examplesOf(const CommandSpec& spec) {
    std::string text;
    for (const Example& example : spec.examples) {
        text += ".PP\n" + textLine(sentence(example.what));
        text += ".PP\n.RS 4\n.EX\n" + textLine(example.command) + ".EE\n.RE\n";
    }
    return text;
}

// Which of the options described once for all verbs this one takes.
std::string sharedOptionsOf(const CommandSpec& spec) {
    std::vector<std::string> names;
    const std::vector<OptionSpec> options = optionsOf(spec);
    for (std::size_t i = spec.options.size(); i < options.size(); ++i)
        names.push_back("--" + options[i].name);
    return "Takes " + joined(names) + " as described below.";
}

std::string sharedOptions() {
    CommandSpec every;
    every.writesBook = true;
    every.reportsJson = true;
    std::string text = ".SH \"OPTIONS THAT VERBS SHARE\"\n";
    for (const OptionSpec& option : optionsOf(every))
        text += tagged(optionLabel(option), optionSentences(option));
    return text;
}

std::string verbSection(const CommandSpec& spec) {
    std::string synopsis = "rackbook " + spec.name;
    for (const std::string& part : usageParts(spec))
        synopsis += " " + part;
    std::string text = requestLine("SS", spec.name) + requestLine("B", synopsis);
    text += ".PP\n" + textLine(sentence(spec.summary));
    if (!spec.details.empty())
        text += ".PP\n" + paragraphs(spec.details);
    if (const std::string note = questionsNote(spec); !note.empty())
        text += ".PP\n" + textLine(note);
    for (const PositionalSpec& positional : spec.positionals)
        text += tagged(positionalLabel(positional),
                       sentence(positional.help) +
                           (positional.repeatable ? " May be given more than once." : ""));
    for (const OptionSpec& option : spec.options)
        text += tagged(optionLabel(option), optionSentences(option));
    text += ".PP\n" + textLine(sharedOptionsOf(spec));
    if (!spec.caution.empty())
        text +=
            ".PP\n" + requestLine("B", "Caution") + ".RS 4\n" + paragraphs(spec.caution) + ".RE\n";
    return text + examplesOf(spec);
}

std::string surroundings() {
    std::string text = ".SH \"EXIT STATUS\"\n";
    for (const auto& [code, meaning] : exitCodeMeanings())
        text += tagged(code, meaning);
    text += ".SH ENVIRONMENT\n";
    text += tagged("RACKBOOK_BOOK", "The book, where --book is not given.");
    text += tagged("SOURCE_DATE_EPOCH",
                   "Seconds since 1970-01-01T00:00:00Z that stand for the time now, so that sheets "
                   "can be made again to the byte.");
    text += tagged("NO_COLOR", "Where it is not empty, nothing is coloured.");
    text += tagged("COLUMNS", "The width of the terminal.");
    text += ".SH FILES\n";
    text += tagged("studio.rackbook",
                   "The book in the current folder, where neither --book nor RACKBOOK_BOOK names "
                   "another.");
    return text;
}

}  // namespace

std::string manualPage(const std::vector<CommandSpec>& specs, const std::string& version,
                       const std::string& dateText) {
    std::string text = ".TH RACKBOOK 1 \"" + escaped(dateText) + "\" \"Rackbook " +
                       escaped(version) + "\" \"Rackbook\"\n";
    // A name broken over two lines cannot be copied. The macros set hyphenation from HY
    // (groff_man(7)) at every heading, so that .nh alone would not last.
    text += ".nr HY 0\n.nh\n.ad l\n";
    text +=
        ".SH NAME\nrackbook \\- keep a relief printmaker\\(aqs records and make sheets from "
        "them\n";
    text += ".SH SYNOPSIS\n.B rackbook\n.I VERB\n[arguments] [options]\n";
    text += ".SH DESCRIPTION\n";
    text += textLine(
        "The verbs follow by group. Options may stand anywhere after the verb; -- ends them, and "
        "a value may also be joined to its option with =.");
    for (const auto& [group, verbs] : groupsOf(specs)) {
        text += requestLine("SH", group);
        for (const CommandSpec* spec : verbs)
            text += verbSection(*spec);
    }
    return text + sharedOptions() + surroundings();
}

}  // namespace rackbook
