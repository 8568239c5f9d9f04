#include "records/Designation.h"

#include <array>
#include <utility>

namespace rackbook {

namespace {

char upper(char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

std::optional<int> arabic(std::string_view text) {
    if (text.empty() || text.size() > 6)
        return std::nullopt;
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9')
            return std::nullopt;
        value = value * 10 + (c - '0');
    }
    return value;
}

int romanDigit(char c) {
    switch (c) {
        case 'I':
            return 1;
        case 'V':
            return 5;
        case 'X':
            return 10;
        case 'L':
            return 50;
        case 'C':
            return 100;
        case 'D':
            return 500;
        case 'M':
            return 1000;
        default:
            return 0;
    }
}

// Only well-formed numerals: the value written again must give the same letters.
std::optional<int> roman(std::string_view text) {
    if (text.empty() || text.size() > 15)
        return std::nullopt;
    int value = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const int digit = romanDigit(text[i]);
        const int next = i + 1 < text.size() ? romanDigit(text[i + 1]) : 0;
        if (digit == 0)
            return std::nullopt;
        value += digit < next ? -digit : digit;
    }
    return value > 0 && romanNumeral(value) == text ? std::optional<int>(value) : std::nullopt;
}

std::optional<int> numeral(std::string_view text) {
    const std::optional<int> value = arabic(text);
    return value ? value : roman(text);
}

// Letters before the number: "AP" of "AP II/III", nothing of "7/30".
std::string prefixOf(const std::string& key) {
    const std::size_t end = key.find_first_of(" 0123456789");
    return key.substr(0, end);
}

}  // namespace

std::string romanNumeral(int value) {
    static constexpr std::array<std::pair<int, const char*>, 13> steps = {{{1000, "M"},
                                                                           {900, "CM"},
                                                                           {500, "D"},
                                                                           {400, "CD"},
                                                                           {100, "C"},
                                                                           {90, "XC"},
                                                                           {50, "L"},
                                                                           {40, "XL"},
                                                                           {10, "X"},
                                                                           {9, "IX"},
                                                                           {5, "V"},
                                                                           {4, "IV"},
                                                                           {1, "I"}}};
    std::string text;
    for (const auto& [step, letters] : steps)
        for (; value >= step; value -= step)
            text += letters;
    return text;
}

std::string designationKey(std::string_view written) {
    std::string key;
    for (const char c : written) {
        if (c == '.')
            continue;
        const bool space = c == ' ' || c == '\t';
        const bool besideSlash = c == '/' && !key.empty() && key.back() == ' ';
        if (besideSlash)
            key.pop_back();
        if (space && (key.empty() || key.back() == ' ' || key.back() == '/'))
            continue;
        key += space ? ' ' : upper(c);
    }
    while (!key.empty() && key.back() == ' ')
        key.pop_back();
    return key;
}

DesignationParts designationParts(std::string_view written) {
    const std::string key = designationKey(written);
    const std::size_t space = key.rfind(' ');
    std::string tail = space == std::string::npos ? key : key.substr(space + 1);
    if (space == std::string::npos) {
        const std::size_t digit = key.find_first_of("0123456789");
        const std::size_t slash = key.find('/');
        if (digit == std::string::npos && slash == std::string::npos)
            return {};
        if (digit != std::string::npos && digit < slash)
            tail = key.substr(digit);
    }
    const std::size_t slash = tail.find('/');
    DesignationParts parts;
    parts.number = numeral(std::string_view(tail).substr(0, slash));
    if (slash != std::string::npos && parts.number)
        parts.of = numeral(std::string_view(tail).substr(slash + 1));
    return parts;
}

std::optional<DesignationKind> designationKindOf(std::string_view written) {
    static constexpr std::array<std::pair<const char*, DesignationKind>, 9> known = {{
        {"AP", DesignationKind::artistsProof},
        {"EA", DesignationKind::artistsProof},
        {"BAT", DesignationKind::bonATirer},
        {"PP", DesignationKind::printersProof},
        {"HC", DesignationKind::horsCommerce},
        {"TP", DesignationKind::trialProof},
        {"WP", DesignationKind::workingProof},
        {"ARCHIVE", DesignationKind::archive},
        {"ARCHIV", DesignationKind::archive},
    }};
    const std::string key = designationKey(written);
    const std::string prefix = prefixOf(key);
    for (const auto& [letters, kind] : known)
        if (prefix == letters)
            return kind;
    const DesignationParts parts = designationParts(key);
    if (parts.number && parts.of && prefix.find_first_not_of("IVXLCDM/") == std::string::npos)
        return DesignationKind::numbered;
    return std::nullopt;
}

const char* designationWords(DesignationKind kind) {
    static constexpr const char* words[] = {
        "numbered",           "artist's proof", "bon à tirer",       "printer's proof",
        "hors commerce",      "trial proof",    "working proof",     "state proof",
        "separation proof",   "colour proof",   "progressive proof", "cancellation proof",
        "presentation proof", "archive"};
    return words[static_cast<std::size_t>(kind)];
}

}  // namespace rackbook
