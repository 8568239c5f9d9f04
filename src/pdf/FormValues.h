// Reads back what a form was filled with, from a file that may come from anybody.
#pragma once

#include <string>
#include <vector>

#include "pdf/GuardedProcess.h"

namespace rackbook {

struct FormValue {
    std::string name;  // whole, its parts with points between
    bool isTick = false;
    bool isOn = false;  // of a tick
    std::string text;   // of all others
};

// Names, texts, and whether boxes are ticked, in the order of the document; nothing else of the
// file. None where it holds no form, as when it was flattened. All text is valid UTF-8 in the
// normal form C; at most 10,000 fields and 4 MB of them are read. Parsed in a guarded process (see
// GuardedProcess.h) with 256 MB of memory and 10 s.
//
// Throws InputError where the file is missing, no PDF, encrypted, damaged, takes too long or too
// much memory, or holds too much.
std::vector<FormValue> readFormValues(const std::string& path, ProcessLimits limits = {});

}  // namespace rackbook
