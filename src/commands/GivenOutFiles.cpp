#include "commands/GivenOutFiles.h"

#include <algorithm>

#include "base/Files.h"
#include "base/Sha256.h"

namespace rackbook {

namespace {

Finding alteredFile(const std::string& path, const Issue& issue) {
    Finding finding;
    finding.rule = "sheets";
    finding.where.record = path;
    finding.what = "its bytes are not those that were given out under this name on " +
                   issue.issuedOn.text() + " (issue " + issue.id + ")";
    finding.remedy = "It was altered, or made anew: rackbook check-sheet tells what it says.";
    return finding;
}

}  // namespace

std::vector<Finding> givenOutFileFindings(const std::vector<Issue>& issues,
                                          const std::vector<std::string>& paths) {
    std::vector<Finding> findings;
    for (const std::string& path : paths) {
        const std::string hash = sha256OfFile(path);
        const std::string name = fileNameOf(path);
        const Issue* named = nullptr;
        const bool isKnown = std::any_of(issues.begin(), issues.end(), [&](const Issue& issue) {
            if (issue.fileName == name && named == nullptr)
                named = &issue;
            return issue.fileSha256 == hash;
        });
        if (!isKnown && named != nullptr)
            findings.push_back(alteredFile(path, *named));
    }
    return findings;
}

}  // namespace rackbook
