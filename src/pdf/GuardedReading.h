// Reading a PDF from outside in a guarded process, and saying plainly why it could not be read.
#pragma once

#include <functional>
#include <string>

#include "base/Error.h"
#include "pdf/CarriedFilesAnswer.h"
#include "pdf/GuardedProcess.h"

namespace rackbook {

// What is asked of the file. In messages: "it carries more than 64 MB of files".
struct GuardedQuestion {
    std::string path;
    ProcessLimits limits;
    std::string noPdfRemedy;  // "Name a PDF that Rackbook made."
    std::string holds;        // "carries"
    std::string what;         // "files"
    std::string tooMuchRemedy;
};

InputError damagedPdf(const std::string& path);

// The work's answer behind the word `found`, see CarriedFilesAnswer.h; the work gets the most bytes
// that it may give. Throws InputError where the file is missing, no PDF, encrypted, damaged, takes
// too long or too much memory, or holds too much.
std::string guardedAnswer(const GuardedQuestion& question,
                          const std::function<std::string(std::size_t mostBytes)>& work);

}  // namespace rackbook
