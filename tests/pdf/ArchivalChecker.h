// Checks a PDF against the rules of PDF/A-3b (ISO 19005-3) and the clauses of ISO 32000-1 that it
// leans on; of files after part 1 also what ISO 19005-1 asks for beyond that. All rules and clause
// numbers are from memory: no text of the standards was at hand.
#pragma once

#include <string>
#include <vector>

#include "pdf/PdfLevel.h"

namespace rackbook {

struct ArchivalFinding {
    std::string clause;  // of ISO 19005-3; "32000-1, …" or "19005-1, …"; "house" for our own rules
    std::string what;
};

// Every finding, empty for a good file. Throws std::runtime_error where qpdf cannot read the file.
std::vector<ArchivalFinding> archivalFindings(const std::string& bytes,
                                              PdfLevel level = PdfLevel::a3b);

// "clause: what", one a line, to be shown by a test.
std::string linesOf(const std::vector<ArchivalFinding>& findings);

}  // namespace rackbook
