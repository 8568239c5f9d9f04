#include "commands/GuidedEntry.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"
#include "base/Translated.h"
#include "cli/Wrap.h"
#include "commands/AnswerKind.h"
#include "commands/AnswerLimits.h"
#include "commands/KindFields.h"
#include "commands/Suggestions.h"
#include "commands/TypedAnswer.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

std::string asked(const GuideStep& step) {
    return translated("question", step.question);
}

bool beginsWithHyphen(const std::string& word) {
    return !word.empty() && word.front() == '-';
}

}  // namespace

bool leavesOpen(const CommandSpec& spec, const std::vector<std::string>& words) {
    if (!asksForWhatIsMissing(spec))
        return false;
    const Arguments given = parseWhatIsThere(spec, words);
    if (given.has("help"))
        return false;
    const bool lacksArgument = std::any_of(
        spec.positionals.begin(), spec.positionals.end(),
        [&](const auto& positional) { return positional.required && !given.has(positional.name); });
    return lacksArgument ||
           std::any_of(spec.options.begin(), spec.options.end(), [&](const auto& option) {
               return option.required && !given.has(option.name);
           });
}

GuidedEntry::GuidedEntry(const CommandSpec& spec, std::vector<std::string> words,
                         const BookFile& book, const DataFolders& folders,
                         Conversation& conversation)
    : m_spec(spec),
      m_given(std::move(words)),
      m_book(book),
      m_folders(folders),
      m_studio(bookRecordOf(book)),
      m_conversation(conversation),
      m_steps(guideSteps(spec)),
      m_answers(spec, parseWhatIsThere(spec, m_given)),
      m_saidByWords(m_answers) {}

bool GuidedEntry::isRepeatable(const std::string& name) const {
    const auto isIt = [&](const auto& one) { return one.name == name && one.repeatable; };
    return std::any_of(m_spec.positionals.begin(), m_spec.positionals.end(), isIt) ||
           std::any_of(m_spec.options.begin(), m_spec.options.end(), isIt);
}

bool GuidedEntry::isRequired(const std::string& name) const {
    const auto isIt = [&](const auto& one) { return one.name == name && one.required; };
    return std::any_of(m_spec.positionals.begin(), m_spec.positionals.end(), isIt) ||
           std::any_of(m_spec.options.begin(), m_spec.options.end(), isIt);
}

std::string GuidedEntry::helpOf(const std::string& name) const {
    for (const PositionalSpec& positional : m_spec.positionals)
        if (positional.name == name)
            return positional.help;
    for (const OptionSpec& option : m_spec.options)
        if (option.name == name)
            return option.help;
    return {};
}

// Of the fields of a record, what they are.
std::string GuidedEntry::fieldHelp() const {
    const std::optional<RecordKind> kind = enumFrom<RecordKind>(m_answers.text("kind"));
    std::string help = "Write it as FIELD=VALUE.";
    if (!kind)
        return help;
    for (const FieldMeaning& field : fieldsOfKind(m_folders.schema, *kind))
        help += "\n\n" + field.name + (field.needed ? " (needed): " : ": ") + field.meaning;
    return help;
}

std::vector<std::string> GuidedEntry::answersTo(const GuideStep& step, Question question) {
    std::vector<std::string> answers;
    while (const std::optional<std::string> answer = m_conversation.ask(question)) {
        answers.push_back(*answer);
        if (!isRepeatable(step.name))
            break;
        question = {translated("conversation", "Another, or Enter where there is none"),
                    {},
                    question.help,
                    std::nullopt,
                    {},
                    true,
                    question.read,
                    question.check,
                    question.doubt,
                    {}};
    }
    return answers;
}

void GuidedEntry::ask(const GuideStep& step) {
    m_asked.insert(step.name);
    if (answerKindOf(m_spec, step.name) == AnswerKind::flag) {
        const bool isSet = m_conversation.confirm(asked(step), m_answers.has(step.name));
        m_answers.set(step.name,
                      isSet ? std::vector<std::string>{"yes"} : std::vector<std::string>{});
        return;
    }
    const AnswersSoFar soFar{m_book, m_studio, m_spec, m_answers};
    if (isObstructed(step)) {
        m_conversation.console().out()
            << wrappedParagraphs(step.obstacle(soFar), m_conversation.console().width());
        return;
    }
    Question question;
    question.text = asked(step);
    question.help = step.name == "field" ? fieldHelp() : helpOf(step.name);
    if (const std::string typing = typingHelp(m_spec, step.name); !typing.empty())
        question.help += "\n\n" + typing;
    question.isOptional = !isRequired(step.name);
    const std::optional<std::string> before = m_answers.of(step.name);
    question.preset = before ? before : presetFor(soFar, step.name);
    if (question.preset)
        question.presetWords = asTyped(*question.preset);
    question.choices = choicesFor(soFar, step.name);
    question.read = [&](const std::string& typed) { return answerMeant(soFar, step.name, typed); };
    question.check = [&](const std::string& answer) { checkAnswer(soFar, step.name, answer); };
    question.doubt = [&](const std::string& answer) {
        return doubtAbout(soFar, step.name, answer);
    };
    m_answers.set(step.name, answersTo(step, question));
}

