// One entry of the book, made by asking for what the words of a command line leave open.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "cli/Conversation.h"
#include "commands/Answers.h"
#include "commands/Command.h"
#include "commands/GuideSteps.h"
#include "records/Book.h"
#include "store/BookFile.h"

namespace rackbook {

// Whether the verb writes and something that it cannot do without is missing. Throws UsageError
// where the words are wrong in themselves.
bool leavesOpen(const CommandSpec& spec, const std::vector<std::string>& words);

// Keeps references: all of them must outlive it.
class GuidedEntry {
public:
    GuidedEntry(const CommandSpec& spec, std::vector<std::string> words, const BookFile& book,
                const DataFolders& folders, Conversation& conversation);

    // Asks, shows what was answered, lets `attempt` try the words and answers be changed until they
    // stand and the person says that they are right; false where the entry was given up. `attempt`
    // throws Error where they do not stand. Throws GaveUp at the end of the input.
    bool settle(const std::function<void(const std::vector<std::string>&)>& attempt);

    // The whole command line after the verb.
    std::vector<std::string> words() const;

private:
    void askAll();
    void ask(const GuideStep& step);
    bool isObstructed(const GuideStep& step) const;
    Error inQuestions(const Error& error) const;
    std::vector<std::string> answersTo(const GuideStep& step, Question question);
    std::string noneOf(const GuideStep& step) const;
    void showAnswers() const;
    std::vector<const GuideStep*> answerable() const;
    bool change();
    bool isRepeatable(const std::string& name) const;
    bool isRequired(const std::string& name) const;
    std::string helpOf(const std::string& name) const;
    std::string fieldHelp() const;

    const CommandSpec& m_spec;
    std::vector<std::string> m_given;
    const BookFile& m_book;
    const DataFolders& m_folders;
    Book m_studio;
    Conversation& m_conversation;
    std::vector<GuideStep> m_steps;
    Answers m_answers;
    Answers m_saidByWords;
    std::set<std::string> m_asked;
};

}  // namespace rackbook
