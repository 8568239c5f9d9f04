// What people type in answer to a question, as the verb takes it.
#pragma once

#include <string>

#include "base/CivilTime.h"
#include "commands/Suggestions.h"

namespace rackbook {

// Days: today, yesterday, 26.11.2026 (the day first, by its dots), 26.11. (the latest that is
// past), 26/11/2026 or 11/26/2026 where only one reading is a day. Times: 14:30, 14.30, 1430,
// 14h30, now, alone or behind a day; alone they are of the day of the beginning that was answered,
// else of today. Numbers of impressions: "4 and 9", "4, 9", "1 to 18", all where that means
// something; sheets also without the edition's code. Numbers with a decimal comma and their unit
// behind them. What is none of these comes back as it was typed. Throws UsageError where it can
// mean two things.
std::string answerMeant(const AnswersSoFar& soFar, const std::string& name,
                        const std::string& typed);

// An answer as people would type it: a moment with a blank before its time, all else as it is.
std::string asTyped(const std::string& answer);

// What a question says of that when it is asked for more; empty where nothing is read otherwise.
std::string typingHelp(const CommandSpec& spec, const std::string& name);

// The parts of it that need no book. `now` is the minute on the studio's clock; a clock time alone
// is of the day that `clockDay` lies in.
std::string dayMeant(const std::string& typed, CivilMinute now);
std::string momentMeant(const std::string& typed, CivilMinute now, CivilMinute clockDay);
std::string rangeMeant(const std::string& typed);
std::string numberMeant(const std::string& typed);

}  // namespace rackbook
