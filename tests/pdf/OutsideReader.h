// Runs the outside readers (poppler-utils, qpdf) on a file. A missing tool fails the test.
#pragma once

#include <cstddef>
#include <string>

namespace rackbook {

// Writes the bytes to a file of the test's own and gives its path; gone when the test ends.
std::string fileWith(const std::string& bytes, const std::string& name);

struct ToolRun {
    int exitCode = -1;
    std::string output;  // standard output and error
};

ToolRun readWith(const std::string& command);

// How often the part stands in the text.
std::size_t timesIn(const std::string& text, const std::string& part);

}  // namespace rackbook
