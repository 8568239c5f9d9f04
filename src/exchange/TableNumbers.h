// Numbers as the cells of tables write them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

struct NumberForm {
    char decimal = '.';
    char thousands = '\0';  // '.', ',', ' ' (any space), '\'' (any apostrophe), or none
};

// What a cell means, or why it cannot be read.
template <class T>
struct CellValue {
    std::optional<T> value;
    std::string what;    // empty where there is a value
    std::string remedy;  // a whole sentence
};

// The whole text as a finite number. A mark between thousands parts groups of three. One of
// `units` may stand before or behind it.
CellValue<double> numberIn(std::string_view text, const NumberForm& form,
                           const std::vector<std::string>& units = {});

}  // namespace rackbook
