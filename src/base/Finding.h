// A finding: one thing that is wrong or missing, where it stands, and what to do about it.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

enum class Severity { note, warning, error };

const char* severityName(Severity severity);

// Where a finding stands. Every part may be empty; line counts from 1, 0 means not known.
struct Location {
    std::string file;
    int line = 0;
    std::string pointer;  // JSON pointer (RFC 6901) inside the file
    std::string record;   // "kind id", for instance "mix grey-stock"
};

struct Finding {
    std::string rule;  // name of the rule or check that found it
    Severity severity = Severity::error;
    Location where;
    std::string what;    // why it is wrong, without a full stop
    std::string value;   // the offending value as written, shortened; may be empty
    std::string remedy;  // what to do, a whole sentence
};

// "file:line /pointer record", leaving out what is not known.
std::string describe(const Location& where);

// One line: "where: what (value). Remedy."
std::string describe(const Finding& finding);

// Shortens a value for a message to at most 60 code points, marking the cut.
std::string excerpt(const std::string& value);

}  // namespace rackbook
