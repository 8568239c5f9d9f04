// The files of a bag that say what is in it.
#include "Fuzz.h"
#include "exchange/BagLines.h"

using namespace rackbook;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text = fuzz::textOf(data, size);
    std::vector<Finding> findings;
    bagDeclaration(text, "bagit.txt", findings);
    std::vector<std::pair<std::string, std::string>> lines;
    for (const ManifestLine& line : manifestLines(text, "manifest-sha256.txt", findings)) {
        const std::string around = "/" + line.path + "/";
        fuzz::require(line.path[0] != '/' && around.find("/../") == std::string::npos,
                      "no path leads out of the bag");
        lines.emplace_back(line.digest, line.path);
    }
    findings.clear();
    const std::vector<ManifestLine> again =
        manifestLines(manifestText(lines), "manifest-sha256.txt", findings);
    fuzz::require(findings.empty() && again.size() == lines.size(), "manifests come back whole");
    for (std::size_t i = 0; i < lines.size(); ++i)
        fuzz::require(again[i].path == lines[i].second, "paths come back equal");
    bagInfoLines(text, "bag-info.txt", findings);
    return 0;
}
