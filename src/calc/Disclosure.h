// What buyers of prints must be told in some places, as a list to go through. A checklist, not
// legal advice: the law differs and changes, and where it says something else, it counts.
//
// The list is a superset of items seen in US statutes on fine prints: New York, Arts and Cultural
// Affairs Law, article 15; Maryland, Commercial Law 14-504; Hawaii, 481F-4; Georgia, 10-1-432. Of
// California, Civil Code 1740 ff., the items were not seen.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Edition.h"

namespace rackbook {

struct DisclosureItem {
    const char* item;  // as in Edition::disclosures
    const char* words;
};

// In the order in which sheets print them.
const std::vector<DisclosureItem>& disclosureItems();

struct DisclosureRow {
    std::string item;
    bool isListed = true;                    // false: not an item of the list above
    std::optional<DisclosureAnswer> answer;  // absent: nobody answered
    std::string text;
};

// Every item of the list in its order, then what the edition answers beside it, as recorded.
std::vector<DisclosureRow> disclosureOf(const Edition& edition);

}  // namespace rackbook
