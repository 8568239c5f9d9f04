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
    // What was typed as it is to be kept: "2026-03-27" of "yesterday". It is shown where it says
    // something else. Throws as `check`; may be empty.
    std::function<std::string(const std::string&)> read;
    // Throws UsageError saying what is wrong with the answer; may be empty.
    std::function<void(const std::string&)> check;
    // What makes an answer unlikely, as a whole sentence, or nothing: the person is asked whether
    // it stands all the same. May be empty.
    std::function<std::string(const std::string&)> doubt;
    std::string presetWords;  // how the preset is shown; as it is where empty
};

// The person ended the conversation. Nothing was recorded.
class GaveUp : public UsageError {
public:
    GaveUp();
};

// The same by Ctrl-C, where it is held (Interrupts.h): the conversation can go on.
class Interrupted : public GaveUp {};

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
    // GaveUp at the end of the input, Interrupted at Ctrl-C where that is held.
    std::optional<std::string> ask(const Question& question);

    // Enter alone means `preset`.
    bool confirm(const std::string& text, bool preset = true);

private:
    std::string line(const std::string& prompt);
    [[noreturn]] void stop();
    std::optional<std::string> settled(const Question& question, const std::string& typed);
    void offer(const Question& question, std::size_t most);

    std::istream& m_in;
    Console& m_console;
    bool m_mayTalk;
};

}  // namespace rackbook
