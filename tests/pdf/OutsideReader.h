// Runs the outside readers (poppler-utils, qpdf) on a file. A missing tool fails the test.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// Writes the bytes to a file of the test's own and gives its path.
std::string fileWith(const std::string& bytes, const std::string& name);

struct Reading {
    int exitCode = -1;
    std::string output;  // standard output and error
};

Reading readWith(const std::string& command);

}  // namespace rackbook
