#include "cli/Conversation.h"

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <iostream>

#include "base/Numbers.h"
#include "base/Text.h"
#include "base/Translated.h"
#include "cli/Interrupts.h"
#include "cli/Wrap.h"

namespace rackbook {

namespace {

constexpr std::size_t offeredAtOnce = 9;

std::string padded(const std::string& text, int width) {
    const int missing = width - displayWidth(text);
    return text + std::string(static_cast<std::size_t>(std::max(missing, 0)), ' ');
}

bool isTerminal(const std::istream& in) {
    return &in == &std::cin && isatty(STDIN_FILENO) == 1;
}

bool isValue(const Question& question, const std::string& text) {
    return std::any_of(question.choices.begin(), question.choices.end(),
                       [&](const Choice& choice) { return choice.value == text; });
}

// Numbers stand before choices only where no choice is a number itself.
bool isNumbered(const Question& question) {
    return std::none_of(question.choices.begin(), question.choices.end(),
                        [](const Choice& choice) { return parseWhole(choice.value).has_value(); });
}

bool isAlike(const std::string& a, const std::string& b) {
    const auto lower = [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    };
    return a.size() == b.size() &&
           std::equal(a.begin(), a.end(), b.begin(),
                      [&](char one, char other) { return lower(one) == lower(other); });
}

bool isOneOf(const std::string& typed, const std::vector<std::string>& words) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& word) { return isAlike(typed, word); });
}

// What stands on the screen may be typed as it stands there, in capitals or not.
std::optional<std::string> choiceNamed(const Question& question, const std::string& text) {
    std::optional<std::string> named;
    for (const Choice& choice : question.choices) {
        if (!isAlike(choice.value, text) && !isAlike(choice.words, text))
            continue;
        if (named)
            return std::nullopt;
        named = choice.value;
    }
    return named;
}

std::string meantBy(const Question& question, const std::string& text) {
    if (isValue(question, text))
        return text;
    if (const std::optional<std::string> named = choiceNamed(question, text))
        return *named;
    if (!isNumbered(question))
        return text;
    const std::optional<long long> number = parseWhole(text);
    const auto count = static_cast<long long>(question.choices.size());
    if (!number || *number < 1 || *number > count)
        return text;
    return question.choices[static_cast<std::size_t>(*number) - 1].value;
}

// "none" leaves a question open, unless that is an answer of its own.
bool saysNone(const Question& question, const std::string& typed) {
    return (isAlike(typed, "none") || isAlike(typed, translated("conversation", "none"))) &&
           !choiceNamed(question, typed);
}

std::string promptOf(const Question& question) {
    std::string prompt = printable(question.text);
    if (!question.unit.empty())
        prompt += filledIn(translated("conversation", ", in %1"), {question.unit});
    if (question.preset)
        prompt +=
            " [" +
            printable(question.presetWords.empty() ? *question.preset : question.presetWords) + "]";
    else if (question.isOptional)
        prompt += " [" + translated("conversation", "none") + "]";
    return prompt + ": ";
}

}  // namespace

GaveUp::GaveUp()
    : UsageError(translated("conversation", "the questions were not answered to the end"),
                 translated("conversation", "Nothing was recorded.")) {}

Conversation::Conversation(std::istream& in, Console& console)
    : Conversation(in, console, isTerminal(in) && console.outIsTerminal()) {}

Conversation::Conversation(std::istream& in, Console& console, bool mayTalk)
    : m_in(in), m_console(console), m_mayTalk(mayTalk) {}

std::string Conversation::line(const std::string& prompt) {
    m_console.out() << prompt << std::flush;
    std::string text;
    if ((&m_in == &std::cin && !InterruptsHeld::awaitInput(STDIN_FILENO)) ||
        !std::getline(m_in, text))
        stop();
    if (invalidUtf8At(text)) {
        m_console.out() << "  " << translated("conversation", "That is not UTF-8 text.") << "\n";
        return line(prompt);
    }
    return trimmed(text, " \t\r");
}

