// The lines of a bag's own files: declaration, manifests, information. Private to exchange/.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/Finding.h"

namespace rackbook {

struct ManifestLine {
    int line = 0;
    std::string digest;  // lower-case
    std::string path;    // below the bag's folder, decoded
};

bool startsWith(std::string_view text, std::string_view beginning);

// Whether a path below a bag is of what is packed, and not of what describes it.
inline bool isPayload(std::string_view path) {
    return startsWith(path, "data/");
}

// Lines without their ends: LF, CR LF or CR (RFC 8493, section 2.1.3).
std::vector<std::string_view> linesOfTags(std::string_view text);

// The version, such as "1.0"; what is wrong goes to `findings`.
std::optional<std::string> bagDeclaration(std::string_view text, const std::string& file,
                                          std::vector<Finding>& findings);

// What is wrong goes to `findings`, and those lines are left out.
std::vector<ManifestLine> manifestLines(std::string_view text, const std::string& file,
                                        std::vector<Finding>& findings);
std::string manifestText(const std::vector<std::pair<std::string, std::string>>& digestAndPath);

// Labels and values in their order, folded lines put together.
using BagInfo = std::vector<std::pair<std::string, std::string>>;
BagInfo bagInfoLines(std::string_view text, const std::string& file,
                     std::vector<Finding>& findings);
std::string bagInfoText(const BagInfo& info);

// CR, LF and % are written as %0D, %0A and %25, and nothing else is (section 2.1.3).
std::string encodedBagPath(std::string_view path);
std::string decodedBagPath(std::string_view path);

// Why a path in a manifest may not be followed, or nothing: absolute, leading out of the bag, by a
// drive, into somebody's home, with a backslash or characters that are none of UTF-8.
std::optional<std::string> whatIsWrongWithBagPath(const std::string& path);

Finding bagFinding(const std::string& file, int line, const std::string& what,
                   const std::string& value, const std::string& remedy,
                   Severity severity = Severity::error);

}  // namespace rackbook
