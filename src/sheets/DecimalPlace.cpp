#include "sheets/DecimalPlace.h"

#include <array>

namespace rackbook {

namespace {

bool isDigit(std::string_view text, std::size_t at) {
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

std::size_t separatorLength(std::string_view text, std::size_t at) {
    constexpr std::array<std::string_view, 7> separators = {",",      ".",      "'",     "\u2019",
                                                            "\u00A0", "\u2009", "\u202F"};
    for (const std::string_view separator : separators)
        if (text.substr(at, separator.size()) == separator)
            return separator.size();
    return 0;
}

}  // namespace

std::size_t decimalPlace(std::string_view text, std::string_view decimalSign) {
    std::size_t at = text.find_first_of("0123456789");
    if (at == std::string_view::npos)
        return text.size();
    while (isDigit(text, at)) {
        ++at;
        if (text.substr(at, decimalSign.size()) == decimalSign)
            break;
        const std::size_t skipped = separatorLength(text, at);
        if (skipped > 0 && isDigit(text, at + skipped))
            at += skipped;
    }
    return at;
}

}  // namespace rackbook
