#include "base/Ranges.h"

#include <algorithm>
#include <charconv>

#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr int highestNumber = 100'000;

[[noreturn]] void refuse(std::string_view part, const std::string& why) {
    throw UsageError("the range \"" + excerpt(std::string(part)) + "\" " + why,
                     "Write ranges like 1-12,15.");
}

int numberIn(std::string_view text, std::string_view part) {
    if (text.empty() || text.front() == '-')
        refuse(part, "is not made of whole numbers");
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error == std::errc::invalid_argument || end != text.data() + text.size())
        refuse(part, "is not made of whole numbers");
    if (error != std::errc{} || value < 1 || value > highestNumber)
        refuse(part, "is not between 1 and " + std::to_string(highestNumber));
    return value;
}

}  // namespace

std::vector<int> parseRanges(std::string_view text) {
    std::vector<int> numbers;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t comma = std::min(text.find(',', at), text.size());
        const std::string part = trimmed(text.substr(at, comma - at));
        at = comma + 1;
        if (part.empty())
            refuse(text, "has an empty part");
        const std::size_t dash = part.find('-', 1);
        const int first = numberIn(trimmed(part.substr(0, dash)), part);
        const int last =
            dash == std::string::npos ? first : numberIn(trimmed(part.substr(dash + 1)), part);
        if (last < first)
            refuse(part, "runs backwards");
        if (numbers.size() + static_cast<std::size_t>(last - first) >= highestNumber)
            refuse(text, "names a number twice");
        for (int number = first; number <= last; ++number)
            numbers.push_back(number);
    }
    std::sort(numbers.begin(), numbers.end());
    const auto repeated = std::adjacent_find(numbers.begin(), numbers.end());
    if (repeated != numbers.end())
        refuse(text, "names " + std::to_string(*repeated) + " twice");
    return numbers;
}

std::string formatRanges(const std::vector<int>& numbers) {
    std::string text;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t end = i + 1;
        while (end < numbers.size() && numbers[end] == numbers[end - 1] + 1)
            ++end;
        if (!text.empty())
            text += ",";
        text += std::to_string(numbers[i]);
        if (end - i > 1)
            text += (end - i == 2 ? "," : "-") + std::to_string(numbers[end - 1]);
        i = end;
    }
    return text;
}

}  // namespace rackbook
