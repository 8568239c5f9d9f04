#include "commands/Contacts.h"

namespace rackbook {

bool withholdContact(Record& record) {
    Party* party = std::get_if<Party>(&record);
    if (party == nullptr || !party->contact)
        return false;
    party->contact.reset();
    party->contactWithheld = true;
    return true;
}

std::size_t withholdContacts(std::vector<Record>& records) {
    std::size_t withheld = 0;
    for (Record& record : records)
        withheld += withholdContact(record) ? 1 : 0;
    return withheld;
}

}  // namespace rackbook
