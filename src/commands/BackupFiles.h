// Backups in a folder: their names, and which of them are no longer wanted.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace rackbook {

// "studio-20260328T180000Z.rackbook" for studio.rackbook: basic form of ISO 8601, in UTC.
std::string backupName(const std::string& bookPath, std::int64_t madeAt_s);

// "20260328T180000Z"
std::string stampOf(std::int64_t epoch_s);

struct Keeping {
    std::size_t days = 0;    // the last backup of each of so many days that have one
    std::size_t months = 0;  // and of each of so many months
};

// Of names in a folder, those of backups of that book which Keeping does not ask for, sorted. The
// latest always stays, and so does whatever has another name.
std::vector<std::string> superseded(const std::string& bookPath,
                                    const std::vector<std::string>& names, const Keeping& keeping);

}  // namespace rackbook
