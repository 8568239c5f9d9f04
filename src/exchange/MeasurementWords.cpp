#include "exchange/MeasurementWords.h"

#include <algorithm>
#include <vector>

#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

namespace {

// Letters and digits belong to a word, everything else parts words; in small letters.
std::vector<std::string> wordsIn(std::string_view text) {
    std::vector<std::string> words(1);
    for (const char c : text) {
        const bool isLetter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (isLetter || (c >= '0' && c <= '9'))
            words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!words.back().empty())
            words.emplace_back();
    }
    if (words.back().empty())
        words.pop_back();
    return words;
}

}  // namespace

std::optional<Illuminant> illuminantIn(std::string_view text) {
    std::vector<std::string> words = wordsIn(text);
    if (!words.empty() && words.front() == "cie")
        words.erase(words.begin());
    if (words.size() != 1)
        return std::nullopt;
    if (words[0] == "d50")
        return Illuminant::D50;
    if (words[0] == "d65")
        return Illuminant::D65;
    return words[0] == "a" ? std::optional(Illuminant::A) : std::nullopt;
}

std::optional<Observer> observerIn(std::string_view text) {
    const std::vector<std::string> words = wordsIn(text);
    if (words.empty() || words.size() > 2)
        return std::nullopt;
    const std::size_t digits = std::min(words[0].find_first_not_of("0123456789"), words[0].size());
    const std::string angle = words[0].substr(0, digits);
    const std::string unit = words[0].substr(digits) + (words.size() > 1 ? words[1] : "");
    if (!unit.empty() && unit != "deg" && unit != "degree" && unit != "degrees")
        return std::nullopt;
    if (angle == "2")
        return Observer::deg2;
    return angle == "10" ? std::optional(Observer::deg10) : std::nullopt;
}

std::optional<MeasurementCondition> conditionIn(std::string_view text) {
    for (const std::string& word : wordsIn(text))
        if (word.size() == 2 && word[0] == 'm' && word[1] >= '0' && word[1] <= '3')
            return static_cast<MeasurementCondition>(word[1] - '0');
    return std::nullopt;
}

std::optional<Backing> backingIn(std::string_view text) {
    for (const std::string& word : wordsIn(text))
        if (const std::optional<Backing> backing = enumFrom<Backing>(word))
            return backing;
    return std::nullopt;
}

std::optional<EdtfDate> dayIn(std::string_view text, const std::string& where) {
    constexpr std::string_view form = "0000-00-00";
    if (text.size() < form.size())
        return std::nullopt;
    for (std::size_t i = 0; i < form.size(); ++i)
        if (form[i] == '-' ? text[i] != '-' : text[i] < '0' || text[i] > '9')
            return std::nullopt;
    return EdtfDate::parse(text.substr(0, form.size()), where);
}

std::optional<std::string> plainWords(std::string_view text, std::size_t most) {
    std::string plain;
    for (const char c : text)
        plain += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
    if (plain.size() > most) {
        std::size_t end = most;
        while (end > 0 && (static_cast<unsigned char>(plain[end]) & 0xC0) == 0x80)
            --end;
        plain.resize(end);
    }
    const std::size_t begin = plain.find_first_not_of(' ');
    if (begin == std::string::npos || isBlank(plain) || controlCharacterIn(plain))
        return std::nullopt;
    return plain.substr(begin, plain.find_last_not_of(' ') - begin + 1);
}

}  // namespace rackbook
