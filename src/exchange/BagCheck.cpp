#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "exchange/Bag.h"
#include "exchange/BagDigests.h"
#include "exchange/BagFolder.h"
#include "exchange/BagLines.h"

namespace rackbook {

namespace {

constexpr std::size_t largestTagFile = std::size_t{256} << 20;
constexpr const char* askAgain = "Ask whoever made the bag for it again.";

// "sha512" of "manifest-sha512.txt", or nothing.
std::optional<std::string> digestNamed(const std::string& file, const std::string& beginning) {
    const std::string ending = ".txt";
    if (!startsWith(file, beginning) || file.size() <= beginning.size() + ending.size() ||
        file.compare(file.size() - ending.size(), ending.size(), ending) != 0)
        return std::nullopt;
    return file.substr(beginning.size(), file.size() - beginning.size() - ending.size());
}

class BagCheck {
public:
    BagCheck(const std::string& folder, const std::function<void()>& onFile)
        : m_folder(folder), m_onFile(onFile), m_found(lookIntoBag(folder)) {}

    BagReport run() {
        m_report.findings = std::move(m_found.findings);
        if (!readDeclaration())
            return std::move(m_report);
        readInfo();
        readManifests("manifest-", m_payloadManifests);
        readManifests("tagmanifest-", m_tagManifests);
        if (m_payloadManifests.empty())
            add("", 0, "no manifest names the payload in a digest that is known", "",
                "Ask for a bag with a manifest in SHA-512 or SHA-256.");
        checkScope();
        checkPayloadIsNamed();
        checkDigests();
        checkSum();
        checkFetch();
        for (Finding& clash : clashesOfNames(m_found.files))
            m_report.findings.push_back(std::move(clash));
        return std::move(m_report);
    }

private:
    using Manifests = std::map<std::string, std::vector<ManifestLine>>;  // by digest

    void add(const std::string& file, int line, const std::string& what, const std::string& value,
             const std::string& remedy, Severity severity = Severity::error) {
        m_report.findings.push_back(bagFinding(file.empty() ? m_folder : pathOf(m_folder, file),
                                               line, what, value, remedy, severity));
    }

    std::optional<std::string> tagText(const std::string& file) {
        if (m_found.files.count(file) == 0)
            return std::nullopt;
        std::string text = readFile(pathOf(m_folder, file), largestTagFile);
        if (!invalidUtf8At(text))
            return text;
        add(file, 0, "it is not in UTF-8", "", "Ask whoever made the bag.");
        return std::nullopt;
    }

    bool readDeclaration() {
        const std::optional<std::string> text = tagText("bagit.txt");
        if (!text) {
            add("", 0, "it is no bag: there is no file bagit.txt in it", "",
                "Name the folder of a bag.");
            return false;
        }
        const std::optional<std::string> version =
            bagDeclaration(*text, pathOf(m_folder, "bagit.txt"), m_report.findings);
        m_report.version = version.value_or("");
        return version.has_value();
    }

    void readInfo() {
        if (const std::optional<std::string> text = tagText("bag-info.txt"))
            m_report.info =
                bagInfoLines(*text, pathOf(m_folder, "bag-info.txt"), m_report.findings);
    }

    void readManifests(const std::string& beginning, Manifests& manifests) {
        for (const auto& [file, bytes] : m_found.files) {
            const std::optional<std::string> digest = digestNamed(file, beginning);
            if (!digest)
                continue;
            if (!isKnownDigest(*digest)) {
                add(file, 0, "this digest is not known, so nothing was checked by it", *digest,
                    "Rely on the other manifests.", Severity::warning);
                continue;
            }
            if (const std::optional<std::string> text = tagText(file))
                manifests[*digest] =
                    manifestLines(*text, pathOf(m_folder, file), m_report.findings);
        }
        if (&manifests == &m_payloadManifests)
            for (const auto& [digest, lines] : manifests)
                m_report.digests.push_back(digest);
    }

