#include "cli/Arguments.h"

#include <QCommandLineParser>
#include <QStringDecoder>
#include <algorithm>
#include <cstdlib>

#include "base/Error.h"
#include "base/Finding.h"
#include "base/Numbers.h"
#include "base/Text.h"
#include "base/TypedNumber.h"
#include "cli/SpecText.h"

namespace rackbook {

namespace {

QString toQt(const std::string& text) {
    // fromUtf8 would drop a leading byte order mark, and a file name may begin with one.
    QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::ConvertInitialBom);
    return decoder(QByteArrayView(text.data(), static_cast<qsizetype>(text.size())));
}

std::string quoted(const std::string& text) {
    return "\"" + excerpt(text) + "\"";
}

bool startsWith(const std::string& text, const char* prefix) {
    return text.rfind(prefix, 0) == 0;
}

// No option begins with a digit: "-1", "-0,5" and "-2g" are values, for the verb to judge.
bool isNegativeNumber(const std::string& word) {
    const auto isDigit = [&](std::size_t i) {
        return i < word.size() && word[i] >= '0' && word[i] <= '9';
    };
    const bool hasMark = word.size() > 1 && (word[1] == '.' || word[1] == ',');
    return word[0] == '-' && isDigit(hasMark ? 2 : 1);
}

std::string seeHelp(const std::string& verb) {
    return "See \"rackbook " + verb + " --help\".";
}

void refuseBadText(const std::string& verb, const std::vector<std::string>& words) {
    for (const std::string& word : words)
        if (invalidUtf8At(word))
            throw UsageError(verb + ": an argument is not UTF-8 text (" + excerpt(word) + ")",
                             "Write names and values in UTF-8.");
}

// A word after an option that takes a value is never --help, so this needs no parsing.
bool asksForHelp(const std::vector<std::string>& words) {
    const auto end = std::find(words.begin(), words.end(), "--");
    return std::find(words.begin(), end, "--help") != end;
}

}  // namespace

class ArgumentsBuilder {
public:
    ArgumentsBuilder(const CommandSpec& spec, bool wantsAll);

    Arguments build(const std::vector<std::string>& words);

private:
    const OptionSpec* find(const std::string& name) const;
    [[noreturn]] void refuse(const std::string& what, const std::string& remedy) const;
    [[noreturn]] void refuseUnknown(const std::string& name) const;
    [[noreturn]] void refuseSingleHyphen(const std::string& word) const;
    std::vector<std::string> ordered(const std::vector<std::string>& words) const;
    void checkFlag(const OptionSpec& option, bool hasValue) const;
    void checkNextWord(const OptionSpec& option, const std::string* next) const;
    void take(const OptionSpec& option, const QCommandLineParser& parser);
    void checkValue(const OptionSpec& option, const std::string& value) const;
    void takePositionals(const QStringList& words);

    const CommandSpec& m_spec;
    bool m_wantsAll;
    std::vector<OptionSpec> m_options;
    Arguments m_made;
};

ArgumentsBuilder::ArgumentsBuilder(const CommandSpec& spec, bool wantsAll)
    : m_spec(spec), m_wantsAll(wantsAll), m_options(optionsOf(spec)) {
    m_made.m_verb = spec.name;
    for (const std::string& name : commonOptionNames())
        m_made.m_entries[name] = {"--" + name, "--" + name, false, {}};
    for (const OptionSpec& option : m_options)
        m_made.m_entries[option.name] = {"--" + option.name, optionLabel(option), false, {}};
    for (const PositionalSpec& positional : spec.positionals)
        m_made.m_entries[positional.name] = {
            positionalName(positional), positionalName(positional), false, {}};
}

void ArgumentsBuilder::refuse(const std::string& what, const std::string& remedy) const {
    throw UsageError(m_spec.name + ": " + what, remedy);
}

const OptionSpec* ArgumentsBuilder::find(const std::string& name) const {
    const auto found = std::find_if(m_options.begin(), m_options.end(),
                                    [&](const OptionSpec& o) { return o.name == name; });
    return found == m_options.end() ? nullptr : &*found;
}

