// What a book knows of a party, and what has to go for it to be forgotten.
#pragma once

#include <string>
#include <vector>

#include "commands/Recording.h"
#include "commands/SoughtNames.h"
#include "records/RecordSet.h"
#include "store/ForgetSaid.h"

namespace rackbook {

struct ForgetPlan {
    std::string party;                // id
    std::vector<RecordName> records;  // the party, then the places that are theirs, then others
    std::vector<MadeRecord> left;     // what of them is to stand from now on, where that differs
    SoughtNames names;                // that the journal ever had for them
    bool hasSaid = false;             // an entry about them still says more than `left` does
};

// Places that are the party's, and those within them that are no other holder's, are forgotten with
// it; of `also` ("transfer sold-1") what the journal said before their present state. Throws
// UsageError where the journal knows no such party or record.
ForgetPlan planToForget(const BookFile& book, const RecordSet& records, const std::string& party,
                        const std::vector<std::string>& also);

// What rests on the party, a sentence each: editions that it made, prints that it has, transfers,
// sheets that were given out and may say the name.
std::vector<std::string> whatNames(const RecordSet& records, const std::string& party);

}  // namespace rackbook
