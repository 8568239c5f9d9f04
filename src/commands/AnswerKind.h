// What sort of answer an argument or option of a verb takes, read off its description.
#pragma once

#include <string>

#include "cli/CommandSpec.h"

namespace rackbook {

enum class AnswerKind {
    text,
    flag,
    edition,
    layer,
    range,
    sheets,
    place,
    mix,
    lot,
    party,
    balance,
    block,
    recordKind,
    transferKind,
    sky,
    moment,  // a date, a date with a time, or a time of today
    date,
    mass,
    number
};

AnswerKind answerKindOf(const CommandSpec& spec, const std::string& name);

}  // namespace rackbook
