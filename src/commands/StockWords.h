// Facts about stock in words.
#pragma once

#include <string>

#include "calc/LotUse.h"
#include "records/HouseRules.h"
#include "records/Lot.h"

namespace rackbook {

// "3.20 g less than expected", "just as expected", "between 3.20 g less and 1.00 g more than
// expected".
std::string differenceWords(const Estimate& difference_g);

// When the rest is used up: "2026-05 to 2027-01"; "empty", "not used yet", "not in 20 years",
// "cannot tell".
std::string runsOutWords(const LotUse& use, CivilMinute asOf);

// "yes", "no", "cannot tell"; "" where the lot was never opened.
std::string beforeLifeEndsWords(const LotUse& use);

// "0.72, projected", "no price", "cannot tell"
std::string costPerGramWords(const Lot& lot, const LotUse& use);

// "EUR", or "in the book's money" where the book names none.
std::string moneyWords(const Book& studio);

}  // namespace rackbook
