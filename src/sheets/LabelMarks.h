// The places of a label that are filled in.
#pragma once

#include <set>
#include <string>

namespace rackbook {

// The words in braces, without them: {"date"} of "Checked as of {date}". Only letters and digits
// count as words.
std::set<std::string> marksIn(const std::string& label);

}  // namespace rackbook
