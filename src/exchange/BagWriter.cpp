#include <map>

#include "base/Error.h"
#include "base/Files.h"
#include "exchange/Bag.h"
#include "exchange/BagDigests.h"
#include "exchange/BagFolder.h"
#include "exchange/BagLines.h"

namespace rackbook {

namespace {

// The RFC wants SHA-512 by default; SHA-256 is what records call attachments and sheets by.
const std::vector<std::string> digestsWritten = {"sha256", "sha512"};

void writeManifests(const std::string& folder, const std::string& beginning,
                    const std::vector<std::string>& paths) {
    std::map<std::string, std::vector<std::pair<std::string, std::string>>> lines;
    for (const std::string& path : paths)
        for (const auto& [digest, value] : digestsOfFile(pathOf(folder, path), digestsWritten))
            lines[digest].emplace_back(value, path);
    for (const std::string& digest : digestsWritten)
        writeFileSafely(pathOf(folder, beginning + digest + ".txt"), manifestText(lines[digest]));
}

}  // namespace

void finishBag(const std::string& folder, std::vector<std::pair<std::string, std::string>> info) {
    const BagFolder found = lookIntoBag(folder);
    if (!found.findings.empty())
        throw StoreError(found.findings.front().where.file, found.findings.front().what,
                         found.findings.front().remedy);
    std::vector<std::string> payload;
    std::uint64_t bytes = 0;
    for (const auto& [path, size] : found.files)
        if (isPayload(path)) {
            payload.push_back(path);
            bytes += size;
        }
    makeFolder(pathOf(folder, "data"));
    writeManifests(folder, "manifest-", payload);
    info.emplace_back("Payload-Oxum", std::to_string(bytes) + "." + std::to_string(payload.size()));
    writeFileSafely(pathOf(folder, "bag-info.txt"), bagInfoText(info));
    writeFileSafely(pathOf(folder, "bagit.txt"),
                    "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    std::vector<std::string> tags = {"bag-info.txt", "bagit.txt"};
    for (const std::string& digest : digestsWritten)
        tags.push_back("manifest-" + digest + ".txt");
    writeManifests(folder, "tagmanifest-", tags);
}

}  // namespace rackbook
