// Helps the builder of a sheet to say which labels it needs.
#pragma once

#include <string>
#include <vector>

#include "records/EnumText.h"

namespace rackbook {

// Adds "prefix.word" for each word of a list with spaces between; without a prefix the words alone.
void addLabelKeys(std::vector<std::string>& keys, const std::string& prefix,
                  const std::string& words);

// Adds "prefix.name" for each enumerator.
template <class E>
void addLabelKeysOf(std::vector<std::string>& keys, const std::string& prefix) {
    for (const std::string& name : enumNames<E>())
        keys.push_back(prefix + "." + name);
}

}  // namespace rackbook
