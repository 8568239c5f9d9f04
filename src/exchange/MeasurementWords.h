// Conditions of a measurement out of the words that files state them in.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "records/Reading.h"

namespace rackbook {

// "D50", "D65", "A", also in small letters and with "CIE" before it.
std::optional<Illuminant> illuminantIn(std::string_view text);

// "2", "2 degree", "2_Degree", "2°", "10deg" …
std::optional<Observer> observerIn(std::string_view text);

// The first word or beginning of a word that is M0, M1, M2 or M3: "M1", "M0_Incandescent".
std::optional<MeasurementCondition> conditionIn(std::string_view text);

// The word white, black or self anywhere in the text.
std::optional<Backing> backingIn(std::string_view text);

// The day of a date that begins as 2026-03-04; nothing for other ways of writing one, whose order
// of day and month is not known.
std::optional<EdtfDate> dayIn(std::string_view text, const std::string& where);

// Text that a record can hold: without blanks around it, control characters as spaces, at most
// `most` bytes. Nothing where that leaves nothing.
std::optional<std::string> plainWords(std::string_view text, std::size_t most);

}  // namespace rackbook
