#include "commands/Numbering.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Text.h"
#include "records/Designation.h"

namespace rackbook {

namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLower(char c) {
    return c >= 'a' && c <= 'z';
}

std::string romanText(int value, bool lower) {
    std::string text = romanNumeral(value);
    if (lower)
        std::transform(text.begin(), text.end(), text.begin(),
                       [](char c) { return static_cast<char>(c - 'A' + 'a'); });
    return text;
}

// A designation taken apart at its number.
struct Numbered {
    std::string before;
    std::string digits;  // as written, arabic or roman
    std::string after;
};

// Pre: designationParts() finds a number in it.
Numbered takenApart(const std::string& written) {
    std::size_t end = std::min(written.find('/'), written.size());
    while (end > 0 && !std::isalnum(static_cast<unsigned char>(written[end - 1])))
        --end;
    const bool arabic = end > 0 && isDigit(written[end - 1]);
    std::size_t begin = end;
    while (begin > 0 && (arabic ? isDigit(written[begin - 1])
                                : std::isalpha(static_cast<unsigned char>(written[begin - 1]))))
        --begin;
    return {written.substr(0, begin), written.substr(begin, end - begin), written.substr(end)};
}

std::string numeral(const std::string& like, int value) {
    if (!isDigit(like.front()))
        return romanText(value, isLower(like.front()));
    std::string text = std::to_string(value);
    if (like.front() == '0' && text.size() < like.size())
        text.insert(0, like.size() - text.size(), '0');
    return text;
}

// One roman letter alone may as well be the letter of a lettered sheet.
bool mayBeLetter(const std::string& digits) {
    return digits.size() == 1 && !isDigit(digits.front()) &&
           std::string("CDLMcdlm").find(digits.front()) != std::string::npos;
}

}  // namespace

std::vector<std::string> successiveDesignations(const std::string& first, std::size_t count) {
    const DesignationParts parts = designationParts(first);
    if (parts.number && *parts.number < 1)
        throw UsageError("the designation " + excerpt(first) + " counts from nought",
                         "Count from 1.");
    const long long last = parts.number.value_or(0) + static_cast<long long>(count) - 1;
    if (parts.number && parts.of && last > *parts.of)
        throw UsageError(
            "the designation " + excerpt(first) +
                (count == 1 ? " is numbered past "
                            : ", counted on over " + std::to_string(count) + " sheets, comes to " +
                                  std::to_string(last) + " of only ") +
                std::to_string(*parts.of),
            count == 1 ? "Correct one of the two numbers."
                       : "Correct the second number, or name fewer sheets.");
    if (count == 1)
        return {first};
    const Numbered apart = parts.number ? takenApart(first) : Numbered{};
    if (apart.digits.empty() || (!parts.of && mayBeLetter(apart.digits)))
        throw UsageError("the designation " + excerpt(first) +
                             " has no number that can be counted on over " + std::to_string(count) +
                             " sheets",
                         "Give each of these sheets a designation of its own.");
    std::vector<std::string> designations;
    for (std::size_t i = 0; i < count; ++i)
        designations.push_back(apart.before +
                               numeral(apart.digits, *parts.number + static_cast<int>(i)) +
                               apart.after);
    return designations;
}

}  // namespace rackbook
