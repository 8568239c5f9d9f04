// What may be answered to a question about a verb's argument or option, going by the book.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/Conversation.h"
#include "commands/Answers.h"
#include "records/Book.h"
#include "store/BookFile.h"

namespace rackbook {

// What the book is asked with: it must outlive the questions.
struct AnswersSoFar {
    const BookFile& book;
    const Book& studio;
    const CommandSpec& spec;
    const Answers& answers;
};

// What is offered for the argument or option of that name; unknown to the book: nothing.
std::vector<Choice> choicesFor(const AnswersSoFar& soFar, const std::string& name);

// What Enter alone should mean, going by the entry before: the edition of the last pull, the sheets
// that have not been through the layer yet, the line that was hung on last, now.
std::optional<std::string> presetFor(const AnswersSoFar& soFar, const std::string& name);

// Throws UsageError saying what is wrong with an answer, as far as it and those before show it; the
// verb itself checks the whole.
void checkAnswer(const AnswersSoFar& soFar, const std::string& name, const std::string& answer);

}  // namespace rackbook
