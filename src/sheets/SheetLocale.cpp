#include "sheets/SheetLocale.h"

#include <QLocale>

namespace rackbook {

namespace {

QLocale localeOf(const std::string& tag) {
    const QLocale locale(QString::fromStdString(tag));
    return locale.language() == QLocale::C ? QLocale(QLocale::English) : locale;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

}  // namespace

SheetLocale::SheetLocale(const std::string& tag) {
    const QLocale locale = localeOf(tag);
    m_decimalSign = locale.decimalPoint().toStdString();
    m_groupSign = locale.groupSeparator().toStdString();
    for (int month = 1; month <= 12; ++month) {
        m_inDate[slot(month)] = locale.monthName(month).toStdString();
        m_alone[slot(month)] = locale.standaloneMonthName(month).toStdString();
    }
}

std::string SheetLocale::figure(std::string_view plain) const {
    constexpr std::size_t digitsBeforeGroups = 5;
    std::size_t first = 0;
    while (first < plain.size() && !isDigit(plain[first]))
        ++first;
    std::size_t end = first;
    while (end < plain.size() && isDigit(plain[end]))
        ++end;
    const bool grouped = end - first >= digitsBeforeGroups;
    std::string text;
    for (std::size_t at = 0; at < plain.size(); ++at) {
        if (grouped && at > first && at < end && (end - at) % 3 == 0)
            text += m_groupSign;
        if (plain[at] == '.')
            text += m_decimalSign;
        else if (plain[at] == '-')
            text += "−";
        else
            text += plain[at];
    }
    return text;
}

}  // namespace rackbook
