// What is left free on a sheet to be filled in by hand, and where it stands.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sheets/PageModel.h"

namespace rackbook {

// A box below its label.
struct FieldBox {
    std::string name;  // of its place; not printed
    std::string label;
    double share = 1;  // of the width of its row
};

struct FieldColumn {
    enum class Shape { text, tick, line };

    std::string header;
    Shape shape = Shape::text;
    double share = 1;      // of the width that fixed columns leave over
    double fixed_mm = 0;   // where greater than 0, the width; share is not read
    double before_mm = 0;  // more room before it than between other columns
};

// What stands in a column of text, or the name of the field; nothing leaves the cell free.
using FieldCell = std::optional<std::string>;

struct FieldTable {
    std::vector<FieldColumn> columns;
    std::vector<std::vector<FieldCell>> rows;  // each as many cells as there are columns
    double rowHeight_mm = 8;                   // at least; taller where text needs it
};

struct FieldPlace {
    std::string name;
    std::size_t page = 0;  // from 0
    Box box;               // from the top left corner of the page
    int element = noElement;
};

}  // namespace rackbook
