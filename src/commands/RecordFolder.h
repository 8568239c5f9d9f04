// Records as a folder of record files, one for each kind.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "records/Record.h"

namespace rackbook {

std::map<RecordKind, std::vector<Record>> recordsByKind(const std::vector<Record>& records);

// Writes FOLDER/lot.json and so on; the names of the files, and how many records are in each.
// Throws StoreError.
std::vector<std::pair<std::string, std::size_t>> writeRecordFiles(
    const std::vector<Record>& records, const std::string& folder);

// Throws UsageError where something is in the folder already.
void requireNewFolder(const std::string& folder,
                      const std::string& remedy = "Name a new folder, or an empty one.");

}  // namespace rackbook
