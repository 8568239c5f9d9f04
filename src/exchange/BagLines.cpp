#include "exchange/BagLines.h"

#include <algorithm>
#include <cctype>
#include <map>

#include "base/Text.h"

namespace rackbook {

namespace {

constexpr const char* blanks = " \t";

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& c : lower)
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return lower;
}

bool isDigest(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
        return std::isxdigit(static_cast<unsigned char>(c)) != 0;
    });
}

}  // namespace

bool startsWith(std::string_view text, std::string_view beginning) {
    return text.substr(0, beginning.size()) == beginning;
}

Finding bagFinding(const std::string& file, int line, const std::string& what,
                   const std::string& value, const std::string& remedy, Severity severity) {
    Finding finding;
    finding.rule = "bag";
    finding.severity = severity;
    finding.where.file = file;
    finding.where.line = line;
    finding.what = what;
    finding.value = excerpt(value);
    finding.remedy = remedy;
    return finding;
}

std::vector<std::string_view> linesOfTags(std::string_view text) {
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const std::size_t end = text.find_first_of("\r\n");
        lines.push_back(text.substr(0, end));
        if (end == std::string_view::npos)
            break;
        const bool isPair = text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n';
        text.remove_prefix(end + (isPair ? 2 : 1));
    }
    return lines;
}

std::optional<std::string> bagDeclaration(std::string_view text, const std::string& file,
                                          std::vector<Finding>& findings) {
    constexpr std::string_view version = "BagIt-Version: ";
    constexpr std::string_view encoding = "Tag-File-Character-Encoding: ";
    const std::vector<std::string_view> lines = linesOfTags(text);
    if (lines.size() != 2 || !startsWith(lines[0], version) || !startsWith(lines[1], encoding)) {
        findings.push_back(bagFinding(
            file, 1, "it must hold two lines, \"BagIt-Version: 1.0\" and after it the encoding",
            std::string(lines.empty() ? "" : lines[0]), "Ask whoever made the bag."));
        return std::nullopt;
    }
    const std::string number(lines[0].substr(version.size()));
    const std::string coded(lines[1].substr(encoding.size()));
    if (number != "1.0" && number != "0.97" && number != "0.96" && number != "0.95") {
        findings.push_back(bagFinding(file, 1, "this version of BagIt is not known", number,
                                      "Use a newer rackbook, or ask for a bag of version 1.0."));
        return std::nullopt;
    }
    if (lowered(coded) != "utf-8") {
        findings.push_back(bagFinding(file, 2, "only tag files in UTF-8 can be read", coded,
                                      "Ask for a bag whose tag files are in UTF-8."));
        return std::nullopt;
    }
    return number;
}

std::vector<ManifestLine> manifestLines(std::string_view text, const std::string& file,
                                        std::vector<Finding>& findings) {
    std::vector<ManifestLine> entries;
    std::map<std::string, int> seen;
    int number = 0;
    for (const std::string_view line : linesOfTags(text)) {
        ++number;
        const std::size_t gap = line.find_first_of(blanks);
        const std::size_t from = line.find_first_not_of(blanks, gap);
        if (gap == std::string_view::npos || from == std::string_view::npos ||
            !isDigest(line.substr(0, gap))) {
            findings.push_back(bagFinding(file, number,
                                          "a line must be a checksum, blanks and a path",
                                          std::string(line), "Ask whoever made the bag."));
            continue;
        }
        std::string path = decodedBagPath(line.substr(from));
        if (startsWith(path, "./"))
            path.erase(0, 2);
        if (const std::optional<std::string> wrong = whatIsWrongWithBagPath(path)) {
            findings.push_back(bagFinding(file, number, *wrong, path,
                                          "Do not use this bag: no sound one names such a path."));
            continue;
        }
        if (const auto [known, isNew] = seen.emplace(path, number); !isNew) {
            findings.push_back(bagFinding(
                file, number, "the path is named on line " + std::to_string(known->second) + " too",
                path, "Ask whoever made the bag."));
            continue;
        }
        entries.push_back({number, lowered(line.substr(0, gap)), std::move(path)});
    }
    return entries;
}

std::string manifestText(const std::vector<std::pair<std::string, std::string>>& digestAndPath) {
    std::string text;
    for (const auto& [digest, path] : digestAndPath)
        text += digest + "  " + encodedBagPath(path) + "\n";
    return text;
}

BagInfo bagInfoLines(std::string_view text, const std::string& file,
                     std::vector<Finding>& findings) {
    BagInfo info;
    int number = 0;
    for (const std::string_view line : linesOfTags(text)) {
        ++number;
        const std::size_t colon = line.find(':');
        const bool isFolded = !line.empty() && (line[0] == ' ' || line[0] == '\t');
        if (isFolded && !info.empty())
            info.back().second += " " + trimmed(std::string(line), blanks);
        else if (isFolded || colon == std::string_view::npos || colon == 0)
            findings.push_back(bagFinding(file, number, "a line must be a label, a colon and words",
                                          std::string(line), "Ask whoever made the bag."));
        else
            info.emplace_back(std::string(line.substr(0, colon)),
                              trimmed(std::string(line.substr(colon + 1)), blanks));
    }
    return info;
}

std::string bagInfoText(const BagInfo& info) {
    std::string text;
    for (const auto& [label, value] : info) {
        std::string oneLine = value;
        for (char& c : oneLine)
            c = c == '\n' || c == '\r' ? ' ' : c;
        text += label + ": " + oneLine + "\n";
    }
    return text;
}

std::string encodedBagPath(std::string_view path) {
    std::string encoded;
    for (const char c : path)
        encoded += c == '%' ? "%25" : c == '\n' ? "%0A" : c == '\r' ? "%0D" : std::string(1, c);
    return encoded;
}

std::string decodedBagPath(std::string_view path) {
    std::string decoded;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::string code = path[i] == '%' ? lowered(path.substr(i + 1, 2)) : std::string();
        const char meant = code == "25" ? '%' : code == "0a" ? '\n' : code == "0d" ? '\r' : '\0';
        decoded += meant == '\0' ? path[i] : meant;
        i += meant == '\0' ? 0 : 2;
    }
    return decoded;
}

std::optional<std::string> whatIsWrongWithBagPath(const std::string& path) {
    if (path.empty())
        return "the path is empty";
    if (path.find('\0') != std::string::npos || invalidUtf8At(path))
        return "the path is no text in UTF-8";
    if (path.find('\\') != std::string::npos)
        return "the path has a backslash, which is a separator on some machines";
    if (path[0] == ' ' || path[0] == '\t')
        return "the path begins with a blank, which no manifest can state";
    if (path[0] == '/')
        return "the path is absolute";
    if (path[0] == '~')
        return "the path leads into somebody's home";
    if (path.size() > 1 && path[1] == ':')
        return "the path begins with a drive";
    std::size_t from = 0;
    while (from <= path.size()) {
        const std::size_t end = std::min(path.find('/', from), path.size());
        const std::string_view step = std::string_view(path).substr(from, end - from);
        if (step.empty() || step == "." || step == "..")
            return "the path leads out of the bag, or around in it";
        from = end + 1;
    }
    return std::nullopt;
}

}  // namespace rackbook