// What was left out once is not asked again; an answer that was changed may open new questions.
void GuidedEntry::askAll() {
    for (const GuideStep& step : m_steps)
        if (!m_answers.has(step.name) && m_asked.count(step.name) == 0 &&
            (step.isWanted == nullptr || step.isWanted(m_answers)))
            ask(step);
}

bool GuidedEntry::isObstructed(const GuideStep& step) const {
    return step.obstacle != nullptr &&
           !step.obstacle({m_book, m_studio, m_spec, m_answers}).empty();
}

std::vector<const GuideStep*> GuidedEntry::answerable() const {
    std::vector<const GuideStep*> steps;
    for (const GuideStep& step : m_steps)
        if (!m_saidByWords.has(step.name) &&
            (step.isWanted == nullptr || step.isWanted(m_answers)) && !isObstructed(step))
            steps.push_back(&step);
    return steps;
}

std::string GuidedEntry::noneOf(const GuideStep& step) const {
    return answerKindOf(m_spec, step.name) == AnswerKind::flag ? translated("conversation", "no")
                                                               : "–";
}

void GuidedEntry::showAnswers() const {
    std::ostream& out = m_conversation.console().out();
    out << "\n" << m_conversation.console().emphasis("rackbook " + m_spec.name) << "\n";
    const std::vector<const GuideStep*> steps = answerable();
    for (const GuideStep& step : m_steps)
        if (m_saidByWords.has(step.name))
            out << "      " << asked(step) << ": "
                << printable(joined(m_answers.all(step.name), ", ")) << "\n";
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const std::string number = std::to_string(i + 1);
        const std::vector<std::string>& answers = m_answers.all(steps[i]->name);
        out << "  " << std::string(number.size() < 2 ? 1 : 0, ' ') << number << "  "
            << asked(*steps[i]) << ": "
            << (answers.empty() ? noneOf(*steps[i]) : printable(joined(answers, ", "))) << "\n";
    }
}

bool GuidedEntry::change() {
    const std::vector<const GuideStep*> steps = answerable();
    Question question;
    question.text = translated("conversation", "Which answer shall be changed, by its number");
    question.help = translated(
        "conversation",
        "Enter alone changes nothing; the word drop gives this entry up: it is not recorded.");
    question.isOptional = true;
    question.check = [&](const std::string& answer) {
        const std::optional<long long> number = parseWhole(answer);
        if (answer == "drop")
            return;
        if (!number || *number < 1 || *number > static_cast<long long>(steps.size()))
            throw UsageError(
                filledIn(translated("mistake", "there is no answer %1"), {excerpt(answer)}),
                translated("mistake",
                           "The numbers stand before the answers above; drop gives it up."));
    };
    const std::optional<std::string> answer = m_conversation.ask(question);
    if (!answer)
        return true;
    if (*answer == "drop")
        return false;
    ask(*steps[static_cast<std::size_t>(*parseWhole(*answer)) - 1]);
    return true;
}

// What a record refuses is told by the option that it came from; here, by its question.
Error GuidedEntry::inQuestions(const Error& error) const {
    const RefusedInput* refused = dynamic_cast<const RefusedInput*>(&error);
    if (refused == nullptr)
        return error;
    std::vector<Finding> findings = refused->findings();
    for (Finding& finding : findings)
        for (const GuideStep& step : m_steps)
            if (finding.where.file == "--" + step.name)
                finding.where.file = asked(step);
    return RefusedInput(std::move(findings));
}

bool GuidedEntry::settle(const std::function<void(const std::vector<std::string>&)>& attempt) {
    askAll();
    while (true) {
        showAnswers();
        try {
            attempt(words());
            if (m_conversation.confirm(translated("conversation", "Is that right")))
                return true;
        } catch (const GaveUp&) {
            throw;
        } catch (const Error& error) {
            Console& console = m_conversation.console();
            console.out() << "\n"
                          << console.warningColour(
                                 translated("conversation", "This cannot be recorded:"),
                                 Console::Stream::out)
                          << "\n"
                          << wrappedLines(printableLines(inQuestions(error).what()),
                                          console.width(), 2);
        }
        if (!change())
            return false;
        askAll();
    }
}

std::vector<std::string> GuidedEntry::words() const {
    std::vector<std::string> whole;
    for (const OptionSpec& option : m_spec.options)
        if (!m_saidByWords.has(option.name))
            for (const std::string& value : m_answers.all(option.name))
                whole.push_back("--" + option.name + (option.valueName.empty() ? "" : "=" + value));
    whole.insert(whole.end(), m_given.begin(), m_given.end());
    std::vector<std::string> arguments;
    for (const PositionalSpec& positional : m_spec.positionals)
        if (!m_saidByWords.has(positional.name))
            for (const std::string& value : m_answers.all(positional.name))
                arguments.push_back(value);
    const bool isEnded = std::find(m_given.begin(), m_given.end(), "--") != m_given.end();
    if (!isEnded && std::any_of(arguments.begin(), arguments.end(), beginsWithHyphen))
        whole.push_back("--");
    whole.insert(whole.end(), arguments.begin(), arguments.end());
    return whole;
}

}  // namespace rackbook
