// How a language and its country write figures and months, from the Unicode CLDR data that Qt
// carries. Nothing of it depends on the machine's own settings.
#pragma once

#include <array>
#include <string>
#include <string_view>

namespace rackbook {

class SheetLocale {
public:
    // BCP 47, such as "de" or "de-AT"; a tag that CLDR does not know gets the signs of English.
    explicit SheetLocale(const std::string& tag = "en");

    const std::string& decimalSign() const { return m_decimalSign; }

    // A number as base/Numbers.h writes it, with the locale's decimal sign, and its whole part in
    // groups of three where it is 10,000 or more; "-" becomes a minus sign.
    std::string figure(std::string_view plain) const;

    // As in a date with a day, and as with a year alone. Pre: 1–12.
    const std::string& monthInDate(int month) const { return m_inDate[slot(month)]; }
    const std::string& monthAlone(int month) const { return m_alone[slot(month)]; }

private:
    static std::size_t slot(int month) { return static_cast<std::size_t>(month - 1); }

    std::string m_decimalSign;
    std::string m_groupSign;
    std::array<std::string, 12> m_inDate;
    std::array<std::string, 12> m_alone;
};

}  // namespace rackbook
