// Plain questions to a person at a terminal, one at a time.
#pragma once

#include <functional>
#include <istream>
#include <optional>
#include <string>
#include <vector>

#include "base/Error.h"
#include "cli/Console.h"

namespace rackbook {

// Something that may be answered, and what it is.
struct Choice {
    std::string value;
    std::string words;
};

struct Question {
    std::string text;                   // "Which layer"
    std::string unit;                   // "g"; empty where there is none
    std::string help;                   // shown when the answer is ?
    std::optional<std::string> preset;  // what Enter alone means
    std::vector<Choice> choices;        // offered; other answers go to `check` too
    bool isOptional = false;            // may be left out, with Enter or with -
    // Throws UsageError saying what is wrong with the answer; may be empty.
    std::function<void(const std::string&)> check;
};

// The person ended the conversation. Nothing was recorded.
class GaveUp : public UsageError {
public:
    GaveUp();
};

// Keeps references: streams and console must outlive it.
class Conversation {
public:
    // May talk where the input and standard output are terminals.
    Conversation(std::istream& in, Console& console);
    Conversation(std::istream& in, Console& console, bool mayTalk);

    bool mayTalk() const { return m_mayTalk; }
    Console& console() { return m_console; }

    // Asks until there is an answer that stands; nothing where it was left out. An answer is one of
    // the choices, the number before it, or what the person typed, without spaces around it. Throws
    // GaveUp at the end of the input.
    std::optional<std::string> ask(const Question& question);

    // Enter alone means `preset`.
    bool confirm(const std::string& text, bool preset = true);

private:
    std::string line(const std::string& prompt);
    void offer(const Question& question, std::size_t most);

    std::istream& m_in;
    Console& m_console;
    bool m_mayTalk;
};

}  // namespace rackbook