    void checkScope() {
        for (const auto& [digest, lines] : m_payloadManifests)
            for (const ManifestLine& line : lines)
                if (!isPayload(line.path))
                    add("manifest-" + digest + ".txt", line.line,
                        "a manifest names only what is in data/", line.path,
                        "Ask whoever made the bag.");
        for (const auto& [digest, lines] : m_tagManifests)
            for (const ManifestLine& line : lines)
                if (isPayload(line.path) || startsWith(line.path, "tagmanifest-"))
                    add("tagmanifest-" + digest + ".txt", line.line,
                        "a manifest of tag files names neither the payload nor its own kind",
                        line.path, "Ask whoever made the bag.");
    }

    // Before 1.0 it was enough that one manifest named a file.
    void checkPayloadIsNamed() {
        std::map<std::string, std::size_t> naming;
        for (const auto& [digest, lines] : m_payloadManifests)
            for (const ManifestLine& line : lines)
                ++naming[line.path];
        const std::size_t wanted = m_report.version == "1.0" ? m_payloadManifests.size() : 1;
        for (const auto& [file, bytes] : m_found.files) {
            if (!isPayload(file))
                continue;
            m_report.payload.push_back(file);
            m_report.payloadBytes += bytes;
            if (naming[file] < wanted)
                add(file, 0,
                    naming[file] == 0 ? "no manifest names it" : "a manifest leaves it out", "",
                    "Find out how it came into the bag.");
        }
    }

    // Every file is read once, whatever manifests name it.
    void checkDigests() {
        struct Stated {
            std::string manifest;
            std::string digest;
            const ManifestLine* line;
        };
        std::map<std::string, std::vector<Stated>> stated;
        for (const auto& [beginning, manifests] : {std::pair("manifest-", &m_payloadManifests),
                                                   std::pair("tagmanifest-", &m_tagManifests)})
            for (const auto& [digest, lines] : *manifests)
                for (const ManifestLine& line : lines)
                    stated[line.path].push_back({beginning + digest + ".txt", digest, &line});
        for (const auto& [path, statements] : stated) {
            if (m_found.files.count(path) == 0) {
                add(statements.front().manifest, statements.front().line->line,
                    "the file is not in the bag", path, askAgain);
                continue;
            }
            std::vector<std::string> names;
            for (const Stated& statement : statements)
                if (std::find(names.begin(), names.end(), statement.digest) == names.end())
                    names.push_back(statement.digest);
            const std::map<std::string, std::string> digests =
                digestsOfFile(pathOf(m_folder, path), names);
            for (const Stated& statement : statements)
                if (digests.at(statement.digest) != statement.line->digest)
                    add(path, 0, "it has not the bytes that " + statement.manifest + " states", "",
                        askAgain);
            if (m_onFile)
                m_onFile();
        }
    }

    void checkSum() {
        for (const auto& [label, value] : m_report.info)
            if (label == "Payload-Oxum" && value != std::to_string(m_report.payloadBytes) + "." +
                                                        std::to_string(m_report.payload.size()))
                add("bag-info.txt", 0,
                    "its payload is " + std::to_string(m_report.payloadBytes) + " bytes in " +
                        std::to_string(m_report.payload.size()) + " files, not what it states",
                    value, askAgain);
        const bool hasData = !m_report.payload.empty() || isFolder(pathOf(m_folder, "data"));
        if (!hasData)
            add("", 0, "there is no folder data in it", "", askAgain);
    }

    void checkFetch() {
        if (m_found.files.count("fetch.txt") != 0)
            add("fetch.txt", 0, "it names files that lie elsewhere, and nothing is fetched", "",
                "Fetch them by hand, from where you trust, and check the bag again.",
                Severity::warning);
    }

    std::string m_folder;
    const std::function<void()>& m_onFile;
    BagFolder m_found;
    Manifests m_payloadManifests;
    Manifests m_tagManifests;
    BagReport m_report;
};

}  // namespace

bool BagReport::isValid() const {
    return !version.empty() && std::none_of(findings.begin(), findings.end(), [](const Finding& f) {
        return f.severity == Severity::error;
    });
}

BagReport checkBag(const std::string& folder, const std::function<void()>& onFile) {
    return BagCheck(folder, onFile).run();
}

}  // namespace rackbook
