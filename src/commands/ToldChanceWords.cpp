#include "commands/ToldChanceWords.h"

#include <algorithm>

#include "base/Numbers.h"
#include "calc/ToldChance.h"
#include "calc/Wording.h"
#include "commands/InkWords.h"

namespace rackbook {

namespace {

const TimeSpan& foundOn(const ReadinessRow& row, const History& history) {
    return history.looks[static_cast<std::size_t>(row.colourLook)].at;
}

}  // namespace

std::string toldChanceWords(const ReadinessRow& row, const History& history) {
    switch (toldChanceOf(row)) {
        case ToldChance::told:
            return formatFixed(row.returnedChance * 100, 0) + " %";
        case ToldChance::foundTrue:
            return "found true " + dayWords(foundOn(row, history));
        case ToldChance::datesTooWide:
            return "not known: dates";
        case ToldChance::lightNotKnown:
            break;
    }
    return "not known";
}

std::string foundTrueWords(const ReadinessRow& row, const History& history) {
    const std::string wanted = std::to_string(row.looks.wanted);
    return "The colour was found true " + dayWords(foundOn(row, history)) + ": " +
           (row.looks.wanted == 1
                ? "the one look that the studio wants."
                : std::to_string(std::min(row.looks.foundTrue, row.looks.wanted)) + " of the " +
                      wanted + " looks that the studio wants" +
                      (row.looks.readingAgrees ? ", with a reading that is the record's colour."
                                               : "."));
}

void setToldChance(Tree& one, const ReadinessRow& row, const History& history) {
    const ToldChance told = toldChanceOf(row);
    one.set("returnedChance",
            told == ToldChance::told ? Tree(roundedToFive(row.returnedChance)) : Tree());
    one.set("returnedChanceWhy", textOf(told));
    one.set("foundTrueOn", told == ToldChance::foundTrue ? treeOf(foundOn(row, history)) : Tree());
}

}  // namespace rackbook
