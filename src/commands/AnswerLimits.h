// What cannot be, and what is unlikely, told at the question and not first by the record.
#pragma once

#include <optional>
#include <string>

#include "base/Edtf.h"
#include "commands/Suggestions.h"

namespace rackbook {

// Least and most of a number that an option takes; of its field the schema says the same, which a
// test compares.
struct NumberLimits {
    const char* valueName;  // of the option
    double least;
    double most;
    const char* unit;  // as in messages, with its space
};
const NumberLimits* limitsOf(const std::string& valueName);

// Throws UsageError: temperatures and shares that there are none of, a mass of 0 where something
// was weighed, an end before its beginning, more ink left than there was, sheets spoiled that were
// not pulled. Pre: the answer has the form that its kind wants.
void checkLimits(const AnswersSoFar& soFar, const std::string& name, const std::string& answer);

// "That is in 3 days." of what is told as done, else nothing. What may well lie ahead, such as the
// end of a loan, is not doubted.
std::string doubtAbout(const AnswersSoFar& soFar, const std::string& name,
                       const std::string& answer);

// "in 3 days", "later today"; nothing where it is not wholly to come.
std::optional<std::string> aheadWords(const EdtfDate& date, CivilMinute now);

}  // namespace rackbook
