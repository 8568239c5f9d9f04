// JSON text from outside (RFC 8259), read with care. Private to exchange/.
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

using Json = nlohmann::json;

// Deeper nesting than any record has; keeps hostile text from exhausting the stack.
constexpr int deepestNesting = 64;

// Throws InputError naming `file` and the line: text that is not UTF-8, that holds zero bytes or is
// not JSON, nesting deeper than deepestNesting, numbers beyond range, and the same name twice in
// one object.
Json parseJson(std::string_view text, const std::string& file);

// Takes over one item of a list; `listPointer` is "" or "/records".
using ItemSink =
    std::function<void(const std::string& listPointer, std::size_t position, Json item)>;

// The same, but each item of the outermost list, or of the list "records" in the outermost object,
// goes to `sink` as soon as it is whole, and null stands in its place in what is returned: a large
// file is never held as one value.
Json parseJsonList(std::string_view text, const std::string& file, const ItemSink& sink);

// For each JSON pointer the line, from 1, on which its value begins; where there is no such value,
// the line of the innermost one around it. One pass over the text. Pre: parseJson has accepted it.
std::vector<int> linesOf(std::string_view text, const std::vector<std::string>& pointers);

// One step of a JSON pointer (RFC 6901): "a/b" becomes "a~1b".
std::string pointerStep(std::string_view name);

}  // namespace rackbook
