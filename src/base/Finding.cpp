#include "base/Finding.h"

#include "base/Text.h"

namespace rackbook {

const char* severityName(Severity severity) {
    switch (severity) {
        case Severity::note:
            return "note";
        case Severity::warning:
            return "warning";
        case Severity::error:
            break;
    }
    return "error";
}

namespace {

constexpr std::size_t longestPart = 300;

std::string excerpt(const std::string& value, std::size_t longest) {
    std::string text = printable(value);
    const std::size_t end = offsetOfCodePoint(text, longest);
    return end < text.size() ? text.substr(0, end) + "…" : text;
}

}  // namespace

std::string describe(const Location& where) {
    std::string text = where.file;
    if (where.line > 0)
        text += ":" + std::to_string(where.line);
    for (const std::string* part : {&where.pointer, &where.record}) {
        if (part->empty())
            continue;
        if (!text.empty())
            text += " ";
        text += excerpt(*part, longestPart);
    }
    return text;
}

std::string describe(const Finding& finding) {
    std::string text = describe(finding.where);
    if (!text.empty())
        text += ": ";
    text += finding.what;
    const std::string value = excerpt(finding.value);
    if (!value.empty() && finding.what.find(value) == std::string::npos)
        text += " (" + value + ")";
    if (!text.empty() && text.back() != '.')
        text += ".";
    if (!finding.remedy.empty())
        text += " " + finding.remedy;
    return text;
}

std::string excerpt(const std::string& value) {
    return excerpt(value, 60);
}

}  // namespace rackbook
