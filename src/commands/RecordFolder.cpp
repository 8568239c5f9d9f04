#include "commands/RecordFolder.h"

#include "base/Error.h"
#include "base/Files.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"

namespace rackbook {

std::map<RecordKind, std::vector<Record>> recordsByKind(const std::vector<Record>& records) {
    std::map<RecordKind, std::vector<Record>> kinds;
    for (const Record& record : records)
        kinds[kindOf(record)].push_back(record);
    return kinds;
}

std::vector<std::pair<std::string, std::size_t>> writeRecordFiles(
    const std::vector<Record>& records, const std::string& folder) {
    std::map<RecordKind, std::vector<std::string>> payloads;
    for (const Record& record : records)
        payloads[kindOf(record)].push_back(encodeRecord(record));
    std::vector<std::pair<std::string, std::size_t>> written;
    for (const auto& [kind, texts] : payloads) {
        written.emplace_back(std::string(textOf(kind)) + ".json", texts.size());
        writeFileSafely(pathOf(folder, written.back().first), recordFileText(texts));
    }
    return written;
}

void requireNewFolder(const std::string& folder, const std::string& remedy) {
    if (fileExists(folder) && !isEmptyFolder(folder))
        throw UsageError(folder + " is not an empty folder", remedy);
}

}  // namespace rackbook