void ArgumentsBuilder::refuseUnknown(const std::string& name) const {
    std::vector<std::string> known;
    for (const OptionSpec& option : m_options)
        known.push_back(option.name);
    const auto near = nearestName(name, known);
    refuse("unknown option --" + excerpt(name),
           near ? "Did you mean --" + *near + "?" : seeHelp(m_spec.name));
}

void ArgumentsBuilder::refuseSingleHyphen(const std::string& word) const {
    const std::string name = word.substr(1, word.find('=') - 1);
    refuse("unknown option " + excerpt(word),
           find(name) != nullptr
               ? "Did you mean --" + name + "?"
               : "Options begin with two hyphens; write -- before an argument that begins "
                 "with a hyphen.");
}

void ArgumentsBuilder::checkFlag(const OptionSpec& option, bool hasValue) const {
    if (hasValue)
        refuse("--" + option.name + " takes no value", "Write --" + option.name + " alone.");
}

void ArgumentsBuilder::checkNextWord(const OptionSpec& option, const std::string* next) const {
    if (next == nullptr)
        refuse("--" + option.name + " needs a value", "Write " + optionLabel(option) + ".");
    if (startsWith(*next, "--"))
        refuse("--" + option.name + " needs a value, but " + excerpt(*next) + " follows",
               "Write --" + option.name + "=" + option.valueName +
                   " where the value itself begins with two hyphens.");
}

// The words in a form that the parser takes no other way: options first, then two hyphens, then the
// arguments, which may be negative numbers. The parser would take whatever word follows an option
// as its value, even the next option.
std::vector<std::string> ArgumentsBuilder::ordered(const std::vector<std::string>& words) const {
    std::vector<std::string> options;
    std::vector<std::string> positionals = {"--"};
    std::size_t i = 0;
    for (; i < words.size() && words[i] != "--"; ++i) {
        const std::string& word = words[i];
        if (word.size() < 2 || word[0] != '-' || isNegativeNumber(word)) {
            positionals.push_back(word);
            continue;
        }
        if (word[1] != '-')
            refuseSingleHyphen(word);
        options.push_back(word);
        const std::size_t assign = word.find('=');
        const OptionSpec* option = find(word.substr(2, assign - 2));
        if (option == nullptr)
            continue;
        if (option->valueName.empty()) {
            checkFlag(*option, assign != std::string::npos);
        } else if (assign == std::string::npos) {
            ++i;
            checkNextWord(*option, i < words.size() ? &words[i] : nullptr);
            options.push_back(words[i]);
        }
    }
    for (++i; i < words.size(); ++i)
        positionals.push_back(words[i]);
    options.insert(options.end(), positionals.begin(), positionals.end());
    return options;
}

void ArgumentsBuilder::checkValue(const OptionSpec& option, const std::string& value) const {
    const std::string label = "--" + option.name;
    if (value.empty())
        refuse(label + " is empty", "Give " + option.valueName + " or leave the option out.");
    if (option.choices.empty() ||
        std::find(option.choices.begin(), option.choices.end(), value) != option.choices.end())
        return;
    const auto near = nearestName(value, option.choices);
    refuse(label + " is " + quoted(value),
           near ? "Did you mean " + *near + "?" : "Give " + joined(option.choices, " or ") + ".");
}

void ArgumentsBuilder::take(const OptionSpec& option, const QCommandLineParser& parser) {
    const QString name = toQt(option.name);
    Arguments::Entry& entry = m_made.m_entries[option.name];
    const auto times = parser.optionNames().count(name);
    entry.given = times > 0;
    if (times > 1 && !option.repeatable)
        refuse("--" + option.name + " was given " + std::to_string(times) + " times",
               "Give it once.");
    if (times == 0 && option.required && m_wantsAll)
        refuse("--" + option.name + " is missing", "Add " + optionLabel(option) + ".");
    if (option.valueName.empty())
        return;
    for (const QString& value : parser.values(name)) {
        entry.values.push_back(value.toStdString());
        checkValue(option, entry.values.back());
    }
}

