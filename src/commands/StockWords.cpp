#include "commands/StockWords.h"

#include <cmath>

#include "base/Numbers.h"
#include "commands/InkWords.h"

namespace rackbook {

namespace {

constexpr double hair_g = 0.005;

std::string sideWords(double difference_g) {
    if (std::abs(difference_g) < hair_g)
        return "nothing";
    return formatFixed(std::abs(difference_g), 2) + (difference_g < 0 ? " g less" : " g more");
}

std::string monthOf(CivilMinute minute) {
    return formatDay(minute).substr(0, 7);
}

}  // namespace

std::string differenceWords(const Estimate& difference) {
    const bool exact = difference.high - difference.low < 2 * hair_g;
    if (exact && std::abs(difference.low) < hair_g)
        return "just as expected";
    if (exact)
        return sideWords(difference.best) + " than expected";
    if (std::isinf(difference.low) || std::isinf(difference.high))
        return "the difference cannot be told";
    return "between " + sideWords(difference.low) + " and " + sideWords(difference.high) +
           " than expected";
}

std::string runsOutWords(const LotUse& use, CivilMinute asOf) {
    constexpr CivilMinute longest = 20 * 365 * minutesPerDay;
    if (use.left_g.high <= 0)
        return "empty";
    if (!use.runsOut)
        return use.takings.empty() ? "not used yet" : "cannot tell";
    if (use.runsOut->earliest > asOf + longest)
        return "not in 20 years";
    const std::string first = monthOf(use.runsOut->earliest);
    if (use.runsOut->latest > asOf + longest)
        return first + " or later";
    const std::string last = monthOf(use.runsOut->latest);
    return first == last ? first : first + " to " + last;
}

std::string beforeLifeEndsWords(const LotUse& use) {
    if (!use.lifeEnds)
        return {};
    return use.runsOutBeforeLifeEnds == BeforeLifeEnds::cannotTell
               ? "cannot tell"
               : textOf(use.runsOutBeforeLifeEnds);
}

std::string costPerGramWords(const Lot& lot, const LotUse& use) {
    if (!lot.price)
        return "no price";
    if (use.costPerGram.low <= 0 && std::isinf(use.costPerGram.high))
        return "cannot tell";
    return estimateWords(use.costPerGram, 2) + (use.costIsProjected ? ", projected" : "");
}

std::string moneyWords(const Book& studio) {
    return studio.currency.value_or("the book's money");
}

}  // namespace rackbook
