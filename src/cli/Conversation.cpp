#include "cli/Conversation.h"

#include <unistd.h>

#include <algorithm>
#include <iostream>

#include "base/Numbers.h"
#include "base/Text.h"
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

std::string promptOf(const Question& question) {
    std::string prompt = printable(question.text);
    if (!question.unit.empty())
        prompt += ", in " + question.unit;
    if (question.preset)
        prompt += " [" + printable(*question.preset) + "]";
    else if (question.isOptional)
        prompt += " [none]";
    return prompt + ": ";
}

}  // namespace

GaveUp::GaveUp()
    : UsageError("the questions were not answered to the end", "Nothing was recorded.") {}

Conversation::Conversation(std::istream& in, Console& console)
    : Conversation(in, console, isTerminal(in) && console.outIsTerminal()) {}

Conversation::Conversation(std::istream& in, Console& console, bool mayTalk)
    : m_in(in), m_console(console), m_mayTalk(mayTalk) {}

std::string Conversation::line(const std::string& prompt) {
    m_console.out() << prompt << std::flush;
    std::string text;
    if (!std::getline(m_in, text)) {
        m_console.out() << "\n";
        throw GaveUp();
    }
    if (invalidUtf8At(text)) {
        m_console.out() << "  That is not UTF-8 text.\n";
        return line(prompt);
    }
    return trimmed(text, " \t\r");
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
        m_console.out() << "  … and " << question.choices.size() - shown
                        << " more: ? shows them all\n";
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
        if (question.isOptional && (typed == "-" || (typed.empty() && !question.preset)))
            return std::nullopt;
        if (typed.empty() && !question.preset) {
            m_console.out() << "  This needs an answer; ? says more.\n";
            continue;
        }
        const std::string answer = typed.empty() ? *question.preset : meantBy(question, typed);
        try {
            if (question.check)
                question.check(answer);
            return answer;
        } catch (const Error& error) {
            m_console.out() << wrappedParagraphs(printable(error.what()), m_console.width(), 2);
        }
    }
}

bool Conversation::confirm(const std::string& text, bool preset) {
    while (true) {
        const std::string typed = line(text + (preset ? " [Y/n]: " : " [y/N]: "));
        if (typed.empty())
            return preset;
        if (typed == "y" || typed == "Y" || typed == "yes")
            return true;
        if (typed == "n" || typed == "N" || typed == "no")
            return false;
        m_console.out() << "  Type y for yes or n for no.\n";
    }
}

}  // namespace rackbook