void ArgumentsBuilder::takePositionals(const QStringList& words) {
    qsizetype at = 0;
    for (const PositionalSpec& positional : m_spec.positionals) {
        Arguments::Entry& entry = m_made.m_entries[positional.name];
        const qsizetype end = positional.repeatable ? words.size() : at + 1;
        for (; at < std::min(end, words.size()); ++at)
            entry.values.push_back(words[at].toStdString());
        entry.given = !entry.values.empty();
        if (!entry.given && positional.required && m_wantsAll)
            refuse(entry.label + " is missing", seeHelp(m_spec.name));
        if (std::find(entry.values.begin(), entry.values.end(), "") != entry.values.end())
            refuse(entry.label + " is empty", seeHelp(m_spec.name));
    }
    if (at < words.size())
        refuse(quoted(words[at].toStdString()) + " is one argument too many", seeHelp(m_spec.name));
}

Arguments ArgumentsBuilder::build(const std::vector<std::string>& words) {
    refuseBadText(m_spec.name, words);
    if (asksForHelp(words)) {
        m_made.m_entries["help"].given = true;
        return m_made;
    }
    QCommandLineParser parser;
    for (const OptionSpec& option : m_options)
        parser.addOption(QCommandLineOption(toQt(option.name), {}, toQt(option.valueName)));
    QStringList line = {QStringLiteral("rackbook")};
    for (const std::string& word : ordered(words))
        line << toQt(word);
    // After that an unknown name is all that can be left to refuse.
    if (!parser.parse(line))
        refuseUnknown(parser.unknownOptionNames().value(0).toStdString());
    for (const OptionSpec& option : m_options)
        take(option, parser);
    takePositionals(parser.positionalArguments());
    return m_made;
}

bool Arguments::has(const std::string& name) const {
    return m_entries.at(name).given;
}

const std::string& Arguments::label(const std::string& name) const {
    return m_entries.at(name).label;
}

std::optional<std::string> Arguments::value(const std::string& name) const {
    const Entry& entry = m_entries.at(name);
    return entry.values.empty() ? std::nullopt : std::optional(entry.values.front());
}

std::string Arguments::text(const std::string& name) const {
    const Entry& entry = m_entries.at(name);
    if (entry.values.empty())
        throw UsageError(m_verb + ": " + entry.label + " is missing", "Add " + entry.usage + ".");
    return entry.values.front();
}

const std::vector<std::string>& Arguments::values(const std::string& name) const {
    return m_entries.at(name).values;
}

std::optional<double> Arguments::number(const std::string& name) const {
    const auto given = value(name);
    if (!given)
        return std::nullopt;
    const auto number = parseTypedNumber(*given);
    if (!number)
        throw UsageError(m_verb + ": " + m_entries.at(name).label + " is " + quoted(*given) +
                             ", which is not a number",
                         "Write digits with a decimal point or comma, such as 12.5.");
    return number;
}

std::optional<long long> Arguments::whole(const std::string& name) const {
    const auto given = value(name);
    if (!given)
        return std::nullopt;
    const auto number = parseWhole(*given);
    if (!number)
        throw UsageError(m_verb + ": " + m_entries.at(name).label + " is " + quoted(*given) +
                             ", which is not a whole number",
                         "Write digits only, such as 12.");
    return number;
}

Arguments parseArguments(const CommandSpec& spec, const std::vector<std::string>& words) {
    return ArgumentsBuilder(spec, true).build(words);
}

Arguments parseWhatIsThere(const CommandSpec& spec, const std::vector<std::string>& words) {
    return ArgumentsBuilder(spec, false).build(words);
}

std::string bookPath(const Arguments& arguments) {
    if (const auto given = arguments.value("book"))
        return *given;
    const char* fromEnvironment = std::getenv("RACKBOOK_BOOK");
    if (fromEnvironment == nullptr || *fromEnvironment == '\0')
        return "studio.rackbook";
    if (invalidUtf8At(fromEnvironment))
        throw UsageError(
            "RACKBOOK_BOOK: the path is not UTF-8 text (" + excerpt(fromEnvironment) + ")",
            "Give the path in UTF-8.");
    return fromEnvironment;
}

}  // namespace rackbook
