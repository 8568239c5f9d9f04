// Private contacts of people: they leave the book, and reach the screen, only when asked for.
#pragma once

#include <cstddef>
#include <vector>

#include "records/Record.h"

namespace rackbook {

// Takes the contact out of a party and says that one was withheld; other records stay as they are.
// True where there was a contact.
bool withholdContact(Record& record);

// The same for many; how many contacts were withheld.
std::size_t withholdContacts(std::vector<Record>& records);

}  // namespace rackbook
