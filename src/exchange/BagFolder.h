// What lies in the folder of a bag. Private to exchange/.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "base/Finding.h"

namespace rackbook {

struct BagFolder {
    std::map<std::string, std::uint64_t> files;  // bytes by path below the folder, with slashes
    std::vector<Finding> findings;               // links, special files, names that cannot be
};

// Never follows a link. Throws InputError where the folder cannot be read.
BagFolder lookIntoBag(const std::string& folder);

// Names that are one file on some machines: alike but for capitals or for how accents are coded
// (Unicode forms), and those that some machines cannot have. `files` are paths below the bag.
std::vector<Finding> clashesOfNames(const std::map<std::string, std::uint64_t>& files);

}  // namespace rackbook
