// Bags: folders that can prove what is in them (BagIt 1.0, RFC 8493). Writing and checking.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "base/Finding.h"

namespace rackbook {

struct BagReport {
    std::string version;                                    // "1.0"; empty where it is no bag
    std::vector<std::pair<std::string, std::string>> info;  // labels and values of bag-info.txt
    std::vector<std::string> digests;                       // by which the payload was checked
    std::vector<std::string> payload;                       // paths below the bag, sorted
    std::uint64_t payloadBytes = 0;
    std::vector<Finding> findings;

    // Complete, and every file with the bytes that were put into it. Warnings leave it valid.
    bool isValid() const;
};

// Looks at every file of a bag and follows nothing out of it: links, special files and paths that
// lead elsewhere are findings, and nothing that fetch.txt names is fetched. Throws InputError where
// there is no such folder. `onFile` is called for each file that was looked at; it may be empty.
BagReport checkBag(const std::string& folder, const std::function<void()>& onFile = {});

// Makes a folder, whose files below data/ are written already, into a bag: manifests in SHA-256 and
// SHA-512, bag-info.txt with `info` and the sum of the payload, bagit.txt. Throws StoreError.
void finishBag(const std::string& folder, std::vector<std::pair<std::string, std::string>> info);

}  // namespace rackbook
