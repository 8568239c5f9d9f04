// Trees to and from JSON text.
#pragma once

#include <string>
#include <string_view>

#include "base/Tree.h"
#include "records/Record.h"

namespace rackbook {

// Throws InputError naming the file and the line, like every reader of JSON here.
Tree treeFromJson(std::string_view text, const std::string& file);

// Indented by two, names in the order of the tree, with a newline at the end. Numbers that are not
// finite become null.
std::string jsonText(const Tree& tree);

// The same without white space and newline.
std::string jsonLine(const Tree& tree);

// A record in the form it has in record files.
Tree treeOf(const Record& record);

}  // namespace rackbook
