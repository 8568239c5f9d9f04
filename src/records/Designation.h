// What a designation as written says: its number and the number it is counted out of.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "records/Edition.h"

namespace rackbook {

struct DesignationParts {
    std::optional<int> number;  // 7 in 7/30, 2 in AP II/III
    std::optional<int> of;      // 30, 3
};

// Reads a trailing fraction or number, arabic or roman. Nothing is guessed where there is none.
DesignationParts designationParts(std::string_view written);

// A roman numeral in capitals, in the subtractive form. Pre: 1 … 3999.
std::string romanNumeral(int value);

// The kind a designation can only mean: 7/30, AP, EA, BAT, PP, HC, TP, WP. Nothing for the
// ambiguous ones (SP, CP) and for the unknown.
std::optional<DesignationKind> designationKindOf(std::string_view written);

// One form for two ways of writing the same designation: "AP  ii/iii" and "AP II/III" agree.
std::string designationKey(std::string_view written);

// "artist's proof", "numbered" …, for text and sheets.
const char* designationWords(DesignationKind kind);

}  // namespace rackbook
