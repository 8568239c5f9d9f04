#include "exchange/TableNumbers.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"

namespace rackbook {

namespace {

void replaceAll(std::string& text, std::string_view from, std::string_view to) {
    for (std::size_t at = text.find(from); at != std::string::npos;
         at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
}

// Typographic spaces, apostrophes and the minus sign as their plain forms.
std::string plainMarks(std::string_view text) {
    std::string plain(text);
    for (const char* space : {"\u00A0", "\u2009", "\u202F", "\u2007"})
        replaceAll(plain, space, " ");
    replaceAll(plain, "\u2019", "'");
    replaceAll(plain, "\u2212", "-");
    return trimmed(plain);
}

std::string withoutUnit(std::string text, const std::vector<std::string>& units) {
    for (const std::string& unit : units) {
        if (unit.empty() || text.size() < unit.size())
            continue;
        if (text.compare(0, unit.size(), unit) == 0)
            return trimmed(text.substr(unit.size()));
        if (text.compare(text.size() - unit.size(), unit.size(), unit) == 0)
            return trimmed(text.substr(0, text.size() - unit.size()));
    }
    return text;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// Takes the marks between thousands out; false where they do not part groups of three.
bool takeGroupsOut(std::string& text, char mark, char decimal) {
    if (mark == '\0' || text.find(mark) == std::string::npos)
        return true;
    const std::size_t end =
        std::min(text.find_first_of(std::string(1, decimal) + "eE"), text.size());
    std::string whole = text.substr(0, end);
    const std::string rest = text.substr(end);
    std::size_t digitsSince = 0;
    bool hasMark = false;
    std::string digits;
    for (const char c : whole) {
        if (c == mark) {
            const bool sound = hasMark ? digitsSince == 3 : digitsSince >= 1 && digitsSince <= 3;
            if (!sound)
                return false;
            hasMark = true;
            digitsSince = 0;
            continue;
        }
        digits += c;
        digitsSince += isDigit(c) ? 1 : 0;
    }
    if (digitsSince != 3 || rest.find(mark) != std::string::npos)
        return false;
    text = digits + rest;
    return true;
}

CellValue<double> refused(std::string what, std::string remedy) {
    return {std::nullopt, std::move(what), std::move(remedy)};
}

}  // namespace

CellValue<double> numberIn(std::string_view text, const NumberForm& form,
                           const std::vector<std::string>& units) {
    const std::string plain = withoutUnit(plainMarks(text), units);
    std::string number = plain;
    if (!takeGroupsOut(number, form.thousands, form.decimal))
        return refused("the marks between thousands part no groups of three",
                       "Write the number anew, or say in the mapping how numbers are written.");
    const char other = form.decimal == ',' ? '.' : ',';
    if (number.find(other) != std::string::npos)
        return other == ','
                   ? refused("the number has a comma, and decimals have a point here",
                             "Say \"decimal\": \"comma\" in the mapping, or \"thousands\": \",\" "
                             "where it parts thousands.")
                   : refused("the number has a point, and decimals have a comma here",
                             "Say \"thousands\": \".\" in the mapping where it parts thousands, "
                             "or write a comma.");
    if (form.decimal == ',')
        std::replace(number.begin(), number.end(), ',', '.');
    if (const std::optional<double> value = parseNumber(number))
        return {value, {}, {}};
    return refused("this is not a number",
                   std::string("Write digits alone, such as 12") + form.decimal +
                       "5; a unit beside each is named in the mapping: \"units\": [\"g\"].");
}

}  // namespace rackbook