// A read that Ctrl-C broke off leaves the stream as if it had ended.
void Conversation::stop() {
    m_console.out() << "\n";
    if (!InterruptsHeld::taken())
        throw GaveUp();
    if (&m_in == &std::cin)
        std::clearerr(stdin);
    m_in.clear();
    throw Interrupted();
}

void Conversation::offer(const Question& question, std::size_t most) {
    const std::size_t shown = std::min(most, question.choices.size());
    const bool numbered = isNumbered(question);
    const int digits = static_cast<int>(std::to_string(shown).size());
    int width = 0;
    for (std::size_t i = 0; i < shown; ++i)
        width = std::max(width, displayWidth(printable(question.choices[i].value)));
    for (std::size_t i = 0; i < shown; ++i) {
        const Choice& choice = question.choices[i];
        const std::string number = std::to_string(i + 1);
        m_console.out() << "  ";
        if (numbered)
            m_console.out() << std::string(static_cast<std::size_t>(digits) - number.size(), ' ')
                            << number << "  ";
        m_console.out() << padded(printable(choice.value), choice.words.empty() ? 0 : width);
        if (!choice.words.empty())
            m_console.out() << "  " << printable(choice.words);
        m_console.out() << "\n";
    }
    if (shown < question.choices.size())
        m_console.out() << "  "
                        << filledIn(translated("conversation", "… and %1 more: ? shows them all"),
                                    {std::to_string(question.choices.size() - shown)})
                        << "\n";
}

// The answer where it stands, else nothing.
std::optional<std::string> Conversation::settled(const Question& question,
                                                 const std::string& typed) {
    try {
        std::string answer = typed.empty() ? *question.preset : meantBy(question, typed);
        if (question.read && !typed.empty() && !isValue(question, answer)) {
            const std::string meant = question.read(answer);
            if (meant != answer)
                m_console.out() << "  "
                                << filledIn(translated("conversation", "That is %1."),
                                            {printable(meant)})
                                << "\n";
            answer = meant;
        }
        if (question.check)
            question.check(answer);
        const std::string doubt = question.doubt ? question.doubt(answer) : std::string();
        if (!doubt.empty() && !confirm("  " + printable(doubt) + " " +
                                           translated("conversation", "Enter it all the same"),
                                       false))
            return std::nullopt;
        return answer;
    } catch (const GaveUp&) {
        throw;
    } catch (const Error& error) {
        m_console.out() << wrappedLines(printableLines(error.what()), m_console.width(), 2);
        return std::nullopt;
    }
}

std::optional<std::string> Conversation::ask(const Question& question) {
    if (!question.choices.empty())
        offer(question, offeredAtOnce);
    while (true) {
        const std::string typed = line(promptOf(question));
        if (typed == "?") {
            m_console.out() << wrappedParagraphs(question.help, m_console.width(), 2);
            offer(question, question.choices.size());
            continue;
        }
        if (question.isOptional &&
            (typed == "-" || (typed.empty() && !question.preset) || saysNone(question, typed)))
            return std::nullopt;
        if (typed.empty() && !question.preset) {
            m_console.out() << "  "
                            << translated("conversation", "This needs an answer; ? says more.")
                            << "\n";
            continue;
        }
        if (const std::optional<std::string> answer = settled(question, typed))
            return answer;
    }
}

bool Conversation::confirm(const std::string& text, bool preset) {
    while (true) {
        const std::string typed =
            line(text + " [" +
                 (preset ? translated("conversation", "Y/n") : translated("conversation", "y/N")) +
                 "]: ");
        if (typed.empty())
            return preset;
        if (isOneOf(typed, {"y", "yes", translated("conversation", "y"),
                            translated("conversation", "yes")}))
            return true;
        if (isOneOf(typed,
                    {"n", "no", translated("conversation", "n"), translated("conversation", "no")}))
            return false;
        m_console.out() << "  " << translated("conversation", "Type y for yes or n for no.")
                        << "\n";
    }
}

}  // namespace rackbook
