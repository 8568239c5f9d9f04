// Days and clock times as people type them.
#pragma once

#include <optional>
#include <string>

#include "base/DateOrder.h"

namespace rackbook {

// Without space at either end, and with the wide digits and signs of East Asian keyboards as plain
// ones. Pre: valid UTF-8.
std::string plainlyTyped(const std::string& text);

// "2026-03-20" of that, of numbers in the order with . / - or a space between them, and of
// 2026年3月20日. A year of four digits that stands first is always one. Nothing for what is no day,
// and for a year of fewer digits.
std::optional<std::string> typedDay(const std::string& text, DateOrder order);

// "09:30" of 9:30, 09.30, 9h30, 9 h 30 and 9時30分. Nothing for what is no time of a day.
std::optional<std::string> typedClock(const std::string& text);

// A day in that order: 20.3.2026, 3.20.2026, 2026.3.20, with the sign between the numbers.
std::string dayInOrder(int year, int month, int day, DateOrder order, const std::string& sign);

}  // namespace rackbook
