// Reads back what a sheet carries inside, from a file that may come from anybody.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "pdf/GuardedProcess.h"
#include "sheets/PageModel.h"

namespace rackbook {

constexpr std::size_t mostCarriedFiles = 1000;

struct CarriedFiles {
    std::string title;    // of the document; may be empty
    std::string created;  // "2026-03-04T08:30:00Z" or with a shift; empty where it is not said
    std::vector<AssociatedFile> files;  // in the order of the document, at least one
};

// The file is parsed in a guarded process (see GuardedProcess.h). Files inside are those that the
// document names as associated, or else those in its tree of names; at most mostCarriedFiles. Their
// names are plain file names, all text is valid UTF-8. Limits: 64 MB of files inside, 256 MB of
// memory, 10 s. The PDF itself is read in parts and may be of any size.
//
// Throws InputError where the file is missing, no PDF, encrypted, damaged, takes too long or too
// much memory, carries too much, or carries nothing.
CarriedFiles readCarriedFiles(const std::string& path, const ProcessLimits& limits = {});

}  // namespace rackbook
